package db

import (
	"cmp"
	"context"
	"slices"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// Round is a player's round as it is stored: its own copy of the card, and the holes
// that have been entered.
type Round struct {
	ID         golf.RoundID
	Name       string
	PlayedOn   time.Time
	Course     string
	Tee        string
	Target     float64 // it was played for
	BoundaryYd float64
	Par18      int            // par of the whole course
	Conditions string         // weather and greens
	CardOut    int            // score of the front nine on the paper card; 0 when not known
	CardIn     int            // and of the back nine
	CourseID   *golf.CourseID // the shared course it is played on, nil for none
	EnteredBy  string         // name of the coach who entered it; empty for the player
	FirstHole  int            // where it began; 0 in a new round counts as 1
	ChangedAt  time.Time      // when it was last saved, or begun
	EnteredAt  time.Time      // when a hole was last entered for the first time, or the round was begun
	Holes      []Hole         `db:"-"`
	RunBook    RunBook        `db:"-"` // of the player; the shots of the holes are filled with it
}

// Hole is a hole of a round. One without a line has not been played, or not yet.
type Hole struct {
	golf.Hole
	Length  golf.Distance // on the card; 0 while it is not known
	Index   int           // stroke index, 0 where it is not known
	Line    string        // as it was typed
	Units   Units         // that its line was typed in
	Version int           // counts its saves
}

// Units are the units of those numbers in a line that name none. The zero values
// stand for yards off the green and feet on it.
type Units struct {
	Far   golf.Unit // off the green
	Green golf.Unit // on it
}

func (u Units) columns() (far, green string) {
	return cmp.Or(u.Far, golf.Yards).String(), cmp.Or(u.Green, golf.Feet).String()
}

// Card returns the hole as the card has it.
func (h Hole) Card() golf.CardHole {
	return golf.CardHole{Number: h.Number, Par: h.Par, Length: h.Length, Index: h.Index}
}

// Played returns the round with the holes that have been entered.
func (r Round) Played() golf.Round {
	played := golf.Round{ID: r.Name, Date: golf.DateOf(r.PlayedOn), Course: r.Course, Tee: r.Tee}
	for _, h := range r.Holes {
		if h.Line != "" {
			played.Holes = append(played.Holes, h.Hole)
		}
	}
	return played
}

// InOrder returns the holes in the order of play: from the first hole to the end
// of the card, then from its beginning.
func (r Round) InOrder() []Hole {
	i := slices.IndexFunc(r.Holes, func(h Hole) bool { return h.Number >= r.FirstHole })
	if i < 1 {
		return r.Holes
	}
	return slices.Concat(r.Holes[i:], r.Holes[:i])
}

// NextAfter returns the hole to enter after another: the next in the order of play
// that has not been entered. It reports whether there is one.
func (r Round) NextAfter(hole int) (int, bool) {
	i := slices.IndexFunc(r.Holes, func(h Hole) bool { return h.Number > hole })
	if i < 0 {
		i = 0
	}
	for _, h := range slices.Concat(r.Holes[i:], r.Holes[:i]) {
		if h.Line == "" && h.Number != hole {
			return h.Number, true
		}
	}
	return 0, false
}

const roundColumns = `id, name, played_on, course, tee, target, boundary_yd, par18, conditions, card_out, card_in, course_id, entered_by, first_hole, changed_at, entered_at`

const insertRound = `
	insert into rounds (player_id, name, played_on, course, tee, target, boundary_yd, par18, conditions, card_out, card_in, course_id, entered_by, first_hole)
	values (@who, @name, @played_on, @course, @tee, @target, @boundary, @par18, @conditions, @out, @in, @course_id, @entered_by, @first_hole) returning id`

// args are the arguments of insertRound.
func (r Round) args(who golf.PlayerID) pgx.StrictNamedArgs {
	return pgx.StrictNamedArgs{"who": who, "name": r.Name, "played_on": r.PlayedOn, "course": r.Course, "tee": r.Tee, "target": r.Target,
		"boundary": r.BoundaryYd, "par18": r.Par18, "conditions": r.Conditions, "out": r.CardOut, "in": r.CardIn, "course_id": r.CourseID, "entered_by": r.EnteredBy, "first_hole": max(r.FirstHole, 1)}
}

// NewRound begins a round of the player on a card, with no hole entered yet.
func (s *Store) NewRound(ctx context.Context, who golf.PlayerID, r Round) (golf.RoundID, error) {
	var id golf.RoundID
	err := s.Tx(ctx, func(tx *Store) error {
		var err error
		id, err = one(ctx, tx.q, pgx.RowTo[golf.RoundID], insertRound, r.args(who))
		if err != nil {
			return err
		}
		batch := &pgx.Batch{}
		for _, h := range r.Holes {
			batch.Queue(`insert into holes (player_id, round_id, number, par, length_in, stroke_index) values (@who, @round, @number, @par, @length, @index)`,
				pgx.StrictNamedArgs{"who": who, "round": id, "number": h.Number, "par": h.Par, "length": float64(h.Length), "index": h.Index})
			if h.Line != "" {
				queueHole(batch, who, id, h)
			}
		}
		return translate(tx.q.SendBatch(ctx, batch).Close())
	})
	return id, err
}

// savedHole is a hole as it is before it is saved.
type savedHole struct {
	Version int
	Open    bool // it has not been entered
}

// SaveHole stores what was entered for a hole of the player's round. h.Version is the
// version that was shown; golf.ErrConflict says that the hole has been saved since.
func (s *Store) SaveHole(ctx context.Context, who golf.PlayerID, round golf.RoundID, h Hole) error {
	return s.Tx(ctx, func(tx *Store) error {
		args := pgx.StrictNamedArgs{"who": who, "round": round, "number": h.Number}
		was, err := one(ctx, tx.q, pgx.RowToStructByName[savedHole], `
			select h.version, h.line = '' as open from holes h join rounds r on r.player_id = h.player_id and r.id = h.round_id
			where h.player_id = @who and h.round_id = @round and h.number = @number and r.removed_at is null
			for update of h`, args)
		if err != nil {
			return err
		}
		if was.Version != h.Version {
			return golf.ErrConflict
		}
		batch, changed := &pgx.Batch{}, pgx.StrictNamedArgs{"who": who, "round": round}
		batch.Queue(`delete from round_summaries where player_id = @who and round_id = @round`, changed)
		batch.Queue(`update rounds set changed_at = now() where player_id = @who and id = @round`, changed)
		if was.Open && h.Line != "" {
			batch.Queue(`update rounds set entered_at = now() where player_id = @who and id = @round`, changed)
		}
		queueHole(batch, who, round, h)
		return translate(tx.q.SendBatch(ctx, batch).Close())
	})
}

func queueHole(batch *pgx.Batch, who golf.PlayerID, round golf.RoundID, h Hole) {
	args := func(more pgx.StrictNamedArgs) pgx.StrictNamedArgs {
		all := pgx.StrictNamedArgs{"who": who, "round": round, "hole": h.Number}
		for k, v := range more {
			all[k] = v
		}
		return all
	}
	batch.Queue(`delete from shots where player_id = @who and round_id = @round and hole = @hole`, args(nil))
	far, green := h.Units.columns()
	batch.Queue(`
		update holes set line = @line, far_unit = @far, green_unit = @green, picked_up = @picked_up, score_only = @score_only, version = version + 1
		where player_id = @who and round_id = @round and number = @hole`,
		args(pgx.StrictNamedArgs{"line": h.Line, "far": far, "green": green, "picked_up": h.PickedUp, "score_only": h.ScoreOnly}))
	for i, shot := range h.Shots {
		row := rowOf(shot)
		batch.Queue(`
			insert into shots (player_id, round_id, hole, number, lie, distance_in, unit, about, penalty, short_sided, green_in, club, miss, word)
			values (@who, @round, @hole, @number, @lie, @distance, @unit, @about, @penalty, @short_sided, @green, @club, @miss, @word)`,
			args(pgx.StrictNamedArgs{"number": i + 1, "lie": row.Lie, "distance": row.DistanceIn, "unit": row.Unit, "about": row.About,
				"penalty": row.Penalty, "short_sided": row.ShortSided, "green": row.GreenIn, "club": row.Club, "miss": row.Miss, "word": row.Word}))
	}
}
