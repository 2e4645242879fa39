package db

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// AccountLine is an account as its server's steward sees it: never a round.
type AccountLine struct {
	ID        golf.PlayerID
	Email     string
	Name      string
	Steward   bool
	CreatedAt time.Time
}

// Accounts lists the accounts of the server, for its steward only.
func (s *Store) Accounts(ctx context.Context, steward golf.PlayerID) ([]AccountLine, error) {
	return many(ctx, s.q, pgx.RowToStructByName[AccountLine], `
		select id, email, name, steward, created_at from players
		where exists (select 1 from players where id = @steward and steward)
		order by lower(name), id`, pgx.StrictNamedArgs{"steward": steward})
}

// NewReset keeps the hash of a token with which a player may set a new
// password, for some hours and once, and tells the player of it at the next
// sign-in. Only the steward may make one.
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

// UseReset sets a new password by a token, once, and ends every session.
func (s *Store) UseReset(ctx context.Context, player golf.PlayerID, tokenHash []byte, passwordHash string) error {
	return s.Tx(ctx, func(tx *Store) error {
		if err := changeOne(ctx, tx.q, `delete from resets where player_id = @player and token_hash = @token and expires_at > now()`,
			pgx.StrictNamedArgs{"player": player, "token": tokenHash}); err != nil {
			return err
		}
		return tx.SavePassword(ctx, player, passwordHash, nil)
	})
}

// TakeNotice returns what the player is to be told of, and forgets it.
func (s *Store) TakeNotice(ctx context.Context, who golf.PlayerID) (string, error) {
	return one(ctx, s.q, pgx.RowTo[string], `
		with told as (select id, notice from players where id = @who for update),
		     cleared as (update players set notice = '' where id = @who)
		select notice from told`, pgx.StrictNamedArgs{"who": who})
}
