package db

import (
	"context"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// pendingLife is how long a file waits to be confirmed.
const pendingLife = "1 hour"

// SavePending keeps a file that the player may import; it takes the place of an
// earlier one.
func (s *Store) SavePending(ctx context.Context, who golf.PlayerID, file []byte) error {
	_, err := change(ctx, s.q, `
		insert into imports (player_id, file) values (@who, @file)
		on conflict (player_id) do update set file = excluded.file, created_at = now()`,
		pgx.StrictNamedArgs{"who": who, "file": file})
	return err
}

// Pending returns the player's file that waits, for an hour.
func (s *Store) Pending(ctx context.Context, who golf.PlayerID) ([]byte, error) {
	return one(ctx, s.q, pgx.RowTo[[]byte],
		`select file from imports where player_id = @who and created_at > now() - interval '`+pendingLife+`'`, pgx.StrictNamedArgs{"who": who})
}

// DropPending forgets the player's file.
func (s *Store) DropPending(ctx context.Context, who golf.PlayerID) error {
	_, err := change(ctx, s.q, `delete from imports where player_id = @who`, pgx.StrictNamedArgs{"who": who})
	return err
}

// RoundNames returns the names of the player's rounds.
func (s *Store) RoundNames(ctx context.Context, who golf.PlayerID) (map[string]bool, error) {
	all, err := many(ctx, s.q, pgx.RowTo[string], `select name from rounds where player_id = @who and removed_at is null`, pgx.StrictNamedArgs{"who": who})
	names := make(map[string]bool, len(all))
	for _, name := range all {
		names[name] = true
	}
	return names, err
}

// Import adds rounds to the player's, all or none, and forgets the file that
// waited. A round of a name that is there already takes its place, or is passed
// over.
func (s *Store) Import(ctx context.Context, who golf.PlayerID, rounds []Round, replace bool) error {
	return s.Tx(ctx, func(tx *Store) error {
		there, err := tx.RoundNames(ctx, who)
		if err != nil {
			return err
		}
		for _, r := range rounds {
			if there[r.Name] && !replace {
				continue
			}
			id, err := tx.NewRound(ctx, who, r)
			if err != nil {
				return err
			}
			if err := tx.replace(ctx, who, id, r.Name); err != nil {
				return err
			}
		}
		return tx.DropPending(ctx, who)
	})
}

// replace puts a round in the place of those of its name; what is noted of them
// is noted of it, on its day, which decides who may read it.
func (s *Store) replace(ctx context.Context, who golf.PlayerID, id golf.RoundID, name string) error {
	const old = `player_id = @who and name = @name and removed_at is null and id <> @id`
	args := pgx.StrictNamedArgs{"who": who, "name": name, "id": id}
	if _, err := change(ctx, s.q, `
		update notes set round_id = @id, day = (select played_on from rounds where player_id = @who and id = @id)
		where player_id = @who and round_id in (select id from rounds where `+old+`)`, args); err != nil {
		return err
	}
	_, err := change(ctx, s.q, `delete from rounds where `+old, args)
	return err
}
