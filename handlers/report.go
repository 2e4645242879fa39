package handlers

import (
	"net/http"
	"slices"

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
	kept, err := s.readReportInput(r, about, &q)
	if err != nil {
		return err
	}
	if err := s.recordLook(r, about, db.LookReport, 0); err != nil {
		return err
	}
	return s.showReport(w, r, status, about, coach.NewReportPage(s.shellOf(r, about), q), kept)
}

// showReport shows a report, and records that the reader has read those notes that are
// on it.
func (s *server) showReport(w http.ResponseWriter, r *http.Request, status int, about subject, page coach.ReportPage, kept []db.Note) error {
	shown := slices.DeleteFunc(kept, func(n db.Note) bool { return !page.Shows(n.ID) })
	if err := s.store.MarkRead(r.Context(), me(r).ID, about.player.ID, shown); err != nil {
		return err
	}
	return show(w, r, status, page.View())
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

// readReportInput reads what goes into a report, and works the report out. It returns
// the notes that may be on it, none of them marked as read.
func (s *server) readReportInput(r *http.Request, about subject, q *coach.ReportInput) ([]db.Note, error) {
	history, err := s.store.History(r.Context(), me(r).ID, about.player.ID)
	if err != nil {
		return nil, err
	}
	kept, err := s.store.Notes(r.Context(), me(r).ID, about.player.ID, db.NotesOf{Most: reportNotes})
	if err != nil {
		return nil, err
	}
	q.Notes = s.notesOf(r, kept)
	if err := s.readPractised(r, about, q); err != nil {
		return nil, err
	}
	if q.Months, err = s.comparisonInput(r, about.player, paths.Comparison{Whose: about.pages}); err != nil {
		return nil, err
	}
	report, err := s.engine.Report(analysis.ReportInput{History: history, Span: q.Span, Target: about.player.Target, Boundary: golf.Yards.Of(about.player.BoundaryYd)})
	q.Months.Months, q.Months.At.Comparison, q.Span = report.Months, report.Choice, report.Span
	return kept, err
}

// readPractised reads what the player was set to practise and what the player did
// besides.
func (s *server) readPractised(r *http.Request, about subject, q *coach.ReportInput) error {
	told, err := s.told(r, about)
	if err != nil {
		return err
	}
	if q.Assignments, err = s.assignments(r, about.pages, lessonAssignments); err != nil {
		return err
	}
	addSessions(q.Assignments, told)
	q.Drills = unassigned(q.Assignments, told)
	return nil
}
