package db

import (
	"context"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// mayRemove is the condition of who may remove a course and bring it back: the
// player who added it, and the steward.
const mayRemove = `(c.owner_id = @asker or exists (select from players p where p.id = @asker and p.steward))`

// RemoveCourse removes a course, so that RestoreCourse can bring it back. Its
// rounds keep their card and their ratings. A second removal changes nothing, as
// of a button pressed twice.
func (s *Store) RemoveCourse(ctx context.Context, asker golf.PlayerID, id golf.CourseID) error {
	return changeOne(ctx, s.q, `update courses c set removed_at = coalesce(c.removed_at, now()) where c.id = @id and `+mayRemove,
		pgx.StrictNamedArgs{"asker": asker, "id": id})
}

// RestoreCourse brings back a course that was removed in the last 30 days.
func (s *Store) RestoreCourse(ctx context.Context, asker golf.PlayerID, id golf.CourseID) error {
	return changeOne(ctx, s.q, `
		update courses c set removed_at = null where c.id = @id and coalesce(c.removed_at, now()) > now() - interval '`+removalSpan+`' and `+mayRemove,
		pgx.StrictNamedArgs{"asker": asker, "id": id})
}

// MergeCourse moves the rounds of a duplicate to the course that is kept and
// removes the duplicate. Only the steward may. The rounds keep their cards.
func (s *Store) MergeCourse(ctx context.Context, who golf.PlayerID, duplicate, kept golf.CourseID) error {
	return s.Tx(ctx, func(tx *Store) error {
		err := changeOne(ctx, tx.q, `
			update courses c set removed_at = now()
			where c.id = @duplicate and c.id <> @kept and c.removed_at is null
			  and exists (select from courses k where k.id = @kept and k.removed_at is null)
			  and exists (select from players p where p.id = @who and p.steward)`,
			pgx.StrictNamedArgs{"who": who, "duplicate": duplicate, "kept": kept})
		if err != nil {
			return err
		}
		_, err = change(ctx, tx.q, `update rounds set course_id = @kept where course_id = @duplicate`,
			pgx.StrictNamedArgs{"duplicate": duplicate, "kept": kept})
		return err
	})
}
