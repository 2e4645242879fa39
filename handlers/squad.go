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
	q, err := s.compareSquad(r, s.readSquad(r))
	if err != nil {
		return err
	}
	return show(w, r, statusOf(q.Days), coach.NewSquadPage(shell(r), q).View())
}

// compareSquad works out what the chosen pupils lost, and what they share; with nobody
// chosen, what all share who are not archived.
func (s *server) compareSquad(r *http.Request, q coach.SquadInput) (coach.SquadInput, error) {
	pupils, err := s.pupils(r, db.LookSquad)
	if err != nil {
		return q, err
	}
	if q.Members, q.Groups, err = s.chosenPupils(r, pupils, q.All); err != nil {
		return q, err
	}
	players, most, err := s.squadPlayers(r, pupils, q)
	if err != nil {
		return q, err
	}
	if q.Shared, err = s.engine.Shared(players, most); err != nil || q.Choosing() {
		return q, err
	}
	q.Squad, err = s.engine.Squad(players, most)
	return q, err
}

// squadPlayers are the pupils with their rounds, which only those have who are to be
// looked over; most is how many of each count, 0 for all.
func (s *server) squadPlayers(r *http.Request, pupils []db.Pupil, q coach.SquadInput) (players []analysis.Player, most int, err error) {
	of, most := squadRounds(q)
	rounds, err := s.summaries(r, pupils, of)
	if err != nil {
		return nil, 0, err
	}
	players = make([]analysis.Player, len(pupils))
	for i, m := range q.Members {
		if m.Chosen || q.Choosing() && !pupils[i].Archived {
			players[i] = analysis.Player{Target: m.Target, Rounds: rounds[i]}
		}
	}
	return players, most, nil
}

// squadSheet is what the chosen pupils practise together, on paper.
func (s *server) squadSheet(w http.ResponseWriter, r *http.Request) error {
	q := s.readSquad(r)
	pupils, err := s.pupils(r, db.LookSquad)
	if err != nil {
		return err
	}
	if q.Members, q.Groups, err = s.chosenPupils(r, pupils, q.All); err != nil {
		return err
	}
	if q.Choosing() || !q.Days.Sound() {
		return redirect(w, r, q.At.Page())
	}
	players, most, err := s.squadPlayers(r, pupils, q)
	if err != nil {
		return err
	}
	if q.Lesson, err = s.engine.Lesson(players, most, q.Row); err != nil {
		return err
	}
	return show(w, r, http.StatusOK, coach.NewSquadSheet(shell(r), q).View())
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
// who are chosen, or all but those archived; and the names of all groups.
func (s *server) chosenPupils(r *http.Request, pupils []db.Pupil, everybody bool) (all []coach.SquadMember, groups []string, err error) {
	kept, err := s.store.Groups(r.Context(), me(r).ID)
	if err != nil {
		return nil, nil, err
	}
	in := map[golf.PlayerID]bool{}
	for _, g := range kept {
		groups = append(groups, g.Name)
		if g.Name == r.FormValue("group") {
			in[g.PupilID] = true
		}
	}
	chosen := r.URL.Query()["pupil"]
	for _, p := range pupils {
		holds := in[p.ID] || slices.Contains(chosen, fmt.Sprint(p.ID)) || everybody && !p.Archived
		all = append(all, coach.SquadMember{ID: p.ID, Name: p.Name, Target: p.Target, Chosen: holds})
	}
	slices.Sort(groups)
	return all, slices.Compact(groups), nil
}

// readSquad reads over which days to compare pupils: without any, over the latest
// rounds of each.
func (s *server) readSquad(r *http.Request) coach.SquadInput {
	return coach.SquadInput{Days: form.ParseDays(r.URL.Query()), At: paths.SquadChosen(r.URL.Query()), All: r.FormValue("who") == "all", Units: unitsOf(me(r)), Row: r.FormValue("row"), Today: s.today(r)}
}
