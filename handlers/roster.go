package handlers

import (
	"net/http"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/coach"
	"strokeledger/web/paths"
)

func readRoster(r *http.Request) paths.Roster {
	return paths.Roster{Sort: r.FormValue("sort"), Show: r.FormValue("show"), Name: strings.TrimSpace(r.FormValue("name"))}
}

// roster works out a coach's list of pupils.
func (s *server) roster(r *http.Request) (coach.RosterInput, error) {
	q := coach.RosterInput{At: readRoster(r), Today: s.today(r)}
	pupils, err := s.pupils(r, db.LookRoster)
	if err != nil || len(pupils) == 0 {
		return q, err
	}
	rounds, err := s.summaries(r, pupils, db.Chosen{Most: analysis.RosterRounds})
	if err != nil {
		return q, err
	}
	players := make([]analysis.Player, len(pupils))
	for i, p := range pupils {
		players[i] = analysis.Player{Target: p.Target, Rounds: rounds[i]}
	}
	rows, err := s.engine.Roster(players)
	if err != nil {
		return q, err
	}
	q.Pupils = make([]coach.RosterPupil, len(pupils))
	for i, p := range pupils {
		q.Pupils[i] = pupilOf(p, rows[i])
	}
	return q, nil
}

func pupilOf(p db.Pupil, row analysis.RosterRow) coach.RosterPupil {
	to := coach.RosterPupil{ID: p.ID, Name: p.Name, Target: p.Target, Month: p.Month, NewRounds: p.NewRounds, Changed: p.Changed, Questions: p.Questions, Unread: p.Unread, Results: p.Results, RosterRow: row}
	if p.SharedFrom != nil {
		to.Since = golf.DateOf(*p.SharedFrom)
	}
	if p.Due != nil {
		to.Due, to.DueWhat = golf.DateOf(*p.Due), *p.DueWhat
	}
	return to
}
