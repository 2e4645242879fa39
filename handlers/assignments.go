package handlers

import (
	"net/http"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/coach"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

// assignments reads what a player has to practise, for who looks.
func (s *server) assignments(r *http.Request, whose paths.Whose, most int) ([]coach.Assignment, error) {
	given, err := s.store.Assignments(r.Context(), me(r).ID, whose.Player, most)
	all := make([]coach.Assignment, len(given))
	for i, a := range given {
		all[i] = assignmentOf(a, me(r).ID)
	}
	return all, err
}

func assignmentOf(a db.Assignment, reader golf.PlayerID) coach.Assignment {
	to := coach.Assignment{ID: a.ID, What: a.What, Amount: a.Amount, PassMark: a.PassMark, Due: golf.DateOf(a.DueOn), Done: a.DoneAt != nil}
	if a.Author != nil {
		to.By, to.Mine = *a.Author, *a.AuthorID == reader
	}
	for _, res := range a.Results {
		to.Results = append(to.Results, coach.AssignmentResult{ID: res.ID, Day: golf.DateOf(res.Day), Result: res.Result, Passed: res.Passed})
	}
	return to
}

func (s *server) assign(w http.ResponseWriter, r *http.Request) error {
	player, whose, err := s.whose(r)
	if err != nil {
		return err
	}
	f := form.ParseAssignment(r.Form)
	if !f.Sound() {
		return s.showLessons(w, r, http.StatusUnprocessableEntity, player, whose, form.Returned{Assignment: &f})
	}
	to := db.Assignment{What: f.What.Value, Amount: f.Amount.Value, PassMark: f.PassMark.Value, DueOn: f.Due.Value.Time()}
	if err := s.store.Assign(r.Context(), me(r).ID, whose.Player, to); err != nil {
		return err
	}
	return saved(w, r, whose.Lessons()+"#practice", "practice")
}

// ofAssignment reads the number of an assignment of the address.
func (s *server) ofAssignment(r *http.Request) (player db.Player, whose paths.Whose, assignment int64, err error) {
	if player, whose, err = s.whose(r); err == nil {
		assignment, err = id(r, "assignment")
	}
	return player, whose, assignment, err
}

// ownAssignment is the same for the player alone.
func (s *server) ownAssignment(r *http.Request) (player db.Player, whose paths.Whose, assignment int64, err error) {
	if player, whose, assignment, err = s.ofAssignment(r); err == nil && !whose.Own {
		err = golf.ErrNotFound
	}
	return player, whose, assignment, err
}

func (s *server) recordResult(w http.ResponseWriter, r *http.Request) error {
	player, whose, assignment, err := s.ownAssignment(r)
	if err != nil {
		return err
	}
	f := form.ParseResult(r.Form)
	if !f.Sound() {
		return s.showLessons(w, r, http.StatusUnprocessableEntity, player, whose, form.Returned{Of: assignment, Result: &f})
	}
	if err := s.store.RecordResult(r.Context(), whose.Player, assignment, db.Result{Day: f.Day.Value.Time(), Result: f.Result.Value, Passed: f.Passed}); err != nil {
		return err
	}
	return saved(w, r, whose.Lessons()+"#practice", "result")
}

func (s *server) removeResult(w http.ResponseWriter, r *http.Request) error {
	_, whose, _, err := s.ownAssignment(r)
	if err != nil {
		return err
	}
	result, err := id(r, "result")
	if err != nil {
		return err
	}
	if err := s.store.RemoveResult(r.Context(), whose.Player, result); err != nil {
		return err
	}
	return gone(w, r, whose.Lessons(), db.RemovedResult, whose.Player, result)
}

func (s *server) tickOff(w http.ResponseWriter, r *http.Request) error {
	_, whose, assignment, err := s.ownAssignment(r)
	if err != nil {
		return err
	}
	done, what := r.FormValue("done") != "", "undone"
	if done {
		what = "done"
	}
	if err := s.store.TickOff(r.Context(), whose.Player, assignment, done); err != nil {
		return err
	}
	return saved(w, r, whose.Lessons()+"#practice", what)
}

func (s *server) removeAssignment(w http.ResponseWriter, r *http.Request) error {
	_, whose, assignment, err := s.ofAssignment(r)
	if err != nil {
		return err
	}
	if err := s.store.RemoveAssignment(r.Context(), me(r).ID, whose.Player, assignment); err != nil {
		return err
	}
	return gone(w, r, whose.Lessons(), db.RemovedAssignment, whose.Player, assignment)
}
