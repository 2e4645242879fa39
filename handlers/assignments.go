package handlers

import (
	"net/http"
	"strings"

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

// practiceMost is how many bytes a line about practice may have.
const practiceMost = 200

// dayOf reads a day that was typed, and says beside its field what is wrong.
func dayOf(values map[string]string, field string, problems map[string]string) golf.Date {
	day, err := golf.ParseDate(values[field])
	if err != nil {
		problems[field] = capitalized(err.Error()) + "."
	}
	return day
}

func (s *server) assign(w http.ResponseWriter, r *http.Request) error {
	player, whose, err := s.whose(r)
	if err != nil {
		return err
	}
	values, problems := map[string]string{}, map[string]string{}
	for _, field := range []string{"what", "amount", "pass_mark", "due"} {
		values[field] = strings.TrimSpace(r.FormValue(field))
		if !sayable(values[field], practiceMost) {
			problems[field] = "Allowed: up to 200 letters, in one line."
		}
	}
	if values["what"] == "" {
		problems["what"] = "Say what to practise."
	}
	due := dayOf(values, "due", problems)
	if len(problems) > 0 {
		return s.showLessons(w, r, http.StatusUnprocessableEntity, player, whose, form.Typed{Form: form.FormAssign, Values: values, Problems: problems})
	}
	if err := s.store.Assign(r.Context(), me(r).ID, whose.Player, db.Assignment{What: values["what"], Amount: values["amount"], PassMark: values["pass_mark"], DueOn: due.Time()}); err != nil {
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
	values, problems := map[string]string{"day": r.FormValue("day"), "result": strings.TrimSpace(r.FormValue("result"))}, map[string]string{}
	day := dayOf(values, "day", problems)
	if values["result"] == "" || !sayable(values["result"], practiceMost) {
		problems["result"] = "Give the result, in up to 200 letters."
	}
	if len(problems) > 0 {
		return s.showLessons(w, r, http.StatusUnprocessableEntity, player, whose, form.Typed{Form: form.FormResult, Of: assignment, Values: values, Problems: problems})
	}
	if err := s.store.RecordResult(r.Context(), whose.Player, assignment, db.Result{Day: day.Time(), Result: values["result"], Passed: r.FormValue("passed") != ""}); err != nil {
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
