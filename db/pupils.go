package db

import (
	"context"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// Grouped says that a coach put a pupil into a group of the coach's own.
type Grouped struct {
	PupilID golf.PlayerID
	Name    string // of the group
}

const groups = `select pupil_id, name from pupil_groups where player_id = @coach order by lower(name), name, pupil_id`

// Groups lists which pupils a coach has put into which groups, by the names of the
// groups. Only the coach can read them.
func (s *Store) Groups(ctx context.Context, coach golf.PlayerID) ([]Grouped, error) {
	return many(ctx, s.q, pgx.RowToStructByName[Grouped], groups, pgx.StrictNamedArgs{"coach": coach})
}

// SetGroups puts a coach's pupil into some groups and takes the pupil out of all
// others. It returns golf.ErrNotFound when the coach has no access to the pupil.
func (s *Store) SetGroups(ctx context.Context, coach, pupil golf.PlayerID, names []string) error {
	if names == nil {
		names = []string{}
	}
	return s.Tx(ctx, func(tx *Store) error {
		if _, err := tx.Seen(ctx, coach, pupil); err != nil {
			return err
		}
		of := pgx.StrictNamedArgs{"coach": coach, "pupil": pupil, "names": names}
		if _, err := change(ctx, tx.q, `delete from pupil_groups where player_id = @coach and pupil_id = @pupil and name <> all(@names::text[])`, of); err != nil {
			return err
		}
		_, err := change(ctx, tx.q, `
			insert into pupil_groups (player_id, pupil_id, name) select @coach, @pupil, name from unnest(@names::text[]) name
			on conflict (player_id, pupil_id, name) do nothing`, of)
		return err
	})
}

// RenameGroup gives a group of a coach's another name; where there is one of that
// name, the two become one.
func (s *Store) RenameGroup(ctx context.Context, coach golf.PlayerID, from, to string) error {
	if from == to {
		return nil
	}
	return s.Tx(ctx, func(tx *Store) error {
		of := pgx.StrictNamedArgs{"coach": coach, "from": from, "to": to}
		if _, err := change(ctx, tx.q, `
			insert into pupil_groups (player_id, pupil_id, name) select player_id, pupil_id, @to from pupil_groups where player_id = @coach and name = @from
			on conflict (player_id, pupil_id, name) do nothing`, of); err != nil {
			return err
		}
		n, err := change(ctx, tx.q, `delete from pupil_groups where player_id = @coach and name = @from`, pgx.StrictNamedArgs{"coach": coach, "from": from})
		if err == nil && n == 0 {
			return golf.ErrNotFound
		}
		return err
	})
}

// ArchivePupil puts a pupil away from a coach's roster, or brings the pupil back.
// The coach's access stays as it is.
func (s *Store) ArchivePupil(ctx context.Context, coach, pupil golf.PlayerID, away bool) error {
	of := pgx.StrictNamedArgs{"coach": coach, "pupil": pupil}
	if away {
		return changeOne(ctx, s.q, `update coachings set archived_at = now() where player_id = @pupil and coach_id = @coach and confirmed_at is not null`, of)
	}
	return changeOne(ctx, s.q, `update coachings set archived_at = null where player_id = @pupil and coach_id = @coach and confirmed_at is not null`, of)
}
