package db

import (
	"context"
	"crypto/subtle"
	"errors"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// Digest is the mail about new notices that an account has chosen. It begins when the
// reader of the account's address has confirmed it.
type Digest struct {
	PlayerID golf.PlayerID
	Name     string // of the account
	Email    string
	Zone     string
	Every    string // daily or weekly
	Token    string // with which whoever has a letter can end the mail
	DueAt    time.Time
	Tries    int // in vain since the last letter

	ProvedAt   *time.Time // when the reader of Email confirmed; nil before that
	AskedAt    *time.Time // when a letter with a link last went to Email; nil when one is owed
	AskedUntil *time.Time // how long its link works
	Open       bool       // its link still works
}

const digestColumns = `d.player_id, p.name, p.email, p.zone, d.every, d.token, d.due_at, d.tries,
	case when d.proved = p.email then d.proved_at end as proved_at, case when d.asked = p.email then d.asked_at end as asked_at,
	case when d.asked = p.email then d.asked_until end as asked_until, coalesce(d.asked = p.email and d.asked_until > now(), false) as open
	from digests d join players p on p.id = d.player_id`

// ChooseDigest makes an account get mail daily or weekly, the next at a moment. An
// account that got none begins with the token, and once its address is confirmed.
func (s *Store) ChooseDigest(ctx context.Context, who golf.PlayerID, every, token string, due time.Time) error {
	return s.Tx(ctx, func(tx *Store) error {
		begun, err := change(ctx, tx.q, `
			insert into digests (player_id, every, token, due_at) values (@who, @every, @token, @due) on conflict (player_id) do nothing`,
			pgx.StrictNamedArgs{"who": who, "every": every, "token": token, "due": due})
		if err != nil || begun > 0 {
			return err
		}
		return changeOne(ctx, tx.q, `update digests set every = @every, due_at = @due, tries = 0 where player_id = @who`,
			pgx.StrictNamedArgs{"who": who, "every": every, "due": due})
	})
}

// EndDigest ends the mail of an account. It begins again only when the address has
// been confirmed again.
func (s *Store) EndDigest(ctx context.Context, who golf.PlayerID) error {
	return s.Tx(ctx, func(tx *Store) error {
		if _, err := change(ctx, tx.q, `delete from digest_letters where player_id = @who`, pgx.StrictNamedArgs{"who": who}); err != nil {
			return err
		}
		_, err := change(ctx, tx.q, `delete from digests where player_id = @who`, pgx.StrictNamedArgs{"who": who})
		return err
	})
}

// Digest returns what an account has chosen, golf.ErrNotFound for no mail.
func (s *Store) Digest(ctx context.Context, who golf.PlayerID) (Digest, error) {
	return one(ctx, s.q, pgx.RowToStructByName[Digest], `select `+digestColumns+` where d.player_id = @who`, pgx.StrictNamedArgs{"who": who})
}

// DigestOf returns the same to whoever has a letter of it, golf.ErrNotFound to others.
func (s *Store) DigestOf(ctx context.Context, who golf.PlayerID, token string) (Digest, error) {
	d, err := s.Digest(ctx, who)
	if err == nil && subtle.ConstantTimeCompare([]byte(d.Token), []byte(token)) != 1 {
		err = golf.ErrNotFound
	}
	if err != nil {
		return Digest{}, err
	}
	return d, nil
}

// digestsMost is how much mail is looked for at a time.
const digestsMost = 200

// DueDigests lists the mail that is due at a moment, what waited longest first: that of
// confirmed addresses, and the letters that ask others to confirm and are still owed.
func (s *Store) DueDigests(ctx context.Context, now time.Time) ([]Digest, error) {
	return many(ctx, s.q, pgx.RowToStructByName[Digest], `
		select `+digestColumns+` where d.due_at <= @now and (d.proved = p.email or d.asked is distinct from p.email) order by d.due_at limit @most`,
		pgx.StrictNamedArgs{"now": now, "most": digestsMost})
}

// ClaimDigest takes mail that is due upon the caller until it is due again, and reports
// whether nobody else did.
func (s *Store) ClaimDigest(ctx context.Context, d Digest, again time.Time) (bool, error) {
	_, err := one(ctx, s.q, pgx.RowTo[int], `
		update digests set due_at = @again, tries = tries + 1 where player_id = @who and due_at = @due and token = @token returning tries`,
		pgx.StrictNamedArgs{"who": d.PlayerID, "due": d.DueAt, "token": d.Token, "again": again})
	if errors.Is(err, golf.ErrNotFound) {
		return false, nil
	}
	return err == nil, err
}
