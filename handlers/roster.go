package handlers

import (
	"context"
	"net/http"
	"strings"
	"sync"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/parallel"
	"strokeledger/db"
	"strokeledger/web/coach"
	"strokeledger/web/paths"
)

// rosterRounds is how many rounds of a pupil the roster reads: those of the form
// and a few that were begun and not entered.
const rosterRounds = 2*compare.FormRounds + 4

// ladder is the levels that summaries are taken against.
var ladder = sync.OnceValue(compare.NewLadder)

func readRoster(r *http.Request) paths.Roster {
	return paths.Roster{Sort: r.FormValue("sort"), Show: r.FormValue("show"), Name: strings.TrimSpace(r.FormValue("name"))}
}

// roster works out the coach's list of pupils.
func (s *server) roster(r *http.Request) (coach.RosterInput, error) {
	q := coach.RosterInput{At: readRoster(r), Today: now()}
	pupils, err := s.store.Roster(r.Context(), me(r).ID, db.LookRoster)
	if err != nil || len(pupils) == 0 {
		return q, err
	}
	rounds, err := s.summaries(r, pupils, db.Chosen{Most: rosterRounds})
	if err != nil {
		return q, err
	}
	q.Pupils = make([]coach.RosterPupil, len(pupils))
	parallel.Do(len(pupils), func(i int) {
		p := pupils[i]
		to := &q.Pupils[i]
		*to = coach.RosterPupil{ID: p.ID, Name: p.Name, Target: p.Target, Month: p.Month, NewRounds: p.NewRounds, Questions: p.Questions, Unread: p.Unread, Results: p.Results}
		if p.Due != nil {
			to.Due, to.DueWhat = golf.DateOf(*p.Due), *p.DueWhat
		}
		var entered []compare.Summary
		for _, k := range rounds[p.ID] {
			if k.Entered == 0 {
				continue
			}
			if len(entered) == 0 {
				to.Last, to.Score, to.Holes = k.day, k.Score, k.Entered
			}
			entered = append(entered, k.Summary)
		}
		to.Form = ladder().Form(entered, monthsSeed)
	})
	return q, nil
}

// summed is a round's summary with its day.
type summed struct {
	compare.Summary
	round golf.RoundID
	day   golf.Date
}

// summaries reads what the pupils' rounds come to, the latest first; what is not
// kept, or was worked out by another engine, is worked out and kept.
func (s *server) summaries(r *http.Request, pupils []db.Pupil, chosen db.Chosen) (map[golf.PlayerID][]summed, error) {
	rows, err := s.store.Summaries(r.Context(), me(r).ID, chosen)
	if err != nil {
		return nil, err
	}
	madeFor := map[golf.PlayerID]string{}
	for _, p := range pupils {
		madeFor[p.ID] = compare.SummaryVersion(golf.Yards.Of(p.BoundaryYd))
	}
	all, missing := map[golf.PlayerID][]summed{}, map[golf.PlayerID][]golf.RoundID{}
	for _, row := range rows {
		version, listed := madeFor[row.PlayerID]
		if !listed {
			continue // let the coach in between the two questions
		}
		k := summed{round: row.RoundID, day: golf.DateOf(row.PlayedOn)}
		if row.MadeFor == version {
			if k.Summary, err = ladder().Decode(row.Summary); err != nil {
				return nil, err
			}
		} else {
			missing[row.PlayerID] = append(missing[row.PlayerID], row.RoundID)
		}
		all[row.PlayerID] = append(all[row.PlayerID], k)
	}
	for _, p := range pupils {
		if len(missing[p.ID]) == 0 {
			continue
		}
		if err := s.summarize(r.Context(), me(r).ID, db.Player{ID: p.ID, BoundaryYd: p.BoundaryYd}, missing[p.ID], all[p.ID]); err != nil {
			return nil, err
		}
	}
	return all, nil
}

// summarize works out what rounds of a player come to, keeps it, and fills it in
// where those rounds are listed.
func (s *server) summarize(ctx context.Context, asker golf.PlayerID, p db.Player, rounds []golf.RoundID, to []summed) error {
	kept, err := s.store.Rounds(ctx, asker, p.ID, db.Chosen{IDs: rounds})
	if err != nil {
		return err
	}
	return s.keepSummaries(ctx, asker, p, kept, to)
}

// keepSummaries is summarize for rounds that have been read.
func (s *server) keepSummaries(ctx context.Context, asker golf.PlayerID, p db.Player, kept []db.Round, to []summed) error {
	boundary := golf.Yards.Of(p.BoundaryYd)
	made := make([]db.KeptSummary, len(kept))
	for i, k := range kept {
		sum, err := ladder().Summary(compare.Kept{ID: k.ID, Round: k.Played(), Target: k.Target}, boundary)
		if err != nil {
			return err
		}
		made[i] = db.KeptSummary{Round: k, MadeFor: compare.SummaryVersion(boundary), Summary: sum.Encode()}
		for n := range to {
			if to[n].round == k.ID {
				to[n].Summary = sum
			}
		}
	}
	return s.store.SaveSummaries(ctx, asker, p.ID, made)
}
