package handlers

import (
	"net/http"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/coach"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// reportNotes is how many notes a report may hold.
const reportNotes = 200

// report shows a report on a span of a player's rounds, to print or to save.
func (s *server) report(w http.ResponseWriter, r *http.Request) error {
	about, err := s.subject(r)
	if err != nil {
		return err
	}
	span, typed, err := readReport(r)
	if typed && err == nil {
		return redirect(w, r, about.pages.ReportOf(span))
	}
	q := coach.ReportInput{Today: s.today(r), Span: span}
	status := http.StatusOK
	if err != nil {
		q.Problem, status = words.Capital(err.Error())+".", http.StatusUnprocessableEntity
	}
	if err := s.readReportInput(r, about, &q); err != nil {
		return err
	}
	if err := s.recordLook(r, about, db.LookReport, 0); err != nil {
		return err
	}
	return show(w, r, status, coach.NewReportPage(shell(r), q).View())
}

// readReport reads the span of a report, and whether it was typed as two days. A
// span that cannot be read is replaced with the usual one.
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

// readReportInput reads what goes into a report, and works the report out.
func (s *server) readReportInput(r *http.Request, about subject, q *coach.ReportInput) error {
	history, err := s.store.History(r.Context(), me(r).ID, about.player.ID)
	if err != nil {
		return err
	}
	if q.Notes, err = s.notes(r, about.pages, db.NotesOf{Most: reportNotes}); err != nil {
		return err
	}
	if q.Assignments, err = s.assignments(r, about.pages, lessonAssignments); err != nil {
		return err
	}
	if q.Months, err = s.comparisonInput(r, about.player, paths.Comparison{Whose: about.pages}); err != nil {
		return err
	}
	report, err := s.engine.Report(analysis.ReportInput{History: history, Span: q.Span, Target: about.player.Target, Boundary: golf.Yards.Of(about.player.BoundaryYd)})
	q.Months.Months, q.Months.At.Comparison = report.Months, report.Choice
	return err
}
