package handlers

import (
	"context"
	"net/http"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
)

// summaries reads the summaries of each pupil's rounds, the latest first. It makes
// and stores those that are missing or were made by another version of the engine.
func (s *server) summaries(r *http.Request, pupils []db.Pupil, chosen db.Chosen) ([][]analysis.Summarized, error) {
	rows, err := s.store.Summaries(r.Context(), me(r).ID, chosen)
	if err != nil {
		return nil, err
	}
	return s.summarized(r, pupils, rows)
}

// summarized are summaries, or their digests, by pupil; those that are out of date are
// made anew.
func (s *server) summarized(r *http.Request, pupils []db.Pupil, rows []db.SummaryRow) (_ [][]analysis.Summarized, err error) {
	of := map[golf.PlayerID][]db.SummaryRow{}
	for _, row := range rows {
		of[row.PlayerID] = append(of[row.PlayerID], row)
	}
	all := make([][]analysis.Summarized, len(pupils))
	for i, p := range pupils {
		if all[i], err = s.upToDate(r.Context(), me(r).ID, p, of[p.ID]); err != nil {
			return nil, err
		}
	}
	return all, nil
}

// upToDate returns the summaries of a pupil's rounds, and makes new ones for those
// that are out of date.
func (s *server) upToDate(ctx context.Context, asker golf.PlayerID, p db.Pupil, rows []db.SummaryRow) ([]analysis.Summarized, error) {
	version := analysis.SummaryVersion(p.Target, golf.Yards.Of(p.BoundaryYd))
	all := make([]analysis.Summarized, len(rows))
	var missing []golf.RoundID
	for i, row := range rows {
		all[i] = analysis.Summarized{ID: row.RoundID, Day: golf.DateOf(row.PlayedOn), Summary: row.Summary}
		copy(all[i].Digest[:], row.Digest)
		if row.MadeFor != version {
			missing = append(missing, row.RoundID)
		}
	}
	if len(missing) == 0 {
		return all, nil
	}
	made, err := s.summarize(ctx, asker, db.Player{ID: p.ID, Target: p.Target, BoundaryYd: p.BoundaryYd}, missing)
	if err != nil {
		return nil, err
	}
	return replaced(all, missing, made), nil
}

// replaced puts new summaries in their places. A round without a new summary, since
// it was removed in the meantime, is left out.
func replaced(all []analysis.Summarized, missing []golf.RoundID, made map[golf.RoundID][]byte) []analysis.Summarized {
	anew := make(map[golf.RoundID]bool, len(missing))
	for _, id := range missing {
		anew[id] = true
	}
	kept := all[:0]
	for _, a := range all {
		if anew[a.ID] {
			a.Summary = made[a.ID]
			a.Digest = analysis.DigestOf(a.Summary)
		}
		if !anew[a.ID] || a.Summary != nil {
			kept = append(kept, a)
		}
	}
	return kept
}

// summarize makes and stores the summaries of some rounds of a player.
func (s *server) summarize(ctx context.Context, asker golf.PlayerID, p db.Player, rounds []golf.RoundID) (map[golf.RoundID][]byte, error) {
	stored, err := s.store.Rounds(ctx, asker, p.ID, db.Chosen{IDs: rounds})
	if err != nil {
		return nil, err
	}
	return s.storeSummaries(ctx, asker, p, stored)
}

// storeSummaries makes and stores the summaries of rounds that have been read.
func (s *server) storeSummaries(ctx context.Context, asker golf.PlayerID, p db.Player, rounds []db.Round) (map[golf.RoundID][]byte, error) {
	boundary := golf.Yards.Of(p.BoundaryYd)
	made, all := make(map[golf.RoundID][]byte, len(rounds)), make([]db.KeptSummary, len(rounds))
	for i, round := range rounds {
		summary, err := s.engine.Summary(playedOf(round), p.Target, boundary)
		if err != nil {
			return nil, err
		}
		made[round.ID] = summary
		all[i] = db.KeptSummary{Round: round, MadeFor: analysis.SummaryVersion(p.Target, boundary), Summary: summary}
	}
	return made, s.store.SaveSummaries(ctx, asker, p.ID, all)
}

// playedOf is a stored round as the engine sees it.
func playedOf(r db.Round) golf.Played {
	return golf.Played{ID: r.ID, Round: r.Played(), Target: r.Target, Par18: r.Par18}
}
