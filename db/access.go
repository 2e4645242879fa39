package db

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// accessFrom is the SQL of the first day of a player's that asker may see, both
// given as SQL: null, which no day is after, when asker has no access. It is a
// piece of each statement rather than a function in the database, because a
// server that shards by player cannot call such a function on a shard. A column is
// given with its table, since the piece has a player_id of its own.
func accessFrom(asker, player string) string {
	return `(case when ` + asker + `::bigint = ` + player + `::bigint then '-infinity'::date
		else (select coalesce(given.shared_from, '-infinity'::date) from coachings given
			where given.player_id = ` + player + ` and given.coach_id = ` + asker + ` and given.confirmed_at is not null) end)`
}

// Coach is an account that a pupil has given access, or that is waiting for the
// pupil to confirm it.
type Coach struct {
	ID         golf.PlayerID
	Name       string
	Email      string
	SharedFrom *time.Time // the first day the coach sees; nil for everything
	Confirmed  bool
	LookedAt   *time.Time // when the coach last opened a page; nil for never
}

// NewCoachInvitation stores the hash of a token with which one account may ask,
// once and within some days, to see the pupil's rounds from a day on.
func (s *Store) NewCoachInvitation(ctx context.Context, pupil golf.PlayerID, tokenHash []byte, from golf.Date, days int) error {
	_, err := change(ctx, s.q, `
		insert into coach_invitations (player_id, token_hash, shared_from, expires_at)
		values (@pupil, @token, @from, now() + make_interval(days => @days))`,
		pgx.StrictNamedArgs{"pupil": pupil, "token": tokenHash, "from": day(from), "days": days})
	return err
}

// RevokeCoachInvitations cancels every link of the pupil's that has not been used.
func (s *Store) RevokeCoachInvitations(ctx context.Context, pupil golf.PlayerID) error {
	_, err := change(ctx, s.q, `update coach_invitations set revoked_at = now() where player_id = @pupil and used_at is null and revoked_at is null`, pgx.StrictNamedArgs{"pupil": pupil})
	return err
}

// CoachInvitations counts the pupil's links that can still be used.
func (s *Store) CoachInvitations(ctx context.Context, pupil golf.PlayerID) (int, error) {
	return one(ctx, s.q, pgx.RowTo[int], `select count(*) from coach_invitations where player_id = @pupil and `+usable,
		pgx.StrictNamedArgs{"pupil": pupil})
}

// usable holds for links that can still be used.
const usable = `expires_at > now() and used_at is null and revoked_at is null`

// Invited is a link that a pupil made, for the account that opened it.
type Invited struct {
	Name       string     // the pupil's
	SharedFrom *time.Time // the first day that it gives access to; nil for everything
	Own        bool       // the asker made it
	Used       bool
	Mine       bool // the asker used it
	Revoked    bool
	Expired    bool
	Waits      bool // the asker has accepted, and waits for the pupil
	Coaches    bool // the asker has access to the pupil
}

// CoachInvitation returns what a link is to the asker, without using it up. Links are
// known for a month after they expire.
func (s *Store) CoachInvitation(ctx context.Context, asker, pupil golf.PlayerID, tokenHash []byte) (Invited, error) {
	return one(ctx, s.q, pgx.RowToStructByName[Invited], `
		select p.name, i.shared_from, i.player_id = @asker as own, i.used_at is not null as used, coalesce(i.used_by = @asker, false) as mine,
			i.revoked_at is not null as revoked, i.expires_at <= now() as expired,
			exists (select 1 from coachings c where c.player_id = i.player_id and c.player_id = @pupil and c.coach_id = @asker and c.confirmed_at is null) as waits,
			exists (select 1 from coachings c where c.player_id = i.player_id and c.player_id = @pupil and c.coach_id = @asker and c.confirmed_at is not null) as coaches
		from coach_invitations i join players p on p.id = i.player_id
		where i.player_id = @pupil and i.token_hash = @token`,
		pgx.StrictNamedArgs{"asker": asker, "pupil": pupil, "token": tokenHash})
}

