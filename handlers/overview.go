package handlers

import (
	"net/http"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/coach"
	"strokeledger/web/form"
)

// overview shows a coach what to know of a pupil before a lesson.
func (s *server) overview(w http.ResponseWriter, r *http.Request) error {
	about, err := s.subject(r)
	if err != nil {
		return err
	}
	if about.pages.Own {
		return redirect(w, r, about.pages.Lessons())
	}
	return s.showOverview(w, r, about, form.Returned{})
}

// showOverview shows it; back is a form that has problems, empty for none.
func (s *server) showOverview(w http.ResponseWriter, r *http.Request, about subject, back form.Returned) error {
	q := coach.OverviewInput{Whose: about.pages, Name: about.player.Name, Target: about.player.Target, Units: unitsOf(me(r)), Today: s.today(r), Me: me(r).ID, Returned: back}
	page, err := s.ofPupil(r, about)
	if err != nil {
		return err
	}
	q.Pupil = page.pupil
	if err := s.readOverview(r, about, &q); err != nil {
		return err
	}
	if err := s.recordLook(r, about, db.LookOverview, 0); err != nil {
		return err
	}
	if err := s.offerUndo(r, &page.Page); err != nil {
		return err
	}
	return show(w, r, statusReturned(back), coach.NewOverviewPage(page.Page, q).View())
}

// readOverview reads a pupil's rounds, notes and practice, and works the overview out.
func (s *server) readOverview(r *http.Request, about subject, q *coach.OverviewInput) error {
	before, err := s.store.VisitBefore(r.Context(), me(r).ID, about.player.ID)
	if err != nil {
		return err
	}
	if before != nil {
		q.Visit = s.here(r, *before)
	}
	if err := s.readWritten(r, about, q); err != nil {
		return err
	}
	history, err := s.store.History(r.Context(), me(r).ID, about.player.ID)
	if err != nil {
		return err
	}
	in := analysis.OverviewInput{History: history, Target: about.player.Target, Boundary: golf.Yards.Of(about.player.BoundaryYd), Lesson: coach.LastLesson(q.Notes)}
	for _, a := range coach.Figured(q.Assignments) {
		in.Practice = append(in.Practice, analysis.Practised{From: a.Given, Row: a.Figure})
	}
	q.Overview, err = s.engine.Overview(in)
	return err
}

// readWritten reads a pupil's notes, practice and marked days.
func (s *server) readWritten(r *http.Request, about subject, q *coach.OverviewInput) (err error) {
	if q.Notes, err = s.notes(r, about.pages, db.NotesOf{Most: lessonNotes}); err != nil {
		return err
	}
	if q.Assignments, err = s.assignments(r, about.pages, lessonAssignments); err != nil {
		return err
	}
	if q.Lessons, err = s.arranged(r, about.pages); err != nil {
		return err
	}
	if q.Phrases, err = s.phrasesOf(r); err != nil {
		return err
	}
	q.Marks, err = s.markedDays(r, about.player.ID)
	return err
}
