package db

import (
	"context"
	"crypto/subtle"
	"errors"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// Digest is the mail about new notices that an account has chosen.
type Digest struct {
	PlayerID golf.PlayerID
	Name     string // of the account
	Email    string
	Zone     string
	Every    string // daily or weekly
	Token    string // with which whoever has a letter can end the mail
	DueAt    time.Time
	Tries    int // in vain since the last letter
}

const digestColumns = `d.player_id, p.name, p.email, p.zone, d.every, d.token, d.due_at, d.tries from digests d join players p on p.id = d.player_id`

// ChooseDigest makes an account get mail daily or weekly, the next at a moment. An
// account that got none begins with what comes from now on, and with the token.
func (s *Store) ChooseDigest(ctx context.Context, who golf.PlayerID, every, token string, due time.Time) error {
	return s.Tx(ctx, func(tx *Store) error {
		begun, err := change(ctx, tx.q, `
			insert into digests (player_id, every, token, due_at) values (@who, @every, @token, @due) on conflict (player_id) do nothing`,
			pgx.StrictNamedArgs{"who": who, "every": every, "token": token, "due": due})
		if err != nil {
			return err
		}
		if begun == 0 {
			return changeOne(ctx, tx.q, `update digests set every = @every, due_at = @due, tries = 0 where player_id = @who`,
				pgx.StrictNamedArgs{"who": who, "every": every, "due": due})
		}
		_, err = change(ctx, tx.q, `update notices set mailed_at = now() where player_id = @who and mailed_at is null`, pgx.StrictNamedArgs{"who": who})
		return err
	})
}

// EndDigest ends the mail of an account.
func (s *Store) EndDigest(ctx context.Context, who golf.PlayerID) error {
	_, err := change(ctx, s.q, `delete from digests where player_id = @who`, pgx.StrictNamedArgs{"who": who})
	return err
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

// DueDigests lists the mail that is due at a moment, what waited longest first.
func (s *Store) DueDigests(ctx context.Context, now time.Time) ([]Digest, error) {
	return many(ctx, s.q, pgx.RowToStructByName[Digest], `select `+digestColumns+` where d.due_at <= @now order by d.due_at limit @most`,
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

// Unmailed lists the notices of an account that it has not read and that were in no
// letter, the latest first.
func (s *Store) Unmailed(ctx context.Context, who golf.PlayerID) ([]Notice, error) {
	return many(ctx, s.q, pgx.RowToStructByName[Notice], `
		select `+noticeColumns+` from notices where player_id = @who and read_at is null and mailed_at is null order by told_at desc, id desc limit @most`,
		pgx.StrictNamedArgs{"who": who, "most": noticesMost})
}

// DigestSent records that notices were in a letter, or that there were none, and when
// the next is due.
func (s *Store) DigestSent(ctx context.Context, who golf.PlayerID, mailed []Notice, due time.Time) error {
	ids := make([]int64, len(mailed))
	for i, n := range mailed {
		ids[i] = n.ID
	}
	return s.Tx(ctx, func(tx *Store) error {
		if _, err := change(ctx, tx.q, `update notices set mailed_at = now() where player_id = @who and id = any(@ids)`, pgx.StrictNamedArgs{"who": who, "ids": ids}); err != nil {
			return err
		}
		_, err := change(ctx, tx.q, `update digests set due_at = @due, tries = 0 where player_id = @who`, pgx.StrictNamedArgs{"who": who, "due": due})
		return err
	})
}
