package db

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// Coaching is the access of a coach to a pupil.
type Coaching struct {
	PupilID, CoachID golf.PlayerID
	Pupil, Coach     string     // their names
	SharedFrom       *time.Time // nil for everything
	Confirmed        bool
}

const coachingColumns = `c.player_id as pupil_id, c.coach_id, p.name as pupil, k.name as coach, c.shared_from, c.confirmed_at is not null as confirmed`

// Coaching returns the access of a coach to a pupil, confirmed or not; asker is one of
// the two.
func (s *Store) Coaching(ctx context.Context, asker, pupil, coach golf.PlayerID) (Coaching, error) {
	return one(ctx, s.q, pgx.RowToStructByName[Coaching], `
		select `+coachingColumns+` from coachings c join players p on p.id = c.player_id join players k on k.id = c.coach_id
		where c.player_id = @pupil and c.coach_id = @coach and @asker in (c.player_id, c.coach_id)`,
		pgx.StrictNamedArgs{"asker": asker, "pupil": pupil, "coach": coach})
}

// resumable holds for accesses that who ended them can take up again.
const resumable = `ended_by = @who and ended_at > now() - interval '1 day'`

var endedCoachings = `
	select ` + coachingColumns + ` from ended_coachings c join players p on p.id = c.player_id join players k on k.id = c.coach_id
	where @who in (c.player_id, c.coach_id) and ` + resumable + `
		and not exists (select 1 from coachings later where later.player_id = c.player_id and later.coach_id = c.coach_id)
	order by c.ended_at desc, c.player_id, c.coach_id`

// EndedCoachings lists the accesses that a pupil or a coach ended within a day, without
// those of whom there is a later one.
func (s *Store) EndedCoachings(ctx context.Context, who golf.PlayerID) ([]Coaching, error) {
	return many(ctx, s.q, pgx.RowToStructByName[Coaching], endedCoachings, pgx.StrictNamedArgs{"who": who})
}

// ResumeCoaching takes up an access again that who, the pupil or the coach, ended
// within a day. It returns golf.ErrNotFound where there is a later one, which stays.
func (s *Store) ResumeCoaching(ctx context.Context, who, pupil, coach golf.PlayerID) error {
	of := pgx.StrictNamedArgs{"who": who, "pupil": pupil, "coach": coach}
	return s.Tx(ctx, func(tx *Store) error {
		confirmed, err := one(ctx, tx.q, pgx.RowTo[bool], `
			select confirmed_at is not null from ended_coachings where player_id = @pupil and coach_id = @coach and @who in (player_id, coach_id) and `+resumable, of)
		if err != nil {
			return err
		}
		if confirmed {
			if err := changeOne(ctx, tx.q, `update players set teaches = true where id = @coach`, pgx.StrictNamedArgs{"coach": coach}); err != nil {
				return err
			}
		}
		return changeOne(ctx, tx.q, `
			with back as (
				delete from ended_coachings where player_id = @pupil and coach_id = @coach and @who in (player_id, coach_id) and `+resumable+`
				returning player_id, coach_id, shared_from, accepted_at, confirmed_at, looked_at, before_at, archived_at
			)
			insert into coachings (player_id, coach_id, shared_from, accepted_at, confirmed_at, looked_at, before_at, archived_at)
			select player_id, coach_id, shared_from, accepted_at, confirmed_at, looked_at, before_at, archived_at from back
			on conflict (player_id, coach_id) do nothing`, of)
	})
}

// ShareFrom changes the first day that a coach sees of a pupil's, zero for everything;
// only the pupil does. The day of what the pupil asked the coach by a code no longer holds.
func (s *Store) ShareFrom(ctx context.Context, pupil, coach golf.PlayerID, from golf.Date) error {
	return changeOne(ctx, s.q, `
		with asked as (
			delete from coach_requests q where q.player_id = @pupil and q.coach_id = @coach
				and exists (select 1 from coachings c where c.player_id = @pupil and c.coach_id = @coach)
		)
		update coachings set shared_from = @from where player_id = @pupil and coach_id = @coach`,
		pgx.StrictNamedArgs{"pupil": pupil, "coach": coach, "from": day(from)})
}
