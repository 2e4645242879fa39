package db

import (
	"context"
	"errors"
	"log/slog"
	"time"

	"github.com/jackc/pgx/v5"
)

// sweptKinds are the rows that nobody can use any more. Tables that a sharded server
// keeps on every node come first: it refuses to change them after others in the
// same transaction.
var sweptKinds = []struct{ name, statement string }{
	{"removed courses", `delete from courses where ` + forGood},
	{"invitations", `delete from invitations where expires_at <= now()`},
	{"tries", `delete from tries where began_at < now() - interval '` + trySpan + `'`},
	{"asked addresses", `delete from asked_addresses where began_at < now() - interval '` + askedSpan + `' and (refused_at is null or refused_at <= now() - interval '` + refusedLife + `')`},
	{"sessions", `delete from sessions where not (` + liveSession + `)`},
	{"devices", `delete from devices where seen_at <= now() - interval '` + deviceLife + `'`},
	{"coach invitations", `delete from coach_invitations where expires_at <= now() - interval '30 days'`},
	{"requests to coaches", `delete from coach_requests where asked_at <= now() - interval '30 days'`},
	{"notices", `delete from notices where told_at <= now() - interval '180 days'`},
	{"ended coachings", `delete from ended_coachings where ended_at <= now() - interval '1 day'`},
	{"resets", `delete from resets where expires_at <= now()`},
	{"imports", `delete from imports where created_at <= now() - interval '` + pendingLife + `'`},
	{"removed trials", `delete from runout_trials where ` + forGood},
	{"removed sessions of drills", `delete from drill_sessions where ` + forGood},
	{"removed results", `delete from assignment_results where ` + forGood},
	{"removed practice", `delete from assignments where ` + forGood},
	{"removed advice on holes", `delete from hole_advice where ` + forGood},
	{"removed phrases", `delete from phrases where ` + forGood},
	{"removed walked rounds", `delete from walked_rounds where ` + forGood},
	{"removed lessons", `delete from lessons where ` + forGood},
	{"removed plans", `delete from practice_plans where ` + forGood},
	{"removed replies", `delete from note_replies where ` + forGood},
	{"removed notes", `delete from notes where ` + forGood},
	{"removed kept notes", `delete from kept_notes where ` + forGood},
	{"removed range sessions", `delete from range_sessions where ` + forGood},
	{"removed rounds", `delete from rounds where ` + forGood + ` and not exists (
		select 1 from notes n where n.player_id = rounds.player_id and n.round_id = rounds.id and n.author_id is distinct from n.player_id)`}, // the notes would go with it
}

// sweepLock is the key of the advisory lock that lets one process sweep at a time.
const sweepLock = 8177

// Swept is how many rows of each kind a sweep deleted; nil when another process was
// sweeping.
type Swept map[string]int64

// Sweep deletes rows that nobody can use any more.
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

// SweepDaily sweeps now and then once a day until the context ends, and logs what it
// deleted.
func (s *Store) SweepDaily(ctx context.Context, log *slog.Logger) {
	for {
		swept, err := s.Sweep(ctx)
		switch {
		case errors.Is(err, context.Canceled):
			return
		case err != nil:
			log.Error("the daily sweep failed", "error", err.Error())
		case swept == nil:
			log.Info("another process is doing the daily sweep")
		default:
			counts := []any{}
			for _, kind := range sweptKinds {
				counts = append(counts, kind.name, swept[kind.name])
			}
			log.Info("the daily sweep deleted", counts...)
		}
		select {
		case <-ctx.Done():
			return
		case <-time.After(sweepEvery):
		}
	}
}
