package handlers

import (
	"fmt"
	"net/http"
	"slices"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/parallel"
	"strokeledger/db"
	"strokeledger/web/coach"
)

// squadDays is over how many days pupils are set side by side unless others are
// chosen.
const squadDays = 92

// squad sets pupils side by side.
func (s *server) squad(w http.ResponseWriter, r *http.Request) error {
	q := coach.SquadInput{From: now().AddDays(1 - squadDays), To: now()}
	status := http.StatusOK
	q.Problems = map[string]string{}
	values := map[string]string{"from": r.FormValue("from"), "to": r.FormValue("to")}
	for field, to := range map[string]*golf.Date{"from": &q.From, "to": &q.To} {
		if values[field] != "" {
			if day := dayOf(values, field, q.Problems); !day.IsZero() {
				*to = day
			}
		}
	}
	if q.From.Compare(q.To) > 0 {
		q.Problems["to"] = "The last day is before the first."
	}
	if len(q.Problems) > 0 {
		status = http.StatusUnprocessableEntity
	}
	pupils, err := s.store.Roster(r.Context(), me(r).ID, db.LookSquad)
	if err != nil {
		return err
	}
	all, err := s.summaries(r, pupils, db.Chosen{From: q.From, To: q.To})
	if err != nil {
		return err
	}
	chosen := r.URL.Query()["pupil"]
	q.Members = make([]coach.SquadMember, len(pupils))
	parallel.Do(len(pupils), func(i int) {
		p := pupils[i]
		m := coach.SquadMember{ID: p.ID, Name: p.Name, Target: p.Target, Chosen: len(chosen) == 0 || slices.Contains(chosen, fmt.Sprint(p.ID))}
		var rounds []compare.Summary
		for _, k := range slices.Backward(all[p.ID]) {
			rounds = append(rounds, k.Summary)
		}
		m.Lost = ladder().PartsLost(rounds, p.Target, monthsSeed)
		q.Members[i] = m
	})
	return show(w, r, status, coach.NewSquadPage(shell(r), q).View())
}