// AcceptCoaching uses up a link; the coach then waits for the pupil to confirm.
// A coach who has access already keeps it: a link from an earlier day widens it at
// once, and one from a later day takes nothing away. It returns golf.ErrNotFound when
// the link has been used or revoked, has expired, or is the coach's own.
func (s *Store) AcceptCoaching(ctx context.Context, coach, pupil golf.PlayerID, tokenHash []byte) error {
	return changeOne(ctx, s.q, `
		with used as (
			update coach_invitations set used_at = now(), used_by = @coach
			where player_id = @pupil and token_hash = @token and `+usable+` and player_id <> @coach
			returning player_id, shared_from
		), ended as (
			delete from ended_coachings where player_id = @pupil and coach_id = @coach and exists (select 1 from used)
		)
		insert into coachings (player_id, coach_id, shared_from, accepted_at)
		select player_id, @coach, shared_from, now() from used
		on conflict (player_id, coach_id) do update set accepted_at = excluded.accepted_at,
			shared_from = case when coachings.confirmed_at is null then excluded.shared_from
				when coachings.shared_from is null or excluded.shared_from is null then null
				else least(coachings.shared_from, excluded.shared_from) end`,
		pgx.StrictNamedArgs{"coach": coach, "pupil": pupil, "token": tokenHash})
}

// ConfirmCoach gives access to a coach who has accepted. What the pupil asked the coach
// by a code, and an access that ended, are then settled.
func (s *Store) ConfirmCoach(ctx context.Context, pupil, coach golf.PlayerID) error {
	of := pgx.StrictNamedArgs{"pupil": pupil, "coach": coach}
	return s.Tx(ctx, func(tx *Store) error {
		waits, err := one(ctx, tx.q, pgx.RowTo[bool], `select exists (select 1 from coachings where player_id = @pupil and coach_id = @coach and confirmed_at is null)`, of)
		if err != nil {
			return err
		}
		if !waits {
			return golf.ErrNotFound
		}
		if err := changeOne(ctx, tx.q, `update players set teaches = true where id = @coach`, pgx.StrictNamedArgs{"coach": coach}); err != nil {
			return err
		}
		return changeOne(ctx, tx.q, `
			with asked as (
				delete from coach_requests where player_id = @pupil and coach_id = @coach
			), ended as (
				delete from ended_coachings where player_id = @pupil and coach_id = @coach
			)
			update coachings set confirmed_at = now() where player_id = @pupil and coach_id = @coach and confirmed_at is null`, of)
	})
}

// EndCoaching ends a coach's access, confirmed or not, and deletes the target
// that the coach proposed and what the pupil asked the coach by a code; who is the
// pupil or the coach, and can take it up again for a day.
func (s *Store) EndCoaching(ctx context.Context, who, pupil, coach golf.PlayerID) error {
	return s.Tx(ctx, func(tx *Store) error {
		if who == pupil || who == coach {
			if err := tx.teachesWithout(ctx, coach, pupil); err != nil {
				return err
			}
		}
		return changeOne(ctx, tx.q, `
			with proposed as (
				delete from target_proposals where player_id = @pupil and coach_id = @coach and @who in (player_id, coach_id)
			), asked as (
				delete from coach_requests where player_id = @pupil and coach_id = @coach and @who in (player_id, coach_id)
			), gone as (
				delete from coachings where player_id = @pupil and coach_id = @coach and @who in (player_id, coach_id)
				returning player_id, coach_id, shared_from, accepted_at, confirmed_at, looked_at, before_at, archived_at
			)
			insert into ended_coachings (player_id, coach_id, shared_from, accepted_at, confirmed_at, looked_at, before_at, archived_at, ended_at, ended_by)
			select player_id, coach_id, shared_from, accepted_at, confirmed_at, looked_at, before_at, archived_at, now(), @who from gone
			on conflict (player_id, coach_id) do update set shared_from = excluded.shared_from, accepted_at = excluded.accepted_at, confirmed_at = excluded.confirmed_at,
				looked_at = excluded.looked_at, before_at = excluded.before_at, archived_at = excluded.archived_at, ended_at = excluded.ended_at, ended_by = excluded.ended_by`,
			pgx.StrictNamedArgs{"who": who, "pupil": pupil, "coach": coach})
	})
}

