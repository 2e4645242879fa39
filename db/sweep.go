package db

import (
	"context"
	"errors"
	"log/slog"
	"time"

	"github.com/jackc/pgx/v5"
)

// sweptKinds are what is swept: what nobody can use any more.
var sweptKinds = []struct{ name, statement string }{
	{"sessions", `delete from sessions where not (` + liveSession + `)`},
	{"tries", `delete from tries where began_at < now() - interval '` + trySpan + `'`},
	{"devices", `delete from devices where seen_at <= now() - interval '` + deviceLife + `'`},
	{"invitations", `delete from invitations where expires_at <= now()`},
	{"coach invitations", `delete from coach_invitations where expires_at <= now()`},
	{"resets", `delete from resets where expires_at <= now()`},
	{"imports", `delete from imports where created_at <= now() - interval '` + pendingLife + `'`},
	{"removed results", `delete from assignment_results where ` + forGood},
	{"removed practice", `delete from assignments where ` + forGood},
	{"removed answers", `delete from note_replies where ` + forGood},
	{"removed notes", `delete from notes where ` + forGood},
	{"removed rounds", `delete from rounds where ` + forGood + ` and not exists (
		select 1 from notes n where n.player_id = rounds.player_id and n.round_id = rounds.id and n.author_id <> n.player_id)`}, // the notes would go with it
	{"removed courses", `delete from courses where ` + forGood},
}

// sweepLock is the number of the lock in the database that lets one process
// sweep at a time.
const sweepLock = 8177

// Swept is how many rows of each kind a sweep removed; nil when another process
// was sweeping.
type Swept map[string]int64

// Sweep removes what nobody can use any more.
func (s *Store) Sweep(ctx context.Context) (Swept, error) {
	var swept Swept
	err := s.Tx(ctx, func(tx *Store) error {
		free, err := one(ctx, tx.q, pgx.RowTo[bool], `select pg_try_advisory_xact_lock(@lock)`, pgx.StrictNamedArgs{"lock": sweepLock})
		if err != nil || !free {
			return err
		}
		swept = Swept{}
		for _, kind := range sweptKinds {
			if swept[kind.name], err = change(ctx, tx.q, kind.statement, pgx.StrictNamedArgs{}); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	return swept, nil
}

// sweepEvery is how often a process sweeps.
const sweepEvery = 24 * time.Hour

// KeepSwept sweeps now and once a day until the context ends, and says in the
// log what is gone.
func (s *Store) KeepSwept(ctx context.Context, log *slog.Logger) {
	for {
		swept, err := s.Sweep(ctx)
		switch {
		case errors.Is(err, context.Canceled):
			return
		case err != nil:
			log.Error("the daily sweep failed", "error", err.Error())
		case swept == nil:
			log.Info("the daily sweep is another process's today")
		default:
			said := []any{}
			for _, kind := range sweptKinds {
				said = append(said, kind.name, swept[kind.name])
			}
			log.Info("the daily sweep removed", said...)
		}
		select {
		case <-ctx.Done():
			return
		case <-time.After(sweepEvery):
		}
	}
}
