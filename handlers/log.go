package handlers

import (
	"net/http"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/practice"
)

// logOfPractice shows every session of practice by week.
func (s *server) logOfPractice(w http.ResponseWriter, r *http.Request) error {
	about, err := s.subject(r)
	if err != nil {
		return err
	}
	in := practice.LogInput{Whose: about.pages, Name: about.player.Name, Minutes: about.player.Minutes, Today: s.todayOf(about.player)}
	if in.Told, err = s.told(r, about); err != nil {
		return err
	}
	if in.Words, err = s.recorded(r, about); err != nil {
		return err
	}
	if err := s.recordLook(r, about, db.LookPlan, 0); err != nil {
		return err
	}
	page := s.shellOf(r, about)
	if err := s.offerUndo(r, &page); err != nil {
		return err
	}
	return show(w, r, http.StatusOK, practice.NewLogPage(page, in).View())
}

// recorded are the results that a player recorded in words.
func (s *server) recorded(r *http.Request, about subject) ([]practice.Recorded, error) {
	given, err := s.store.Assignments(r.Context(), me(r).ID, about.player.ID, 0)
	var all []practice.Recorded
	for _, a := range given {
		for _, res := range a.Results {
			all = append(all, practice.Recorded{Day: golf.DateOf(res.Day), What: a.What, Result: res.Result, Passed: res.Passed})
		}
	}
	return all, err
}
