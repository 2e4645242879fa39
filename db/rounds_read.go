package db

import (
	"context"
	"errors"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

type roundHoleRow struct {
	RoundID     golf.RoundID
	Number      int
	Par         int
	LengthIn    float64
	Line        string
	FarUnit     string
	GreenUnit   string
	PickedUp    bool
	ScoreOnly   int
	Version     int
	StrokeIndex int
}

func (r roundHoleRow) hole() (Hole, error) {
	h := Hole{Hole: golf.Hole{Number: r.Number, Par: r.Par, PickedUp: r.PickedUp, ScoreOnly: r.ScoreOnly},
		Length: golf.Distance(r.LengthIn), Line: r.Line, Version: r.Version, Index: r.StrokeIndex}
	var err error
	if h.Units.Far, err = golf.ParseUnit(r.FarUnit); err != nil {
		return h, err
	}
	h.Units.Green, err = golf.ParseUnit(r.GreenUnit)
	return h, err
}

type shotRow struct {
	RoundID    golf.RoundID
	Hole       int
	Lie        string
	DistanceIn float64
	Unit       string
	About      bool
	Penalty    int
	ShortSided bool
	GreenIn    *float64
	Club       string
	Miss       string
	Word       string
}

func rowOf(s golf.Shot) shotRow {
	r := shotRow{Lie: s.Lie.String(), DistanceIn: float64(s.Distance), Unit: s.Unit.String(), About: s.About, Penalty: s.Penalty,
		ShortSided: s.ShortSided, Club: s.Club, Miss: s.Miss.String(), Word: s.Word}
	if s.GreenKnown {
		green := float64(s.GreenToWork)
		r.GreenIn = &green
	}
	return r
}

func (r shotRow) shot() (golf.Shot, error) {
	lie, err := golf.ParseLie(r.Lie)
	if err != nil {
		return golf.Shot{}, err
	}
	s := golf.Shot{Lie: lie, Distance: golf.Distance(r.DistanceIn), About: r.About, Penalty: r.Penalty, ShortSided: r.ShortSided, Club: r.Club, Word: r.Word}
	if r.Unit != "" {
		if s.Unit, err = golf.ParseUnit(r.Unit); err != nil {
			return s, err
		}
	}
	if r.GreenIn != nil {
		s.GreenToWork, s.GreenKnown = golf.Distance(*r.GreenIn), true
	}
	s.Miss, err = golf.ParseMiss(r.Miss)
	return s, err
}

// Round returns one of the player's rounds with all its holes in order.
func (s *Store) Round(ctx context.Context, who golf.PlayerID, id golf.RoundID) (Round, error) {
	return s.SeenRound(ctx, who, who, id)
}

// SeenRound returns a round of a player that asker may see.
func (s *Store) SeenRound(ctx context.Context, asker, who golf.PlayerID, id golf.RoundID) (Round, error) {
	rounds, err := many(ctx, s.q, pgx.RowToStructByName[Round], `
		select `+roundColumns+` from rounds
		where player_id = @who and id = @id and removed_at is null and played_on >= `+accessFrom("@asker", "@who"),
		pgx.StrictNamedArgs{"asker": asker, "who": who, "id": id})
	if err == nil && len(rounds) == 0 {
		err = golf.ErrNotFound
	}
	if err != nil {
		return Round{}, err
	}
	err = s.fill(ctx, who, rounds)
	return rounds[0], err
}

// Chosen narrows a list of rounds; its zero value chooses all.
type Chosen struct {
	IDs      []golf.RoundID // nil for any
	Course   string         // its name, "" for any
	CourseID golf.CourseID  // of the shared course, with its tees; 0 for any
	From, To golf.Date      // first and last day; the zero value sets no limit
	Most     int            // at most so many, the latest first; 0 for all
}

// Rounds returns the rounds of a player that asker may see, with all their
// holes and the latest first. It takes two trips, however many rounds there are.
func (s *Store) Rounds(ctx context.Context, asker, who golf.PlayerID, c Chosen) ([]Round, error) {
	rounds, err := many(ctx, s.q, pgx.RowToStructByName[Round], `
		select `+roundColumns+` from rounds
		where player_id = @who and removed_at is null and played_on >= `+accessFrom("@asker", "@who")+`
		  and (@ids::bigint[] is null or id = any(@ids))
		  and (@course = '' or course = @course) and (@course_id::bigint = 0 or course_id = @course_id)
		  and played_on >= coalesce(@from, '-infinity'::date) and played_on <= coalesce(@to, 'infinity'::date)
		order by played_on desc, id desc limit @most`,
		pgx.StrictNamedArgs{"asker": asker, "who": who, "ids": c.IDs, "course": c.Course, "course_id": c.CourseID, "from": day(c.From), "to": day(c.To), "most": limit(c.Most)})
	if err != nil || len(rounds) == 0 {
		return nil, err
	}
	return rounds, s.fill(ctx, who, rounds)
}

// day is a day as the argument of a statement, nil for none.
func day(d golf.Date) *time.Time {
	if d.IsZero() {
		return nil
	}
	t := d.Time()
	return &t
}

// limit is a limit as the argument of a statement, nil for none.
func limit(most int) *int {
	if most == 0 {
		return nil
	}
	return &most
}

// RoundCourses lists the names of the courses of a player's rounds that asker
// may see.
func (s *Store) RoundCourses(ctx context.Context, asker, who golf.PlayerID) ([]string, error) {
	return many(ctx, s.q, pgx.RowTo[string], `
		select course from rounds where player_id = @who and removed_at is null and played_on >= `+accessFrom("@asker", "@who")+`
		group by course order by lower(course)`, pgx.StrictNamedArgs{"asker": asker, "who": who})
}

// MonthRounds is how many rounds of a player a month has.
type MonthRounds struct {
	Month  time.Time // its first day
	Rounds int       // in all
	Chosen int       // on the course that was asked for
}

// RoundMonths lists the months of a player's rounds that asker may see, the
// latest first, and how many are on a course; "" is any.
func (s *Store) RoundMonths(ctx context.Context, asker, who golf.PlayerID, course string) ([]MonthRounds, error) {
	return many(ctx, s.q, pgx.RowToStructByName[MonthRounds], `
		select date_trunc('month', played_on::timestamp)::date as month, count(*) as rounds, count(*) filter (where @course = '' or course = @course) as chosen
		from rounds where player_id = @who and removed_at is null and played_on >= `+accessFrom("@asker", "@who")+`
		group by 1 order by 1 desc`, pgx.StrictNamedArgs{"asker": asker, "who": who, "course": course})
}

// fill reads the holes and shots of rounds, and the run-out book that they are judged
// by, in one trip.
func (s *Store) fill(ctx context.Context, who golf.PlayerID, rounds []Round) error {
	ids, at := make([]golf.RoundID, len(rounds)), make(map[golf.RoundID]*Round, len(rounds))
	for i := range rounds {
		ids[i], at[rounds[i].ID] = rounds[i].ID, &rounds[i]
	}
	args := pgx.StrictNamedArgs{"who": who, "ids": ids}
	batch := &pgx.Batch{}
	batch.Queue(`
		select round_id, number, par, length_in, line, far_unit, green_unit, picked_up, score_only, version, stroke_index from holes
		where player_id = @who and round_id = any(@ids) order by round_id, number`, args)
	batch.Queue(`
		select round_id, hole, lie, distance_in, unit, about, penalty, short_sided, green_in, club, miss, word from shots
		where player_id = @who and round_id = any(@ids) order by round_id, hole, number`, args)
	batch.Queue(selectRunBook, pgx.StrictNamedArgs{"who": who})
	answers := s.q.SendBatch(ctx, batch)
	holes, err := next(answers, pgx.RowToStructByName[roundHoleRow])
	if err != nil {
		return errors.Join(err, answers.Close())
	}
	shots, err := next(answers, pgx.RowToStructByName[shotRow])
	if err != nil {
		return errors.Join(err, answers.Close())
	}
	kept, err := next(answers, pgx.RowToStructByName[runBookRow])
	if err := errors.Join(err, translate(answers.Close())); err != nil {
		return err
	}
	book, err := bookOf(kept)
	if err != nil {
		return err
	}
	for i := range rounds {
		rounds[i].RunBook = book
	}
	return putHoles(at, holes, shots, book)
}

// putHoles puts holes with their shots into their rounds.
func putHoles(at map[golf.RoundID]*Round, holes []roundHoleRow, shots []shotRow, book RunBook) error {
	for _, h := range holes {
		hole, err := h.hole()
		if err != nil {
			return err
		}
		for len(shots) > 0 && shots[0].RoundID == h.RoundID && shots[0].Hole == h.Number {
			shot, err := shots[0].shot()
			if err != nil {
				return err
			}
			hole.Shots = append(hole.Shots, shot)
			shots = shots[1:]
		}
		book.Lines.Fill(hole.Shots)
		at[h.RoundID].Holes = append(at[h.RoundID].Holes, hole)
	}
	return nil
}

// next reads the rows of the next query of a batch.
func next[T any](answers pgx.BatchResults, to pgx.RowToFunc[T]) ([]T, error) {
	rows, err := answers.Query()
	if err != nil {
		return nil, translate(err)
	}
	all, err := pgx.CollectRows(rows, to)
	return all, translate(err)
}
