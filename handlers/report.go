package handlers

import (
	"net/http"
	"time"

	"strokeledger/analysis/compare"
	"strokeledger/db"
	"strokeledger/web/coach"
	"strokeledger/web/paths"
)

// beforeAll stands for the span before one that has none: no round is in it.
var beforeAll = compare.Month(1, time.January)

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
	q := coach.ReportInput{Today: now(), Span: compare.Span{Last: compare.FormRounds}}
	status := http.StatusOK
	if text := r.FormValue("span"); text != "" {
		span, err := compare.ParseSpan(text)
		if err != nil {
			q.Problem, status = capitalized(err.Error())+".", http.StatusUnprocessableEntity
		} else {
			q.Span = span
		}
	}
	before, ok := q.Span.Earlier()
	if !ok {
		before = beforeAll
	}
	at := paths.Comparison{Whose: whose}.With(before.String(), q.Span.String())
	if q.Months, err = s.compared(r, player, at); err != nil {
		return err
	}
	if q.Notes, err = s.notes(r, whose, db.NotesOf{Most: reportNotes}); err != nil {
		return err
	}
	if q.Assignments, err = s.assignments(r, whose, lessonAssignments); err != nil {
		return err
	}
	if err := s.looked(r, whose, db.LookReport, 0); err != nil {
		return err
	}
	return show(w, r, status, coach.NewReportPage(shell(r), q).View())
}
