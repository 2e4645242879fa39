package db

import (
	"context"
	"time"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// Feed is the feed of an account's notices.
type Feed struct {
	Name   [16]byte // a UUID; what the identifiers in the feed are made of
	MadeAt time.Time
}

// OpenFeed turns the feed of an account on, with the hash of the secret in its address.
// A feed that is on gets the new address and keeps its name.
func (s *Store) OpenFeed(ctx context.Context, who golf.PlayerID, tokenHash []byte, name [16]byte) error {
	return changeOne(ctx, s.q, `
		insert into feeds (player_id, token_hash, name, made_at) values (@who, @token, @name, now())
		on conflict (player_id) do update set token_hash = excluded.token_hash, made_at = excluded.made_at`,
		pgx.StrictNamedArgs{"who": who, "token": tokenHash, "name": name})
}

// CloseFeed turns it off.
func (s *Store) CloseFeed(ctx context.Context, who golf.PlayerID) error {
	_, err := change(ctx, s.q, `delete from feeds where player_id = @who`, pgx.StrictNamedArgs{"who": who})
	return err
}

// Feed returns the feed of an account, golf.ErrNotFound while it is off.
func (s *Store) Feed(ctx context.Context, who golf.PlayerID) (Feed, error) {
	return one(ctx, s.q, pgx.RowToStructByName[Feed], `select name, made_at from feeds where player_id = @who`, pgx.StrictNamedArgs{"who": who})
}

// FeedReader returns the account of a feed and the feed, by the secret in its address.
func (s *Store) FeedReader(ctx context.Context, who golf.PlayerID, tokenHash []byte) (Player, Feed, error) {
	f, err := one(ctx, s.q, pgx.RowToStructByName[Feed], `select name, made_at from feeds where player_id = @who and token_hash = @token`,
		pgx.StrictNamedArgs{"who": who, "token": tokenHash})
	if err != nil {
		return Player{}, f, err
	}
	p, err := s.playerByID(ctx, who)
	return p, f, err
}

// playerByID returns an account by its number.
func (s *Store) playerByID(ctx context.Context, who golf.PlayerID) (Player, error) {
	return one(ctx, s.q, pgx.RowToStructByName[Player], `select `+playerColumns+` from players where id = @who`, pgx.StrictNamedArgs{"who": who})
}
