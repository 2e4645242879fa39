package db

import (
	"context"

	"github.com/jackc/pgx/v5"

	"strokeledger/analysis/golf"
)

// pendingLife is how long an uploaded file waits to be confirmed.
const pendingLife = "1 hour"

// SavePending stores a file that the player may confirm and so import. It replaces
// an earlier one.
func (s *Store) SavePending(ctx context.Context, who golf.PlayerID, file []byte) error {
	_, err := change(ctx, s.q, `
		insert into imports (player_id, file, created_at) values (@who, @file, now())
		on conflict (player_id) do update set file = excluded.file, created_at = excluded.created_at`,
		pgx.StrictNamedArgs{"who": who, "file": file})
	return err
}

// PopPending returns the player's waiting file and deletes it, so that it is
// imported only once. Of two transactions the second waits for the first, and finds
// nothing unless the first failed.
func (s *Store) PopPending(ctx context.Context, who golf.PlayerID) ([]byte, error) {
	return one(ctx, s.q, pgx.RowTo[[]byte], `
		delete from imports where player_id = @who and created_at > now() - interval '`+pendingLife+`' returning file`,
		pgx.StrictNamedArgs{"who": who})
}

// RoundsNamed returns the player's rounds that have one of some names, with all
// their holes.
func (s *Store) RoundsNamed(ctx context.Context, who golf.PlayerID, names []string) ([]Round, error) {
	rounds, err := many(ctx, s.q, pgx.RowToStructByName[Round], `
		select `+roundColumns+` from rounds
		where player_id = @who and removed_at is null and name = any(@names) order by played_on, id`,
		pgx.StrictNamedArgs{"who": who, "names": names})
	if err != nil || len(rounds) == 0 {
		return nil, err
	}
	return rounds, s.fill(ctx, who, rounds)
}

// RoundIDs returns the IDs of all the player's rounds, the earliest first.
func (s *Store) RoundIDs(ctx context.Context, who golf.PlayerID) ([]golf.RoundID, error) {
	return many(ctx, s.q, pgx.RowTo[golf.RoundID], `
		select id from rounds where player_id = @who and removed_at is null order by played_on, id`, pgx.StrictNamedArgs{"who": who})
}

// AddRounds adds rounds with their holes to the player's, all or none.
func (s *Store) AddRounds(ctx context.Context, who golf.PlayerID, rounds []Round) ([]golf.RoundID, error) {
	if len(rounds) == 0 {
		return nil, nil
	}
	var ids []golf.RoundID
	err := s.Tx(ctx, func(tx *Store) error {
		batch := &pgx.Batch{}
		for _, r := range rounds {
			batch.Queue(insertRound, r.args(who))
		}
		answers := tx.q.SendBatch(ctx, batch)
		for range rounds {
			id, err := next(answers, pgx.RowTo[golf.RoundID])
			if err != nil {
				answers.Close()
				return err
			}
			ids = append(ids, id...)
		}
		if err := answers.Close(); err != nil {
			return translate(err)
		}
		return tx.copyHoles(ctx, who, ids, rounds)
	})
	return ids, err
}

// copyHoles writes all holes of new rounds in one copy, and all shots in another.
func (s *Store) copyHoles(ctx context.Context, who golf.PlayerID, ids []golf.RoundID, rounds []Round) error {
	var holes, shots [][]any
	for i, r := range rounds {
		for _, h := range r.Holes {
			far, green := h.Units.columns()
			version := 0
			if h.Line != "" {
				version = 1
				for k, shot := range h.Shots {
					row := rowOf(shot)
					shots = append(shots, []any{who, ids[i], h.Number, k + 1, row.Lie, row.DistanceIn, row.Unit, row.About, row.Penalty, row.ShortSided, row.GreenIn, row.Club, row.Miss, row.Word})
				}
			}
			holes = append(holes, []any{who, ids[i], h.Number, h.Par, float64(h.Length), h.Index, h.Line, far, green, h.PickedUp, h.ScoreOnly, version})
		}
	}
	_, err := s.q.CopyFrom(ctx, pgx.Identifier{"holes"}, []string{"player_id", "round_id", "number", "par", "length_in", "stroke_index", "line", "far_unit", "green_unit", "picked_up", "score_only", "version"}, pgx.CopyFromRows(holes))
	if err != nil {
		return translate(err)
	}
	_, err = s.q.CopyFrom(ctx, pgx.Identifier{"shots"}, []string{"player_id", "round_id", "hole", "number", "lie", "distance_in", "unit", "about", "penalty", "short_sided", "green_in", "club", "miss", "word"}, pgx.CopyFromRows(shots))
	return translate(err)
}

// ReplaceRounds adds rounds and removes the player's earlier rounds of the same
// names, which can be brought back. Notes on those move to the new rounds.
func (s *Store) ReplaceRounds(ctx context.Context, who golf.PlayerID, rounds []Round) error {
	return s.Tx(ctx, func(tx *Store) error {
		ids, err := tx.AddRounds(ctx, who, rounds)
		if err != nil {
			return err
		}
		names := make([]string, len(rounds))
		for i, r := range rounds {
			names[i] = r.Name
		}
		args := pgx.StrictNamedArgs{"who": who, "ids": ids, "names": names}
		if _, err := change(ctx, tx.q, `
			update notes set round_id = new.id, day = new.played_on
			from rounds old join rounds new on new.player_id = old.player_id and new.name = old.name
			where notes.player_id = @who and old.player_id = @who and new.player_id = @who and notes.round_id = old.id and old.removed_at is null
			  and old.name = any(@names) and not old.id = any(@ids) and new.id = any(@ids)`, args); err != nil {
			return err
		}
		_, err = change(ctx, tx.q, `
			update rounds set removed_at = now()
			where player_id = @who and removed_at is null and name = any(@names) and not id = any(@ids)`, args)
		return err
	})
}
