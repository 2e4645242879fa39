package handlers

import (
	"net/http"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/coach"
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
	span, typed, err := readReport(r)
	if typed && err == nil {
		return then(w, r, whose.ReportOf(span))
	}
	q := coach.ReportInput{Today: now(), Span: span}
	status := http.StatusOK
	if err != nil {
		q.Problem, status = capitalized(err.Error())+".", http.StatusUnprocessableEntity
	}
	if err := s.reported(r, player, whose, &q); err != nil {
		return err
	}
	if err := s.looked(r, whose, db.LookReport, 0); err != nil {
		return err
	}
	return show(w, r, status, coach.NewReportPage(shell(r), q).View())
}

// readReport reads the span of a report, and whether it was typed as two days.
// One that cannot be read is the usual one.
func readReport(r *http.Request) (span golf.Span, typed bool, err error) {
	text := r.FormValue("span")
	if from, to := r.FormValue("from"), r.FormValue("to"); from != "" || to != "" {
		text, typed = from+".."+to, true
	}
	if text == "" {
		return analysis.UsualReport(), typed, nil
	}
	if span, err = golf.ParseSpan(text); err != nil {
		span = analysis.UsualReport()
	}
	return span, typed, err
}

// reported reads what a report is made of and has it worked out.
func (s *server) reported(r *http.Request, p db.Player, whose paths.Whose, q *coach.ReportInput) error {
	history, err := s.store.History(r.Context(), me(r).ID, whose.Player)
	if err != nil {
		return err
	}
	if q.Notes, err = s.notes(r, whose, db.NotesOf{Most: reportNotes}); err != nil {
		return err
	}
	if q.Assignments, err = s.assignments(r, whose, lessonAssignments); err != nil {
		return err
	}
	if q.Months, err = s.comparisonInput(r, p, paths.Comparison{Whose: whose}); err != nil {
		return err
	}
	report, err := s.engine.Report(analysis.ReportInput{History: history, Span: q.Span, Target: p.Target, Boundary: golf.Yards.Of(p.BoundaryYd)})
	q.Months.Months, q.Months.At.Comparison = report.Months, report.Choice
	return err
}
