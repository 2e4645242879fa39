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
	"strokeledger/web/paths"
)

// squad compares pupils side by side.
func (s *server) squad(w http.ResponseWriter, r *http.Request) error {
	q, err := s.compareSquad(r)
	if err != nil {
		return err
	}
	return show(w, r, statusOf(q.Days), coach.NewSquadPage(shell(r), q).View())
}

// compareSquad works out what the chosen pupils lost.
func (s *server) compareSquad(r *http.Request) (coach.SquadInput, error) {
	q := readSquad(r)
	pupils, err := s.pupils(r, db.LookSquad)
	if err != nil {
		return q, err
	}
	of, most := squadRounds(q)
	rounds, err := s.summaries(r, pupils, of)
	if err != nil {
		return q, err
	}
	if q.Members, err = s.chosenPupils(r, pupils); err != nil {
		return q, err
	}
	players := make([]analysis.Player, len(pupils))
	for i, m := range q.Members {
		if m.Chosen {
			players[i] = analysis.Player{Target: m.Target, Rounds: rounds[i]}
		}
	}
	q.Squad, err = s.engine.Squad(players, most)
	return q, err
}

// squadRounds says which rounds to read, and how many of each pupil's to compare; 0 for
// all.
func squadRounds(q coach.SquadInput) (of db.Chosen, most int) {
	if q.Days.Open() {
		return db.Chosen{Most: analysis.RosterRounds}, analysis.SquadRounds
	}
	return db.Chosen{From: q.Days.From.Value, To: q.Days.To.Value}, 0
}

// chosenPupils are the pupils, with those who are to be compared: those of a group, or
// who are chosen; all but those archived unless some are.
func (s *server) chosenPupils(r *http.Request, pupils []db.Pupil) ([]coach.SquadMember, error) {
	group, err := s.inGroup(r, r.FormValue("group"))
	var all []coach.SquadMember
	chosen := r.URL.Query()["pupil"]
	for _, p := range pupils {
		holds := len(chosen) == 0 && !p.Archived || slices.Contains(chosen, fmt.Sprint(p.ID))
		if group != nil {
			holds = group[p.ID]
		}
		all = append(all, coach.SquadMember{ID: p.ID, Name: p.Name, Target: p.Target, Chosen: holds})
	}
	return all, err
}

// inGroup are the pupils in a group of the coach's; nil when none is named or nobody
// is in it.
func (s *server) inGroup(r *http.Request, name string) (map[golf.PlayerID]bool, error) {
	if name == "" {
		return nil, nil
	}
	groups, err := s.store.Groups(r.Context(), me(r).ID)
	var in map[golf.PlayerID]bool
	for _, g := range groups {
		if g.Name == name {
			if in == nil {
				in = map[golf.PlayerID]bool{}
			}
			in[g.PupilID] = true
		}
	}
	return in, err
}

// readSquad reads over which days to compare pupils: without any, over the latest
// rounds of each.
func readSquad(r *http.Request) coach.SquadInput {
	return coach.SquadInput{Days: form.ParseDays(r.URL.Query()), File: paths.SquadFile(r.URL.Query())}
}
