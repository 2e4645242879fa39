package handlers

import (
	"net/http"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/coach"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

// assignments reads what a player has to practise, for the reader.
func (s *server) assignments(r *http.Request, pages paths.Whose, most int) ([]coach.Assignment, error) {
	given, err := s.store.Assignments(r.Context(), me(r).ID, pages.Player, most)
	all := make([]coach.Assignment, len(given))
	for i, a := range given {
		all[i] = s.assignmentOf(r, a)
	}
	return all, err
}

func (s *server) assignmentOf(r *http.Request, a db.Assignment) coach.Assignment {
	to := coach.Assignment{ID: a.ID, What: a.What, Amount: a.Amount, PassMark: a.PassMark, Figure: a.Figure, Given: golf.DateOf(s.here(r, a.GivenAt)), Due: golf.DateOf(a.DueOn), Done: a.DoneAt != nil}
	if a.Author != nil {
		to.By, to.Mine = *a.Author, *a.AuthorID == me(r).ID
	}
	for _, res := range a.Results {
		to.Results = append(to.Results, coach.AssignmentResult{ID: res.ID, Day: golf.DateOf(res.Day), Result: res.Result, Passed: res.Passed})
	}
	return to
}

func (s *server) assign(w http.ResponseWriter, r *http.Request) error {
	about, err := s.subject(r)
	if err != nil {
		return err
	}
	f := form.ParseAssignment(r.Form)
	if !f.Sound() {
		return s.showLessons(w, r, about, form.Returned{Assignment: &f})
	}
	to := db.Assignment{What: f.What.Value, Amount: f.Amount.Value, PassMark: f.PassMark.Value, Figure: f.Figure.Value, DueOn: f.Due.Value.Time()}
	if err := s.store.Assign(r.Context(), me(r).ID, about.player.ID, to); err != nil {
		return err
	}
	if round := formID(r, "round"); round != 0 { // the coach looks at a round
		return saved(w, r, about.pages.Round(golf.RoundID(round))+"#afterwards", "practice")
	}
	return saved(w, r, about.pages.Lessons()+"#practice", "practice")
}

// ofAssignment reads the player and the number of the assignment from the address.
func (s *server) ofAssignment(r *http.Request) (about subject, assignment int64, err error) {
	if about, err = s.subject(r); err == nil {
		assignment, err = id(r, "assignment")
	}
	return about, assignment, err
}

// ownAssignment does the same, and refuses everybody but the player.
func (s *server) ownAssignment(r *http.Request) (about subject, assignment int64, err error) {
	if about, assignment, err = s.ofAssignment(r); err == nil && !about.pages.Own {
		err = golf.ErrNotFound
	}
	return about, assignment, err
}

func (s *server) recordResult(w http.ResponseWriter, r *http.Request) error {
	about, assignment, err := s.ownAssignment(r)
	if err != nil {
		return err
	}
	f := form.ParseResult(r.Form)
	if !f.Sound() {
		return s.showLessons(w, r, about, form.Returned{Of: assignment, Result: &f})
	}
	if err := s.store.RecordResult(r.Context(), about.player.ID, assignment, db.Result{Day: f.Day.Value.Time(), Result: f.Result.Value, Passed: f.Passed}); err != nil {
		return err
	}
	return saved(w, r, about.pages.Lessons()+"#practice", "result")
}

func (s *server) removeResult(w http.ResponseWriter, r *http.Request) error {
	about, _, err := s.ownAssignment(r)
	if err != nil {
		return err
	}
	result, err := id(r, "result")
	if err != nil {
		return err
	}
	if err := s.store.RemoveResult(r.Context(), about.player.ID, result); err != nil {
		return err
	}
	return redirectAfterRemoval(w, r, about.pages.Lessons(), removal{db.RemovedResult, about.player.ID, result})
}

func (s *server) tickOff(w http.ResponseWriter, r *http.Request) error {
	about, assignment, err := s.ownAssignment(r)
	if err != nil {
		return err
	}
	done, what := r.FormValue("done") != "", "undone"
	if done {
		what = "done"
	}
	if err := s.store.TickOff(r.Context(), about.player.ID, assignment, done); err != nil {
		return err
	}
	return saved(w, r, about.pages.Lessons()+"#practice", what)
}

func (s *server) removeAssignment(w http.ResponseWriter, r *http.Request) error {
	about, assignment, err := s.ofAssignment(r)
	if err != nil {
		return err
	}
	if err := s.store.RemoveAssignment(r.Context(), me(r).ID, about.player.ID, assignment); err != nil {
		return err
	}
	return redirectAfterRemoval(w, r, about.pages.Lessons(), removal{db.RemovedAssignment, about.player.ID, assignment})
}
