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
	return paths.Roster{Sort: r.FormValue("sort"), Show: r.FormValue("show"), Name: strings.TrimSpace(r.FormValue("name")), Group: r.FormValue("group")}
}

// roster works out a coach's list of pupils. However many there are, it asks the
// database a fixed number of times, unless summaries are out of date.
func (s *server) roster(r *http.Request) (coach.RosterInput, error) {
	q := coach.RosterInput{At: readRoster(r), Today: s.today(r)}
	pupils, err := s.pupils(r, db.LookRoster)
	if err != nil || len(pupils) == 0 {
		return q, err
	}
	rows, err := s.rosterRows(r, pupils)
	if err != nil {
		return q, err
	}
	if q.Pupils, err = s.rosterPupils(r, pupils); err != nil {
		return q, err
	}
	for i, row := range rows {
		q.Pupils[i].RosterRow = row
	}
	return q, nil
}

// rosterRows are what the latest rounds of pupils come to.
func (s *server) rosterRows(r *http.Request, pupils []db.Pupil) ([]analysis.RosterRow, error) {
	latest := db.Chosen{Most: analysis.RosterRounds}
	digests, err := s.store.Digests(r.Context(), me(r).ID, latest)
	if err != nil {
		return nil, err
	}
	players, err := s.rosterPlayers(r, pupils, digests)
	if err != nil {
		return nil, err
	}
	return s.engine.Roster(players, func(places []int) ([]analysis.Player, error) {
		some, ids := make([]db.Pupil, len(places)), make([]golf.PlayerID, len(places))
		for i, at := range places {
			some[i], ids[i] = pupils[at], pupils[at].ID
		}
		summaries, err := s.store.PupilSummaries(r.Context(), me(r).ID, ids, latest)
		if err != nil {
			return nil, err
		}
		return s.rosterPlayers(r, some, summaries)
	})
}

// rosterPlayers are pupils as the engine sees them.
func (s *server) rosterPlayers(r *http.Request, pupils []db.Pupil, rows []db.SummaryRow) ([]analysis.Player, error) {
	rounds, err := s.summarized(r, pupils, rows)
	if err != nil {
		return nil, err
	}
	players := make([]analysis.Player, len(pupils))
	for i, p := range pupils {
		players[i] = analysis.Player{Target: p.Target, Rounds: rounds[i]}
	}
	return players, nil
}

// rosterPupils are a coach's pupils with what waits for the coach, among it lessons of today and
// tomorrow, without what their rounds come to.
func (s *server) rosterPupils(r *http.Request, pupils []db.Pupil) ([]coach.RosterPupil, error) {
	all, at := make([]coach.RosterPupil, len(pupils)), map[golf.PlayerID]*coach.RosterPupil{}
	for i, p := range pupils {
		all[i] = s.pupilOf(r, p)
		at[p.ID] = &all[i]
	}
	return all, s.addWaiting(r, at)
}

// addWaiting adds to pupils what waits for the coach, and their groups.
func (s *server) addWaiting(r *http.Request, at map[golf.PlayerID]*coach.RosterPupil) error {
	today := s.today(r)
	waits, err := s.store.Waiting(r.Context(), me(r).ID, today, today.AddDays(1))
	for _, q := range waits.Questions {
		if p := at[q.PlayerID]; p != nil {
			p.Asked = append(p.Asked, questionOf(q))
		}
	}
	for _, g := range waits.Groups {
		if p := at[g.PupilID]; p != nil {
			p.Groups = append(p.Groups, g.Name)
		}
	}
	for _, u := range waits.Unsent {
		if p := at[u.PlayerID]; p != nil {
			p.Unsent = append(p.Unsent, coach.UnsentRound{ID: u.ID, Day: golf.DateOf(u.PlayedOn)})
		}
	}
	for _, l := range waits.Lessons {
		if p := at[l.PlayerID]; p != nil {
			p.Lessons = append(p.Lessons, coach.NearLesson{ID: l.ID, Day: golf.DateOf(l.Day), Starts: l.Starts, Aim: l.Aim})
		}
	}
	return err
}

func questionOf(q db.OpenQuestion) coach.Question {
	to := coach.Question{ID: q.ID, Round: q.RoundID, Day: golf.DateOf(q.Day)}
	if q.Hole != nil {
		to.Hole = *q.Hole
	}
	if q.Shot != nil {
		to.Shot = *q.Shot
	}
	return to
}

func (s *server) pupilOf(r *http.Request, p db.Pupil) coach.RosterPupil {
	to := coach.RosterPupil{ID: p.ID, Name: p.Name, Target: p.Target, Month: p.Month, NewRounds: p.NewRounds, Changed: p.Changed, Unread: p.Unread, Results: p.Results,
		Archived: p.Archived, Begun: golf.DateOf(s.here(r, p.Begun))}
	if p.NewRound != nil {
		to.NewRound = *p.NewRound
	}
	if p.SharedFrom != nil {
		to.Since = golf.DateOf(*p.SharedFrom)
	}
	if p.Due != nil {
		to.Due, to.DueWhat, to.DueID = golf.DateOf(*p.Due), *p.DueWhat, *p.DueID
	}
	return to
}
