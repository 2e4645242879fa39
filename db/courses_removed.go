package db

import (
	"context"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// mayRemove holds for a course that asker may remove and bring back: asker added
// it, or is a steward.
const mayRemove = `(c.owner_id = @asker or exists (select 1 from players p where p.id = @asker and p.steward))`

// RemoveCourse removes a course, so that RestoreCourse can bring it back. Its
// rounds keep their card and their ratings. Removing it again changes nothing and
// is no error: a button may be pressed twice.
func (s *Store) RemoveCourse(ctx context.Context, asker golf.PlayerID, id golf.CourseID) error {
	of := pgx.StrictNamedArgs{"asker": asker, "id": id}
	n, err := change(ctx, s.q, `update courses c set removed_at = now() where c.id = @id and c.removed_at is null and `+mayRemove, of)
	if err != nil || n > 0 {
		return err
	}
	_, err = one(ctx, s.q, pgx.RowTo[golf.CourseID], `select c.id from courses c where c.id = @id and `+mayRemove, of)
	return err
}

// RestoreCourse brings back a course that was removed in the last 30 days. One
// that was never removed stays as it is.
func (s *Store) RestoreCourse(ctx context.Context, asker golf.PlayerID, id golf.CourseID) error {
	return changeOne(ctx, s.q, `
		update courses c set removed_at = null where c.id = @id and (c.removed_at is null or c.`+back+`) and `+mayRemove,
		pgx.StrictNamedArgs{"asker": asker, "id": id})
}

// MergeCourse moves the rounds of a duplicate to the course that is kept and
// removes the duplicate. Only a steward may. The rounds keep their cards.
func (s *Store) MergeCourse(ctx context.Context, who golf.PlayerID, duplicate, kept golf.CourseID) error {
	return s.Tx(ctx, func(tx *Store) error {
		err := changeOne(ctx, tx.q, `
			update courses c set removed_at = now()
			where c.id = @duplicate and c.id <> @kept and c.removed_at is null
			  and exists (select 1 from courses k where k.id = @kept and k.removed_at is null)
			  and exists (select 1 from players p where p.id = @who and p.steward)`,
			pgx.StrictNamedArgs{"who": who, "duplicate": duplicate, "kept": kept})
		if err != nil {
			return err
		}
		_, err = change(ctx, tx.q, `update rounds set course_id = @kept where course_id = @duplicate`,
			pgx.StrictNamedArgs{"duplicate": duplicate, "kept": kept})
		return err
	})
}
