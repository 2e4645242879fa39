package db

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// Session is a device that is signed in.
type Session struct {
	TokenHash []byte
	Device    string
	CreatedAt time.Time
	SeenAt    time.Time
}

// sessionLife is how long a session lasts after its last use, and sessionMost how long
// it lasts after its beginning, however often it is used.
const (
	sessionLife = "60 days"
	sessionMost = "180 days"
)

// liveSession holds for sessions that have not ended.
const liveSession = `seen_at > now() - interval '` + sessionLife + `' and created_at > now() - interval '` + sessionMost + `'`

// NewSession signs a device in.
func (s *Store) NewSession(ctx context.Context, who golf.PlayerID, tokenHash []byte, device string) error {
	_, err := change(ctx, s.q, `insert into sessions (player_id, token_hash, device) values (@who, @token, @device)`,
		pgx.StrictNamedArgs{"who": who, "token": tokenHash, "device": device})
	return err
}

// SignedIn returns the player of a session, and whether this use of it was recorded,
// which happens at most once a minute.
func (s *Store) SignedIn(ctx context.Context, who golf.PlayerID, tokenHash []byte) (p Player, noted bool, err error) {
	row, err := one(ctx, s.q, pgx.RowToStructByName[struct {
		Player
		Noted  bool
		Unread int
	}], `
		with noted as (
			update sessions set seen_at = now()
			where player_id = @who and token_hash = @token and `+liveSession+` and seen_at < now() - interval '1 minute'
			returning player_id
		)
		select `+playerColumns+`, exists (select 1 from noted) as noted,
			(select count(*) from notices where player_id = @who and read_at is null) as unread from players
		where id = @who and exists (
			select 1 from sessions where player_id = @who and token_hash = @token and `+liveSession+`)`,
		pgx.StrictNamedArgs{"who": who, "token": tokenHash})
	row.Notices = row.Unread
	return row.Player, row.Noted, err
}

// Sessions lists the devices a player is signed in on, the last used first.
func (s *Store) Sessions(ctx context.Context, who golf.PlayerID) ([]Session, error) {
	return many(ctx, s.q, pgx.RowToStructByName[Session], `
		select token_hash, device, created_at, seen_at from sessions
		where player_id = @who and `+liveSession+`
		order by seen_at desc`, pgx.StrictNamedArgs{"who": who})
}

// EndSession signs the player out on one device.
func (s *Store) EndSession(ctx context.Context, who golf.PlayerID, tokenHash []byte) error {
	return changeOne(ctx, s.q, `delete from sessions where player_id = @who and token_hash = @token`,
		pgx.StrictNamedArgs{"who": who, "token": tokenHash})
}

// EndOtherSessions signs the player out on every device except that of a token.
func (s *Store) EndOtherSessions(ctx context.Context, who golf.PlayerID, keep []byte) error {
	_, err := change(ctx, s.q, `delete from sessions where player_id = @who and token_hash <> coalesce(@keep, ''::bytea)`,
		pgx.StrictNamedArgs{"who": who, "keep": keep})
	return err
}

// NewInvitation stores the hash of an invitation's token, which is valid for some
// days.
func (s *Store) NewInvitation(ctx context.Context, who golf.PlayerID, tokenHash []byte, days int) error {
	_, err := change(ctx, s.q, `
		insert into invitations (token_hash, made_by, expires_at) values (@token, @who, now() + make_interval(days => @days))`,
		pgx.StrictNamedArgs{"who": who, "token": tokenHash, "days": days})
	return err
}

// UseInvitation uses up an invitation.
func (s *Store) UseInvitation(ctx context.Context, tokenHash []byte) error {
	return changeOne(ctx, s.q, `delete from invitations where token_hash = @token and expires_at > now()`,
		pgx.StrictNamedArgs{"token": tokenHash})
}
