package handlers

import (
	"net/http"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/web/pages"
	"strokeledger/web/paths"
)

// markMost is how many letters a mark may have.
const markMost = 80

// mark marks a day of the player's own, to compare before and after.
func (s *server) mark(w http.ResponseWriter, r *http.Request) error {
	day, err := golf.ParseDate(r.FormValue("day"))
	what := strings.TrimSpace(r.FormValue("what"))
	if err != nil || what == "" || !sayable(what, markMost) {
		q, err := s.compared(r, me(r), paths.Comparison{Whose: paths.Whose{Player: me(r).ID, Own: true}})
		if err != nil {
			return err
		}
		q.Problem = "The day was not marked. Needed: a day, and what happened in at most 80 letters."
		return show(w, r, http.StatusUnprocessableEntity, pages.NewMonths(shell(r), q).View())
	}
	if _, err := s.store.NewMark(r.Context(), me(r).ID, day, what); err != nil {
		return err
	}
	return then(w, r, paths.MyMonths)
}

func (s *server) removeMark(w http.ResponseWriter, r *http.Request) error {
	n, err := id(r, "mark")
	if err != nil {
		return err
	}
	if err := s.store.RemoveMark(r.Context(), me(r).ID, n); err != nil {
		return err
	}
	return then(w, r, paths.MyMonths)
}
