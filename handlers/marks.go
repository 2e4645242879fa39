package handlers

import (
	"net/http"
	"strings"

	"strokeledger/web/months"
	"strokeledger/web/paths"
)

// markMost is how many letters a mark may have.
const markMost = 80

// mark marks a day of the player's own, to compare before and after.
func (s *server) mark(w http.ResponseWriter, r *http.Request) error {
	problems := map[string]string{}
	typed := [2]string{r.FormValue("day"), strings.TrimSpace(r.FormValue("what"))}
	day := dayOf(map[string]string{months.FieldDay: typed[0]}, months.FieldDay, problems)
	what := typed[1]
	if what == "" || !sayable(what, markMost) {
		problems[months.FieldWhat] = "Needed: what happened, in at most 80 letters."
	}
	if len(problems) > 0 {
		q, err := s.compared(r, me(r), paths.Comparison{Whose: paths.Whose{Player: me(r).ID, Own: true}})
		if err != nil {
			return err
		}
		q.Problems, q.Marking = problems, typed
		return show(w, r, http.StatusUnprocessableEntity, months.NewComparisonPage(shell(r), q).View())
	}
	if _, err := s.store.NewMark(r.Context(), me(r).ID, day, what); err != nil {
		return err
	}
	return saved(w, r, paths.Comparison{Whose: mine(r)}.Months(), "mark")
}

func (s *server) removeMark(w http.ResponseWriter, r *http.Request) error {
	n, err := id(r, "mark")
	if err != nil {
		return err
	}
	if err := s.store.RemoveMark(r.Context(), me(r).ID, n); err != nil {
		return err
	}
	return saved(w, r, paths.Comparison{Whose: mine(r)}.Months(), "unmarked")
}
