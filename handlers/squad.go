package handlers

import (
	"fmt"
	"net/http"
	"slices"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/coach"
	"strokeledger/web/form"
)

// squadDays is over how many days pupils are compared unless the coach chooses
// others.
const squadDays = 92

// squad compares pupils side by side.
func (s *server) squad(w http.ResponseWriter, r *http.Request) error {
	q := readSquad(r)
	pupils, err := s.store.Roster(r.Context(), me(r).ID, db.LookSquad)
	if err != nil {
		return err
	}
	rounds, err := s.summaries(r, pupils, db.Chosen{From: q.From, To: q.To})
	if err != nil {
		return err
	}
	players := make([]analysis.Player, len(pupils))
	chosen := r.URL.Query()["pupil"]
	for i, p := range pupils {
		m := coach.SquadMember{ID: p.ID, Name: p.Name, Target: p.Target, Chosen: len(chosen) == 0 || slices.Contains(chosen, fmt.Sprint(p.ID))}
		if q.Members = append(q.Members, m); m.Chosen {
			players[i] = analysis.Player{Target: p.Target, Rounds: rounds[i]}
		}
	}
	if q.Squad, err = s.engine.Squad(players); err != nil {
		return err
	}
	return show(w, r, statusOf(q.Problems), coach.NewSquadPage(shell(r), q).View())
}

// readSquad reads over which days to compare pupils.
func readSquad(r *http.Request) coach.SquadInput {
	q := coach.SquadInput{From: now().AddDays(1 - squadDays), To: now(), Problems: map[string]string{}}
	values := map[string]string{"from": r.FormValue("from"), "to": r.FormValue("to")}
	for field, to := range map[string]*golf.Date{"from": &q.From, "to": &q.To} {
		if values[field] != "" {
			day := form.ParseDay(values[field])
			if !day.Sound() {
				q.Problems[field] = day.Problem
				continue
			}
			*to = day.Value
		}
	}
	if q.From.Compare(q.To) > 0 {
		q.Problems["to"] = "The last day is before the first."
	}
	return q
}
