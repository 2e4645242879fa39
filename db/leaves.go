package db

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// Coach is an account that a pupil has let in, or that waits to be confirmed.
type Coach struct {
	ID         golf.PlayerID
	Name       string
	Email      string
	SharedFrom *time.Time // nil for everything
	Confirmed  bool
	LookedAt   *time.Time
}

// NewCoachInvitation keeps the hash of a token by which one account may ask to
// see the pupil's rounds from a day on, for some days and once.
func (s *Store) NewCoachInvitation(ctx context.Context, pupil golf.PlayerID, tokenHash []byte, from golf.Date, days int) error {
	_, err := change(ctx, s.q, `
		insert into coach_invitations (player_id, token_hash, shared_from, expires_at)
		values (@pupil, @token, @from, now() + make_interval(days => @days))`,
		pgx.StrictNamedArgs{"pupil": pupil, "token": tokenHash, "from": day(from), "days": days})
	return err
}

// RevokeCoachInvitations takes back every link of the pupil's that is not used.
func (s *Store) RevokeCoachInvitations(ctx context.Context, pupil golf.PlayerID) error {
	_, err := change(ctx, s.q, `delete from coach_invitations where player_id = @pupil`, pgx.StrictNamedArgs{"pupil": pupil})
	return err
}

// CoachInvitations counts the pupil's links that can still be used.
func (s *Store) CoachInvitations(ctx context.Context, pupil golf.PlayerID) (int, error) {
	return one(ctx, s.q, pgx.RowTo[int], `select count(*) from coach_invitations where player_id = @pupil and expires_at > now()`,
		pgx.StrictNamedArgs{"pupil": pupil})
}

// CoachInvitation returns the name of the pupil whose link this is, and changes
// nothing.
func (s *Store) CoachInvitation(ctx context.Context, pupil golf.PlayerID, tokenHash []byte) (name string, err error) {
	return one(ctx, s.q, pgx.RowTo[string], `
		select p.name from coach_invitations i join players p on p.id = i.player_id
		where i.player_id = @pupil and i.token_hash = @token and i.expires_at > now()`,
		pgx.StrictNamedArgs{"pupil": pupil, "token": tokenHash})
}

// AcceptCoaching uses a link up: the coach then waits for the pupil's word.
// Not found says that the link is used, revoked or expired, or the coach's own.
func (s *Store) AcceptCoaching(ctx context.Context, coach, pupil golf.PlayerID, tokenHash []byte) error {
	return changeOne(ctx, s.q, `
		with used as (
			delete from coach_invitations
			where player_id = @pupil and token_hash = @token and expires_at > now() and player_id <> @coach
			returning player_id, shared_from
		)
		insert into coachings (player_id, coach_id, shared_from)
		select player_id, @coach, shared_from from used
		on conflict (player_id, coach_id) do update set shared_from = excluded.shared_from, accepted_at = now(), confirmed_at = null`,
		pgx.StrictNamedArgs{"coach": coach, "pupil": pupil, "token": tokenHash})
}

// ConfirmCoach lets a coach in who has accepted.
func (s *Store) ConfirmCoach(ctx context.Context, pupil, coach golf.PlayerID) error {
	return changeOne(ctx, s.q, `update coachings set confirmed_at = now() where player_id = @pupil and coach_id = @coach and confirmed_at is null`,
		pgx.StrictNamedArgs{"pupil": pupil, "coach": coach})
}

// EndCoaching ends a leave, confirmed or not, and what the coach proposed; who
// is the pupil or the coach.
func (s *Store) EndCoaching(ctx context.Context, who, pupil, coach golf.PlayerID) error {
	return changeOne(ctx, s.q, `
		with proposed as (
			delete from target_proposals where player_id = @pupil and coach_id = @coach and @who in (player_id, coach_id)
		)
		delete from coachings where player_id = @pupil and coach_id = @coach and @who in (player_id, coach_id)`,
		pgx.StrictNamedArgs{"who": who, "pupil": pupil, "coach": coach})
}

// Coaches lists whom the pupil has let in, and who waits for it.
func (s *Store) Coaches(ctx context.Context, pupil golf.PlayerID) ([]Coach, error) {
	return many(ctx, s.q, pgx.RowToStructByName[Coach], `
		select c.coach_id as id, p.name, p.email, c.shared_from, c.confirmed_at is not null as confirmed, c.looked_at
		from coachings c join players p on p.id = c.coach_id where c.player_id = @pupil order by lower(p.name), c.coach_id`,
		pgx.StrictNamedArgs{"pupil": pupil})
}

// CoachesAlone reports whether somebody has pupils and no round.
func (s *Store) CoachesAlone(ctx context.Context, who golf.PlayerID) (bool, error) {
	return one(ctx, s.q, pgx.RowTo[bool], `
		select exists (select 1 from coachings where coach_id = @who and confirmed_at is not null)
			and not exists (select 1 from rounds where player_id = @who and removed_at is null)`, pgx.StrictNamedArgs{"who": who})
}

// Seen returns a player whose pages asker may see.
func (s *Store) Seen(ctx context.Context, asker, player golf.PlayerID) (Player, error) {
	return one(ctx, s.q, pgx.RowToStructByName[Player], `select `+playerColumns+` from players where id = @player and leave_from(@asker, @player) is not null`,
		pgx.StrictNamedArgs{"asker": asker, "player": player})
}