// otherPupils asks whether a coach has pupils besides one.
const otherPupils = `select exists (select 1 from coachings where coach_id = @coach and player_id <> @pupil and confirmed_at is not null)`

// teachesWithout notes on the account of a coach whether there are pupils besides
// one who is about to leave. It locks the account, so that of two who leave at once
// the second finds nobody left. A sharded server wants this before it changes the
// pupil's rows.
func (s *Store) teachesWithout(ctx context.Context, coach, pupil golf.PlayerID) error {
	if _, err := many(ctx, s.q, pgx.RowTo[golf.PlayerID], `select id from players where id = @coach for no key update`, pgx.StrictNamedArgs{"coach": coach}); err != nil {
		return err
	}
	others, err := one(ctx, s.q, pgx.RowTo[bool], otherPupils, pgx.StrictNamedArgs{"coach": coach, "pupil": pupil})
	if err != nil || others {
		return err
	}
	_, err = change(ctx, s.q, `update players set teaches = false where id = @coach and teaches`, pgx.StrictNamedArgs{"coach": coach})
	return err
}

// leavesCoaches does the same for every coach of a pupil whose account goes.
func (s *Store) leavesCoaches(ctx context.Context, pupil golf.PlayerID) error {
	coaches, err := many(ctx, s.q, pgx.RowTo[golf.PlayerID], `select coach_id from coachings where player_id = @pupil and confirmed_at is not null order by coach_id`,
		pgx.StrictNamedArgs{"pupil": pupil})
	for _, coach := range coaches {
		if err := s.teachesWithout(ctx, coach, pupil); err != nil {
			return err
		}
	}
	return err
}

// Coaches lists the coaches who have access to the pupil, and those still waiting
// for it, by name.
func (s *Store) Coaches(ctx context.Context, pupil golf.PlayerID) ([]Coach, error) {
	return many(ctx, s.q, pgx.RowToStructByName[Coach], `
		select c.coach_id as id, p.name, p.email, c.shared_from, c.confirmed_at is not null as confirmed, c.looked_at
		from coachings c join players p on p.id = c.coach_id where c.player_id = @pupil order by lower(p.name), c.coach_id`,
		pgx.StrictNamedArgs{"pupil": pupil})
}

// OnlyCoaches reports whether a player has pupils and no rounds.
func (s *Store) OnlyCoaches(ctx context.Context, who golf.PlayerID) (bool, error) {
	return one(ctx, s.q, pgx.RowTo[bool], `
		select teaches and not exists (select 1 from rounds where player_id = @who and removed_at is null) from players where id = @who`, pgx.StrictNamedArgs{"who": who})
}

// SeenPlayer is a player whose pages somebody may see.
type SeenPlayer struct {
	Player
	SharedFrom *time.Time // the first day that can be seen; nil for everything
}

// Seen returns a player whose pages asker may see, golf.ErrNotFound otherwise.
func (s *Store) Seen(ctx context.Context, asker, player golf.PlayerID) (SeenPlayer, error) {
	return one(ctx, s.q, pgx.RowToStructByName[SeenPlayer], `
		select `+playerColumns+`, nullif(`+accessFrom("@asker", "@player")+`, '-infinity'::date) as shared_from from players where id = @player and `+accessFrom("@asker", "@player")+` is not null`,
		pgx.StrictNamedArgs{"asker": asker, "player": player})
}
