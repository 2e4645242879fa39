package handlers

import (
	"net/http"

	"strokeledger/analysis/compare"
	"strokeledger/db"
	"strokeledger/web/pages"
	"strokeledger/web/paths"
)

// reportNotes is how many notes a report may hold.
const reportNotes = 200

// report is a page to take away of a span of a player's rounds.
func (s *server) report(w http.ResponseWriter, r *http.Request) error {
	player, whose, err := s.whose(r)
	if err != nil {
		return err
	}
	if from, to := r.FormValue("from"), r.FormValue("to"); from != "" || to != "" {
		return then(w, r, whose.Report(from+".."+to))
	}
	q := pages.AskedReport{Today: now(), Span: compare.Span{Last: compare.FormRounds}}
	status := http.StatusOK
	if text := r.FormValue("span"); text != "" {
		span, err := compare.ParseSpan(text)
		if err != nil {
			q.Problem, status = capitalized(err.Error())+".", http.StatusUnprocessableEntity
		} else {
			q.Span = span
		}
	}
	at := paths.Comparison{Whose: whose}.With(q.Span.String(), q.Span.String())
	if before, ok := q.Span.Earlier(); ok {
		at = at.With(before.String(), q.Span.String())
	}
	if q.Months, err = s.compared(r, player, at); err != nil {
		return err
	}
	if q.Notes, err = s.notes(r, whose, db.NotesOf{Most: reportNotes}); err != nil {
		return err
	}
	if q.Assignments, err = s.assignments(r, whose, lessonAssignments); err != nil {
		return err
	}
	return show(w, r, status, pages.NewReport(shell(r), q).View())
}
