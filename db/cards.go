package db

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// OtherCard is a round whose card differs from the card of its course.
type OtherCard struct {
	Round    golf.RoundID
	PlayedOn time.Time
	Holes    int // that differ
}

// OtherCards lists the player's rounds on a course whose card differs from the
// course's on a hole that both have, the latest first.
func (s *Store) OtherCards(ctx context.Context, who golf.PlayerID, course golf.CourseID) ([]OtherCard, error) {
	return many(ctx, s.q, pgx.RowToStructByName[OtherCard], `
		select r.id as round, r.played_on, count(*) as holes
		from rounds r
		join holes h on h.player_id = r.player_id and h.round_id = r.id
		join course_holes ch on ch.course_id = r.course_id and ch.number = h.number
		where r.player_id = @who and r.course_id = @course and r.removed_at is null
		  and (h.par, h.length_in, h.stroke_index) is distinct from (ch.par, ch.length_in, ch.stroke_index)
		group by r.player_id, r.id, r.played_on order by r.played_on desc, r.id desc`, pgx.StrictNamedArgs{"who": who, "course": course})
}

// UseCard gives the player's round another card: par, length and stroke index
// of the holes that both have, and the par of the whole course when the card
// has 18 holes. Shots stay as they were entered, except that a tee shot at the
// card's length moves to the new length, unless the line gives its distance.
func (s *Store) UseCard(ctx context.Context, who golf.PlayerID, round golf.RoundID, card []golf.CardHole) error {
	return s.Tx(ctx, func(tx *Store) error {
		args := pgx.StrictNamedArgs{"who": who, "round": round}
		if _, err := one(ctx, tx.q, pgx.RowTo[golf.RoundID], `
			select id from rounds where player_id = @who and id = @round and removed_at is null for update`, args); err != nil {
			return err
		}
		batch := &pgx.Batch{}
		par := 0
		for _, h := range card {
			par += h.Par
			queueCard(batch, who, round, h)
		}
		if len(card) == 18 {
			batch.Queue(`update rounds set par18 = @par where player_id = @who and id = @round`,
				pgx.StrictNamedArgs{"who": who, "round": round, "par": par})
		}
		batch.Queue(`update rounds set changed_at = now() where player_id = @who and id = @round`, args)
		batch.Queue(`delete from round_summaries where player_id = @who and round_id = @round`, args)
		return translate(tx.q.SendBatch(ctx, batch).Close())
	})
}

// queueCard counts the change as a save of the hole, so that no summary of the
// round from before the change is stored.
func queueCard(batch *pgx.Batch, who golf.PlayerID, round golf.RoundID, h golf.CardHole) {
	args := pgx.StrictNamedArgs{"who": who, "round": round, "number": h.Number, "length": float64(h.Length)}
	batch.Queue(`
		update shots s set distance_in = @length
		from holes h
		where h.player_id = @who and h.round_id = @round and h.number = @number and h.length_in > 0
		  and s.player_id = h.player_id and s.round_id = h.round_id and s.hole = h.number
		  and s.lie = 'tee' and s.distance_in = h.length_in and h.line !~* '^\s*~?t\s*~?[0-9]'`, args)
	batch.Queue(`
		update holes set par = @par, length_in = @length, stroke_index = @index, version = version + 1
		where player_id = @who and round_id = @round and number = @number
		  and (par, length_in, stroke_index) is distinct from (@par::integer, @length::double precision, @index::integer)`,
		pgx.StrictNamedArgs{"who": who, "round": round, "number": h.Number, "length": float64(h.Length), "par": h.Par, "index": h.Index})
}
