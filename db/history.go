package db

import (
	"context"
	"fmt"
	"slices"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

type playedRow struct {
	ID       golf.RoundID
	Name     string
	PlayedOn time.Time
	Course   string
	Tee      string
	Target   float64
	Par18    int
}

var (
	playedRounds = `
		select id, name, played_on, course, tee, target, par18 from rounds
		where player_id = @who and removed_at is null and played_on >= ` + accessFrom("@asker", "@who") + `
		order by played_on, id`
	playedShots = `
		select s.round_id, s.hole, h.par, h.picked_up, h.score_only, s.lie, s.distance_in, s.penalty, s.short_sided, coalesce(s.green_in, -1)
		from shots s
		join holes h on h.player_id = s.player_id and h.round_id = s.round_id and h.number = s.hole
		where s.player_id = @who and h.player_id = @who and ` + accessFrom("@asker", "@who") + ` is not null
		order by s.round_id, s.hole, s.number`
)

// lieColumn reads a lie without allocating a string: a history has tens of
// thousands.
type lieColumn golf.Lie

// ScanBytes reads the name of a lie as it is stored.
func (l *lieColumn) ScanBytes(name []byte) error {
	for _, lie := range golf.Lies {
		if string(name) == lie.String() {
			*l = lieColumn(lie)
			return nil
		}
	}
	return fmt.Errorf("the database holds an unknown lie %q", name)
}

// History returns all the player's rounds that asker may see and that have a hole
// entered, the earliest first. Their shots hold only what the engine needs, since
// many rounds are read at once, and how far the player's own chips run where they are
// judged by that. It takes two queries, however many rounds there are, and a third
// where a shot asks for the player's run-out book.
func (s *Store) History(ctx context.Context, asker, who golf.PlayerID) ([]golf.Played, error) {
	args := pgx.StrictNamedArgs{"asker": asker, "who": who}
	rows, err := many(ctx, s.q, pgx.RowToStructByName[playedRow], playedRounds, args)
	if err != nil || len(rows) == 0 {
		return nil, err
	}
	holes, err := s.playedHoles(ctx, args)
	if err == nil {
		err = s.fillHistory(ctx, who, holes)
	}
	if err != nil {
		return nil, err
	}
	all := make([]golf.Played, 0, len(rows))
	for _, r := range rows {
		if len(holes[r.ID]) > 0 {
			all = append(all, golf.Played{ID: r.ID, Target: r.Target, Par18: r.Par18, Round: golf.Round{ID: r.Name,
				Date: golf.DateOf(r.PlayedOn), Course: r.Course, Tee: r.Tee, Holes: holes[r.ID]}})
		}
	}
	return all, nil
}

// fillHistory sets the player's own run-out of the shots that are judged by it.
func (s *Store) fillHistory(ctx context.Context, who golf.PlayerID, rounds map[golf.RoundID][]golf.Hole) error {
	var asking [][]golf.Shot
	for _, holes := range rounds {
		for _, h := range holes {
			if slices.ContainsFunc(h.Shots, golf.Shot.AsksBook) {
				asking = append(asking, h.Shots)
			}
		}
	}
	if len(asking) == 0 {
		return nil
	}
	book, err := s.runBook(ctx, who)
	for _, shots := range asking {
		book.Lines.Fill(shots)
	}
	return err
}

// playedHoles reads the holes of every round, shot by shot.
func (s *Store) playedHoles(ctx context.Context, args pgx.StrictNamedArgs) (map[golf.RoundID][]golf.Hole, error) {
	rows, err := s.q.Query(ctx, playedShots, args)
	if err != nil {
		return nil, translate(err)
	}
	defer rows.Close()
	all := map[golf.RoundID][]golf.Hole{}
	var round golf.RoundID
	var holes []golf.Hole
	var row struct { // outside the loop, so that rows do not allocate
		id              golf.RoundID
		hole            golf.Hole
		lie             lieColumn
		distance, green float64
		penalty         int
		short           bool
	}
	to := []any{&row.id, &row.hole.Number, &row.hole.Par, &row.hole.PickedUp, &row.hole.ScoreOnly, &row.lie, &row.distance, &row.penalty, &row.short, &row.green}
	for rows.Next() {
		if err := rows.Scan(to...); err != nil {
			return nil, translate(err)
		}
		shot := golf.Shot{Lie: golf.Lie(row.lie), Distance: golf.Distance(row.distance), Penalty: row.penalty, ShortSided: row.short}
		if row.green >= 0 {
			shot.GreenToWork, shot.GreenKnown = golf.Distance(row.green), true
		}
		if row.id != round {
			all[round] = holes
			round, holes = row.id, make([]golf.Hole, 0, 18)
		}
		if last := len(holes) - 1; last < 0 || holes[last].Number != row.hole.Number {
			row.hole.Shots = make([]golf.Shot, 0, 6)
			holes = append(holes, row.hole)
		}
		last := &holes[len(holes)-1]
		last.Shots = append(last.Shots, shot)
	}
	all[round] = holes
	return all, translate(rows.Err())
}
