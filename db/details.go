package db

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// Details are what may be corrected in a round afterwards, besides its shots.
type Details struct {
	PlayedOn time.Time
	Course   string
	Tee      string
	CourseID *golf.CourseID // the shared course whose card the round takes over; nil for none
	Target   float64        // of 18 holes
	Par18    int            // par of the whole course
	First    int            // hole that it began at; 0 counts as 1

	Conditions string // weather and greens
	Holes      []golf.CardHole
}

// SaveDetails corrects a round of the player's, and its card the way UseCard does.
// Notes on the round move to its new day. When the name of the course or the tees
// change, the round no longer belongs to a shared course, unless CourseID names
// one.
func (s *Store) SaveDetails(ctx context.Context, who golf.PlayerID, id golf.RoundID, to Details) error {
	return s.Tx(ctx, func(tx *Store) error {
		of := pgx.StrictNamedArgs{"who": who, "round": id}
		err := changeOne(ctx, tx.q, `
			update rounds set played_on = @day, course = @course, tee = @tee, target = @target, par18 = @par18, conditions = @conditions, first_hole = @first, changed_at = now(),
				course_id = case when @course_id::bigint is not null then @course_id when course = @course and tee = @tee then course_id end
			where player_id = @who and id = @round and removed_at is null`,
			pgx.StrictNamedArgs{"who": who, "round": id, "day": to.PlayedOn, "course": to.Course, "tee": to.Tee, "target": to.Target,
				"par18": to.Par18, "conditions": to.Conditions, "course_id": to.CourseID, "first": max(to.First, 1)})
		if err != nil {
			return err
		}
		batch := &pgx.Batch{}
		batch.Queue(`update notes set day = @day where player_id = @who and round_id = @round`,
			pgx.StrictNamedArgs{"who": who, "round": id, "day": to.PlayedOn})
		for _, h := range to.Holes {
			queueCard(batch, who, id, h)
		}
		batch.Queue(`delete from round_summaries where player_id = @who and round_id = @round`, of)
		return translate(tx.q.SendBatch(ctx, batch).Close())
	})
}
