package db

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// trySpan is how long tries of a password count, from the first of them, and
// deviceLife how long a device stays known after it last signed in.
const (
	trySpan    = "15 minutes"
	deviceLife = "1 year"
)

// Try is a try of a password: for which account and from where, both as hashes.
type Try struct {
	Account []byte
	Client  []byte
	Known   bool // the client has signed in to the account before; its tries are not added to those of all clients
}

// Tries is how often a password was tried.
type Tries struct {
	Own  int           // by this client, this try included
	All  int           // by all clients that are not Known; 0 when this try is not one of them
	Wait time.Duration // until the tries of this client no longer count
}

// countAgain adds a try to a row that exists, or begins its count again.
const countAgain = `on conflict (account, client) do update set
	n = case when excluded.began_at - tries.began_at > interval '` + trySpan + `' then 1 else tries.n + 1 end,
	began_at = case when excluded.began_at - tries.began_at > interval '` + trySpan + `' then excluded.began_at else tries.began_at end`

// CountTry counts a try before it is made, and returns how many there have been.
// Tries at the same moment are counted one after the other. A try beyond the limit
// of the client will not be made, so that it does not count for the account.
func (s *Store) CountTry(ctx context.Context, t Try, most int) (Tries, error) {
	row, err := one(ctx, s.q, pgx.RowToStructByName[struct {
		Own, All int
		Wait     float64 // s
	}], `
		with own as (
			insert into tries (account, client, n, began_at) values (@account, @client, 1, now()) `+countAgain+`
			returning n, began_at
		), everywhere as (
			insert into tries (account, client, n, began_at) select @account, '', 1, now() from own where n <= @most and not @known `+countAgain+`
			returning n
		)
		select n as own, extract(epoch from began_at + interval '`+trySpan+`' - now())::double precision as wait, coalesce((select n from everywhere), 0) as all from own`,
		pgx.StrictNamedArgs{"account": t.Account, "client": t.Client, "known": t.Known, "most": most})
	return Tries{Own: row.Own, All: row.All, Wait: time.Duration(row.Wait * float64(time.Second))}, err
}

// TryPassed forgets the tries of a client that knew the password, and its last try
// for the account.
func (s *Store) TryPassed(ctx context.Context, t Try) error {
	_, err := change(ctx, s.q, `
		with own as (delete from tries where account = @account and client = @client)
		update tries set n = n - 1 where account = @account and client = '' and n > 0 and not @known`,
		pgx.StrictNamedArgs{"account": t.Account, "client": t.Client, "known": t.Known})
	return err
}

// ForgetTries forgets all tries for an account.
func (s *Store) ForgetTries(ctx context.Context, account []byte) error {
	_, err := change(ctx, s.q, `delete from tries where account = @account`, pgx.StrictNamedArgs{"account": account})
	return err
}

// KnowDevice remembers a browser that the player signed in with.
func (s *Store) KnowDevice(ctx context.Context, who golf.PlayerID, tokenHash []byte) error {
	_, err := change(ctx, s.q, `
		insert into devices (player_id, token_hash, seen_at) values (@who, @token, now())
		on conflict (player_id, token_hash) do update set seen_at = excluded.seen_at`, pgx.StrictNamedArgs{"who": who, "token": tokenHash})
	return err
}

// KnowsDevice reports whether the player has signed in with a browser before.
func (s *Store) KnowsDevice(ctx context.Context, who golf.PlayerID, tokenHash []byte) (bool, error) {
	return one(ctx, s.q, pgx.RowTo[bool], `
		select exists (select 1 from devices
			where player_id = @who and token_hash = @token and seen_at > now() - interval '`+deviceLife+`')`,
		pgx.StrictNamedArgs{"who": who, "token": tokenHash})
}
