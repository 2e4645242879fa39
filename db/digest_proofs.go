package db

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// askedSpan is how long letters that ask an address to confirm are counted, from the
// first of them, and refusedLife how long an address that wants none is left alone.
const (
	askedSpan   = "1 day"
	refusedLife = "90 days"
)

// CountAsked counts a letter that asks an address to confirm before it is written, and
// reports whether it may go: neither too many went there, nor did its reader refuse them.
func (s *Store) CountAsked(ctx context.Context, addressHash []byte, most int) (bool, error) {
	return one(ctx, s.q, pgx.RowTo[bool], `
		insert into asked_addresses (address_hash, n, began_at) values (@address, 1, now())
		on conflict (address_hash) do update set
			n = case when excluded.began_at - asked_addresses.began_at > interval '`+askedSpan+`' then 1 else asked_addresses.n + 1 end,
			began_at = case when excluded.began_at - asked_addresses.began_at > interval '`+askedSpan+`' then excluded.began_at else asked_addresses.began_at end
		returning n <= @most::integer and refused_at is null`, pgx.StrictNamedArgs{"address": addressHash, "most": most})
}

// AskProof records that a letter with a link goes to an account's address, with the hash
// of the secret in the link, which works for some days. An account that was asked before
// is asked again only if that is wanted; the result is false for one that is not, or
// whose address is confirmed.
func (s *Store) AskProof(ctx context.Context, d Digest, tokenHash []byte, days int, again bool) (bool, error) {
	n, err := change(ctx, s.q, `
		update digests set asked = @email, asked_hash = @token, asked_at = now(), asked_until = now() + make_interval(days => @days)
		where player_id = @who and proved is distinct from @email and (@again or asked is distinct from @email)`,
		pgx.StrictNamedArgs{"who": d.PlayerID, "email": d.Email, "token": tokenHash, "days": days, "again": again})
	return n > 0, err
}

// ProofNotSent records that such a letter did not go, and is owed from a moment on.
func (s *Store) ProofNotSent(ctx context.Context, who golf.PlayerID, tokenHash []byte, due time.Time) error {
	_, err := change(ctx, s.q, `
		update digests set asked = null, asked_hash = null, asked_at = null, asked_until = null, due_at = @due where player_id = @who and asked_hash = @token`,
		pgx.StrictNamedArgs{"who": who, "token": tokenHash, "due": due})
	return err
}

// ProofOf returns the mail that a link in such a letter would begin, golf.ErrNotFound
// for a link that was used, has expired, was replaced, or never was.
func (s *Store) ProofOf(ctx context.Context, who golf.PlayerID, tokenHash []byte) (Digest, error) {
	return one(ctx, s.q, pgx.RowToStructByName[Digest], `
		select `+digestColumns+` where d.player_id = @who and d.asked_hash = @token and d.asked = p.email and d.asked_until > now()`,
		pgx.StrictNamedArgs{"who": who, "token": tokenHash})
}

// Prove uses such a link up: the address is confirmed, and mail begins with what comes
// from now on, the first at a moment.
func (s *Store) Prove(ctx context.Context, d Digest, tokenHash []byte, due time.Time) error {
	return s.Tx(ctx, func(tx *Store) error {
		if err := changeOne(ctx, tx.q, `
			update digests set proved = asked, proved_at = now(), asked = null, asked_hash = null, asked_at = null, asked_until = null, due_at = @due, tries = 0
			where player_id = @who and asked_hash = @token and asked = @email and asked_until > now()`,
			pgx.StrictNamedArgs{"who": d.PlayerID, "email": d.Email, "token": tokenHash, "due": due}); err != nil {
			return err
		}
		_, err := change(ctx, tx.q, `update notices set mailed_at = now() where player_id = @who and mailed_at is null`, pgx.StrictNamedArgs{"who": d.PlayerID})
		return err
	})
}

// RefuseProof ends the mail that a link would begin, and leaves the address alone for
// a while.
func (s *Store) RefuseProof(ctx context.Context, d Digest, addressHash []byte) error {
	if _, err := change(ctx, s.q, `
		insert into asked_addresses (address_hash, n, began_at, refused_at) values (@address, 0, now(), now())
		on conflict (address_hash) do update set refused_at = excluded.refused_at`, pgx.StrictNamedArgs{"address": addressHash}); err != nil {
		return err
	}
	return s.EndDigest(ctx, d.PlayerID)
}
