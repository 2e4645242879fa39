package db

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// DigestLetter is a letter about notices of which it is not known yet whether the mail
// server took it.
type DigestLetter struct {
	ID        string // the first part of its Message-ID
	Subject   string
	Body      string
	WrittenAt time.Time
	Notices   []int64 // that stand in it
}

// BegunLetter returns the letter that an earlier try left behind, golf.ErrNotFound for
// none.
func (s *Store) BegunLetter(ctx context.Context, who golf.PlayerID) (DigestLetter, error) {
	return one(ctx, s.q, pgx.RowToStructByName[DigestLetter], `select id, subject, body, written_at, notices from digest_letters where player_id = @who`,
		pgx.StrictNamedArgs{"who": who})
}

// Unmailed lists the notices of an account that it has not read and that were in no
// letter, the latest first.
func (s *Store) Unmailed(ctx context.Context, who golf.PlayerID) ([]Notice, error) {
	return many(ctx, s.q, pgx.RowToStructByName[Notice], `
		select `+noticeColumns+` from notices where player_id = @who and read_at is null and mailed_at is null order by told_at desc, id desc limit @most`,
		pgx.StrictNamedArgs{"who": who, "most": noticesMost})
}

// BeginLetter keeps a letter before it is sent, and marks its notices as mailed. It
// returns golf.ErrNotFound when the mail was ended in the meantime, and ErrTaken when
// there is a letter already.
func (s *Store) BeginLetter(ctx context.Context, who golf.PlayerID, l DigestLetter) error {
	return s.Tx(ctx, func(tx *Store) error {
		if _, err := one(ctx, tx.q, pgx.RowTo[golf.PlayerID], `select player_id from digests where player_id = @who for update`, pgx.StrictNamedArgs{"who": who}); err != nil {
			return err
		}
		if _, err := change(ctx, tx.q, `
			insert into digest_letters (player_id, id, subject, body, written_at, notices) values (@who, @id, @subject, @body, @written, @notices)`,
			pgx.StrictNamedArgs{"who": who, "id": l.ID, "subject": l.Subject, "body": l.Body, "written": l.WrittenAt, "notices": l.Notices}); err != nil {
			return err
		}
		_, err := change(ctx, tx.q, `update notices set mailed_at = now() where player_id = @who and id = any(@ids)`, pgx.StrictNamedArgs{"who": who, "ids": l.Notices})
		return err
	})
}

// LetterTaken records that the mail server took a letter, and when the next is due.
func (s *Store) LetterTaken(ctx context.Context, who golf.PlayerID, id string, due time.Time) error {
	return s.Tx(ctx, func(tx *Store) error {
		if err := changeOne(ctx, tx.q, `delete from digest_letters where player_id = @who and id = @id`, pgx.StrictNamedArgs{"who": who, "id": id}); err != nil {
			return err
		}
		return tx.NextDigest(ctx, who, due)
	})
}

// LetterRefused forgets a letter that the mail server does not have. Its notices go into
// the next one, with what is new by then.
func (s *Store) LetterRefused(ctx context.Context, who golf.PlayerID, l DigestLetter) error {
	return s.Tx(ctx, func(tx *Store) error {
		if err := changeOne(ctx, tx.q, `delete from digest_letters where player_id = @who and id = @id`, pgx.StrictNamedArgs{"who": who, "id": l.ID}); err != nil {
			return err
		}
		_, err := change(ctx, tx.q, `update notices set mailed_at = null where player_id = @who and id = any(@ids)`, pgx.StrictNamedArgs{"who": who, "ids": l.Notices})
		return err
	})
}

// NextDigest says when the next mail of an account is due.
func (s *Store) NextDigest(ctx context.Context, who golf.PlayerID, due time.Time) error {
	_, err := change(ctx, s.q, `update digests set due_at = @due, tries = 0 where player_id = @who`, pgx.StrictNamedArgs{"who": who, "due": due})
	return err
}
