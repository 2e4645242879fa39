package handlers

import (
	"net/http"

	"strokeledger/web/form"
	"strokeledger/web/months"
	"strokeledger/web/paths"
)

// mark marks a day, so that the player can compare before and after.
func (s *server) mark(w http.ResponseWriter, r *http.Request) error {
	f := form.ParseMark(r.Form)
	if !f.Sound() {
		q, err := s.compared(r, me(r), paths.Comparison{Whose: mine(r)})
		if err != nil {
			return err
		}
		q.Mark = f
		return show(w, r, http.StatusUnprocessableEntity, months.NewComparisonPage(shell(r), q).View())
	}
	if _, err := s.store.NewMark(r.Context(), me(r).ID, f.Day.Value, f.What.Value); err != nil {
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
