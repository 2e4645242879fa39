package db

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// trySpan is how long tries of a password count, from the first of them, and
// deviceLife how long a device is known after it last signed in.
const (
	trySpan    = "15 minutes"
	deviceLife = "1 year"
)

// Try is who tries a password: for which account and from where, both as hashes.
type Try struct {
	Account []byte
	Client  []byte
	Known   bool // the client is the account's own, and adds nothing to the count of everywhere
}

// Tries are how often a password was tried.
type Tries struct {
	Own  int           // by this client, this time included
	All  int           // by every client that is not the account's own; 0 when this try is not among them
	Wait time.Duration // until those of this client count no more
}

// againTried counts a try into a row that exists.
const againTried = `on conflict (account, client) do update set
	n = case when tries.began_at < now() - interval '` + trySpan + `' then 1 else tries.n + 1 end,
	began_at = case when tries.began_at < now() - interval '` + trySpan + `' then now() else tries.began_at end`

// NoteTry counts a try before it is made, and returns how many there were. Tries
// at the same moment are counted one after the other. One beyond the most that a
// client has is not made, so it does not count for the account.
func (s *Store) NoteTry(ctx context.Context, t Try, most int) (Tries, error) {
	row, err := one(ctx, s.q, pgx.RowToStructByName[struct {
		Own, All int
		Wait     float64 // s
	}], `
		with own as (
			insert into tries (account, client, n) values (@account, @client, 1) `+againTried+`
			returning n, extract(epoch from began_at + interval '`+trySpan+`' - now())::double precision as wait
		), everywhere as (
			insert into tries (account, client, n) select @account, '', 1 from own where n <= @most and not @known `+againTried+`
			returning n
		)
		select n as own, wait, coalesce((select n from everywhere), 0) as all from own`,
		pgx.StrictNamedArgs{"account": t.Account, "client": t.Client, "known": t.Known, "most": most})
	return Tries{Own: row.Own, All: row.All, Wait: time.Duration(row.Wait * float64(time.Second))}, err
}

// TryPassed forgets the tries of a client that knew the password.
func (s *Store) TryPassed(ctx context.Context, t Try) error {
	_, err := change(ctx, s.q, `
		with own as (delete from tries where account = @account and client = @client)
		update tries set n = n - 1 where account = @account and client = '' and n > 0 and not @known`,
		pgx.StrictNamedArgs{"account": t.Account, "client": t.Client, "known": t.Known})
	return err
}

// ForgetTries forgets every try for an account.
func (s *Store) ForgetTries(ctx context.Context, account []byte) error {
	_, err := change(ctx, s.q, `delete from tries where account = @account`, pgx.StrictNamedArgs{"account": account})
	return err
}

// KnowDevice remembers a browser that the player signed in with.
func (s *Store) KnowDevice(ctx context.Context, who golf.PlayerID, tokenHash []byte) error {
	_, err := change(ctx, s.q, `
		insert into devices (player_id, token_hash) values (@who, @token)
		on conflict (player_id, token_hash) do update set seen_at = now()`, pgx.StrictNamedArgs{"who": who, "token": tokenHash})
	return err
}

// KnowsDevice reports whether the player signed in with a browser before.
func (s *Store) KnowsDevice(ctx context.Context, who golf.PlayerID, tokenHash []byte) (bool, error) {
	return one(ctx, s.q, pgx.RowTo[bool], `
		select exists (select 1 from devices
			where player_id = @who and token_hash = @token and seen_at > now() - interval '`+deviceLife+`')`,
		pgx.StrictNamedArgs{"who": who, "token": tokenHash})
}
