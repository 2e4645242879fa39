package db

import (
	"context"
	"errors"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// AccountLine is an account as a steward sees it, without any of its rounds.
type AccountLine struct {
	ID        golf.PlayerID
	Email     string
	Name      string
	Steward   bool
	CreatedAt time.Time
	ResetEnds *time.Time // when an unused link for a new password expires; nil for none
}

// Accounts lists the accounts of the server by name, for a steward only.
func (s *Store) Accounts(ctx context.Context, steward golf.PlayerID) ([]AccountLine, error) {
	return many(ctx, s.q, pgx.RowToStructByName[AccountLine], `
		select p.id, p.email, p.name, p.steward, p.created_at, r.expires_at as reset_ends
		from players p
		join players s on s.id = @steward and s.steward
		left join resets r on r.player_id = p.id and r.expires_at > now()
		order by lower(p.name), p.id`, pgx.StrictNamedArgs{"steward": steward})
}

// NewReset stores the hash of a token with which a player can set a new password,
// once and within some hours, and leaves the player a notice about it. Only a
// steward can make one.
func (s *Store) NewReset(ctx context.Context, steward, player golf.PlayerID, tokenHash []byte, hours int) error {
	return s.Tx(ctx, func(tx *Store) error {
		if err := changeOne(ctx, tx.q, `
			update players set notice = 'The steward made a link for a new password of this account.'
			where id = @player and exists (select 1 from players where id = @steward and steward)`,
			pgx.StrictNamedArgs{"player": player, "steward": steward}); err != nil {
			return err
		}
		_, err := change(ctx, tx.q, `
			insert into resets (player_id, token_hash, expires_at) values (@player, @token, now() + make_interval(hours => @hours))
			on conflict (player_id) do update set token_hash = excluded.token_hash, expires_at = excluded.expires_at`,
			pgx.StrictNamedArgs{"player": player, "token": tokenHash, "hours": hours})
		return err
	})
}

// EndReset cancels a link for a new password.
func (s *Store) EndReset(ctx context.Context, steward, player golf.PlayerID) error {
	return changeOne(ctx, s.q, `
		delete from resets
		where player_id = @player and exists (select 1 from players where id = @steward and steward)`,
		pgx.StrictNamedArgs{"player": player, "steward": steward})
}

// Invitation is an invitation that has not been used yet.
type Invitation struct {
	TokenHash []byte
	MadeBy    string // name of the steward who made it
	ExpiresAt time.Time
}

// Invitations lists the open invitations, for a steward only.
func (s *Store) Invitations(ctx context.Context, steward golf.PlayerID) ([]Invitation, error) {
	return many(ctx, s.q, pgx.RowToStructByName[Invitation], `
		select i.token_hash, p.name as made_by, i.expires_at
		from invitations i join players p on p.id = i.made_by
		where i.expires_at > now() and exists (select 1 from players where id = @steward and steward)
		order by i.expires_at, i.token_hash`, pgx.StrictNamedArgs{"steward": steward})
}

// EndInvitation cancels an invitation.
func (s *Store) EndInvitation(ctx context.Context, steward golf.PlayerID, tokenHash []byte) error {
	return changeOne(ctx, s.q, `
		delete from invitations
		where token_hash = @token and exists (select 1 from players where id = @steward and steward)`,
		pgx.StrictNamedArgs{"token": tokenHash, "steward": steward})
}

// Resetting returns the player whose password a token can set.
func (s *Store) Resetting(ctx context.Context, player golf.PlayerID, tokenHash []byte) (Player, error) {
	return one(ctx, s.q, pgx.RowToStructByName[Player], `
		select `+playerColumns+` from players
		where id = @player and exists (
			select 1 from resets where player_id = @player and token_hash = @token and expires_at > now())`,
		pgx.StrictNamedArgs{"player": player, "token": tokenHash})
}

// UseReset sets a new password, which uses up the token, and ends every session.
func (s *Store) UseReset(ctx context.Context, player golf.PlayerID, tokenHash []byte, passwordHash string) error {
	return s.Tx(ctx, func(tx *Store) error {
		if err := changeOne(ctx, tx.q, `delete from resets where player_id = @player and token_hash = @token and expires_at > now()`,
			pgx.StrictNamedArgs{"player": player, "token": tokenHash}); err != nil {
			return err
		}
		return tx.SavePassword(ctx, player, passwordHash)
	})
}

// PopNotice returns the player's notice, "" for none, and clears it. Of two
// requests at the same moment one gets it. Mostly there is none, so that nothing is
// written.
func (s *Store) PopNotice(ctx context.Context, who golf.PlayerID) (string, error) {
	notice, err := one(ctx, s.q, pgx.RowTo[string], `select notice from players where id = @who`, pgx.StrictNamedArgs{"who": who})
	if err != nil || notice == "" {
		return "", err
	}
	n, err := change(ctx, s.q, `update players set notice = '' where id = @who and notice = @notice`, pgx.StrictNamedArgs{"who": who, "notice": notice})
	if err != nil || n == 0 {
		return "", err
	}
	return notice, nil
}

// ErrLastSteward says that a server with accounts would be left without a
// steward.
var ErrLastSteward = errors.New("the last steward")

// keepASteward returns ErrLastSteward when a player is the only steward and there
// are other accounts. Inside a transaction it locks every steward until the end, so
// that two cannot leave at once.
func (s *Store) keepASteward(ctx context.Context, who golf.PlayerID) error {
	stewards, err := many(ctx, s.q, pgx.RowTo[golf.PlayerID], `select id from players where steward order by id for no key update`, pgx.StrictNamedArgs{})
	if err != nil || len(stewards) != 1 || stewards[0] != who {
		return err
	}
	others, err := one(ctx, s.q, pgx.RowTo[bool], `select exists (select 1 from players where id <> @who)`, pgx.StrictNamedArgs{"who": who})
	if err == nil && others {
		return ErrLastSteward
	}
	return err
}

// MakeSteward makes another account a steward of the server.
func (s *Store) MakeSteward(ctx context.Context, steward, player golf.PlayerID) error {
	return changeOne(ctx, s.q, `
		update players set steward = true
		where id = @player and not steward and exists (select 1 from players where id = @steward and steward)`,
		pgx.StrictNamedArgs{"player": player, "steward": steward})
}

// LeaveStewards makes a steward an ordinary account. It returns ErrLastSteward when
// there is no other steward.
func (s *Store) LeaveStewards(ctx context.Context, steward golf.PlayerID) error {
	return s.Tx(ctx, func(tx *Store) error {
		if err := tx.keepASteward(ctx, steward); err != nil {
			return err
		}
		return changeOne(ctx, tx.q, `update players set steward = false where id = @steward and steward`, pgx.StrictNamedArgs{"steward": steward})
	})
}
