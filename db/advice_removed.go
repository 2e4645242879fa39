package db

import (
	"context"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// RemoveAdvice removes what a coach says of a hole for a pupil, with what it proposes
// there, and returns it.
func (s *Store) RemoveAdvice(ctx context.Context, coach, who golf.PlayerID, course golf.CourseID, hole int) (HoleAdvice, error) {
	return one(ctx, s.q, pgx.RowToStructByName[HoleAdvice], `
		update hole_advice set removed_at = now() where `+ofAdvice+` and `+byCoach+` and `+accessFrom("@coach", "@who")+` is not null
		returning `+adviceColumns, pgx.StrictNamedArgs{"coach": coach, "who": who, "course": course, "hole": hole})
}

// RestoreAdvice brings it back, unless the coach has said something else of the hole
// since. A proposal that was taken stands in the plan again, unless another was taken
// since.
func (s *Store) RestoreAdvice(ctx context.Context, coach, who golf.PlayerID, id int64) (HoleAdvice, error) {
	var restored HoleAdvice
	err := s.Tx(ctx, func(tx *Store) error {
		args := pgx.StrictNamedArgs{"who": who}
		if _, err := one(ctx, tx.q, pgx.RowTo[golf.PlayerID], `select id from players where id = @who for update`, args); err != nil {
			return err
		}
		args["coach"], args["id"] = coach, id
		var err error
		restored, err = one(ctx, tx.q, pgx.RowToStructByName[HoleAdvice], `
			update hole_advice set removed_at = null, answer = case when answer = 'taken' and exists (
				select 1 from hole_advice o where o.player_id = @who and o.course_id = hole_advice.course_id and o.hole = hole_advice.hole and o.answer = 'taken' and o.removed_at is null
			) then 'declined' else answer end
			where player_id = @who and id = @id and `+byCoach+` and `+back+` and `+accessFrom("@coach", "@who")+` is not null and not exists (
				select 1 from hole_advice o where o.player_id = @who and o.course_id = hole_advice.course_id and o.hole = hole_advice.hole and o.coach_id = @coach and o.removed_at is null)
			returning `+adviceColumns, args)
		return err
	})
	return restored, err
}
