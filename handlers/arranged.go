package handlers

import (
	"fmt"
	"net/http"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/calendar"
	"strokeledger/web/coach"
	"strokeledger/web/form"
	"strokeledger/web/paths"
)

// arranged reads the lessons of a player that are to come, and those of late.
func (s *server) arranged(r *http.Request, pages paths.Whose) ([]coach.ArrangedLesson, error) {
	kept, err := s.store.Lessons(r.Context(), me(r).ID, pages.Player, coach.ArrangedFrom(s.today(r)))
	var all []coach.ArrangedLesson
	for _, l := range kept {
		all = append(all, arrangedOf(l))
	}
	return all, err
}

func arrangedOf(l db.Lesson) coach.ArrangedLesson {
	return coach.ArrangedLesson{ID: l.ID, CoachID: l.CoachID, Coach: l.Coach, Day: golf.DateOf(l.Day), Starts: l.Starts, Place: l.Place, Aim: l.Aim, Agreed: l.Agreed, Written: l.Written, Changes: l.Changes}
}

// readArranged reads the lessons that were arranged, and for the player with whom one
// can be.
func (s *server) readArranged(r *http.Request, q *coach.LessonsInput) (err error) {
	if q.Lessons, err = s.arranged(r, q.Whose); err != nil || !q.Whose.Own {
		return err
	}
	coaches, err := s.store.Coaches(r.Context(), me(r).ID)
	for _, c := range coaches {
		if c.Confirmed {
			q.Coaches = append(q.Coaches, coach.LessonCoach{ID: c.ID, Name: c.Name})
		}
	}
	return err
}

// nextLesson says in a line when the signed-in player's next lesson is.
func (s *server) nextLesson(r *http.Request) (string, error) {
	today := s.today(r)
	next, err := s.store.Lessons(r.Context(), me(r).ID, me(r).ID, today)
	if err != nil || len(next) == 0 {
		return "", err
	}
	return coach.LessonNews(arrangedOf(next[0]), today), nil
}

// lessonTyped is a lesson as a form gives it.
func lessonTyped(f form.Lesson) db.Lesson {
	l := db.Lesson{CoachID: f.Coach.Value, Day: f.Day.Value.Time(), Place: f.Place.Value, Aim: f.Aim.Value, Agreed: f.Agreed.Value}
	if f.Time.Text != "" {
		l.Starts = &f.Time.Value
	}
	return l
}

// arrangeLesson stores a lesson to come: of the coach with the pupil, or of the player
// with one of the coaches.
func (s *server) arrangeLesson(w http.ResponseWriter, r *http.Request) error {
	about, err := s.subject(r)
	if err != nil {
		return err
	}
	f := form.ParseArrangedLesson(r.Form, s.today(r))
	if !about.pages.Own {
		f.Coach = form.Field[golf.PlayerID]{Value: me(r).ID}
	}
	if !f.Sound() {
		return s.showLessons(w, r, about, form.Returned{Arranged: &f})
	}
	l := lessonTyped(f)
	if _, err := s.store.Arrange(r.Context(), me(r).ID, about.player.ID, l); err != nil {
		return err
	}
	s.tellOfLesson(r, about.pages, l, db.NoticeArranged)
	return saved(w, r, about.pages.NextLesson(), "arranged")
}

// ofLesson reads the lesson named in the address, if the reader may read it.
func (s *server) ofLesson(r *http.Request) (about subject, l db.Lesson, err error) {
	if about, err = s.subject(r); err != nil {
		return about, l, err
	}
	number, err := id(r, "lesson")
	if err != nil {
		return about, l, err
	}
	l, err = s.store.Lesson(r.Context(), me(r).ID, about.player.ID, number)
	return about, l, err
}

// rearrangeLesson changes a lesson to come.
func (s *server) rearrangeLesson(w http.ResponseWriter, r *http.Request) error {
	about, l, err := s.ofLesson(r)
	if err != nil {
		return err
	}
	if !about.pages.Own && l.CoachID != me(r).ID {
		return golf.ErrNotFound
	}
	f := form.ParseLessonOf(r.Form, s.today(r))
	if seen := r.FormValue("changes"); f.Sound() && seen != "" && seen != fmt.Sprint(l.Changes) {
		f.Day.Problem = coach.LessonMoved(arrangedOf(l))
	}
	if !f.Sound() {
		return s.showLessons(w, r, about, form.Returned{Of: l.ID, Arranged: &f})
	}
	changed := lessonTyped(f)
	changed.ID, changed.CoachID, changed.Changes = l.ID, l.CoachID, l.Changes
	if err := s.store.Rearrange(r.Context(), me(r).ID, about.player.ID, changed); err != nil {
		return err
	}
	s.tellOfLesson(r, about.pages, changed, db.NoticeMoved)
	return saved(w, r, about.pages.NextLesson(), "moved")
}

// cancelLesson calls a lesson off.
func (s *server) cancelLesson(w http.ResponseWriter, r *http.Request) error {
	about, l, err := s.ofLesson(r)
	if err != nil {
		return err
	}
	if err := s.store.CancelLesson(r.Context(), me(r).ID, about.player.ID, l.ID); err != nil {
		return err
	}
	s.tellOfLesson(r, about.pages, l, db.NoticeOff)
	return redirectAfterRemoval(w, r, about.pages.Lessons(), removal{db.RemovedLesson, about.player.ID, l.ID})
}

// restoreLesson brings a lesson back.
func (s *server) restoreLesson(r *http.Request, pages paths.Whose, lesson int64) error {
	if err := s.store.RestoreLesson(r.Context(), me(r).ID, pages.Player, lesson); err != nil {
		return err
	}
	l, err := s.store.Lesson(r.Context(), me(r).ID, pages.Player, lesson)
	if err == nil {
		s.tellOfLesson(r, pages, l, db.NoticeArranged)
	}
	return err
}

// tellOfLesson tells the other of the two what was done with a lesson: the pupil, or the
// coach while the coach has access.
func (s *server) tellOfLesson(r *http.Request, pages paths.Whose, l db.Lesson, kind db.NoticeKind) {
	to := pages.Player
	if pages.Own {
		to = l.CoachID
	}
	if _, err := s.store.Seen(r.Context(), to, pages.Player); err == nil {
		s.tell(r, to, db.Notice{Kind: kind, OfID: pages.Player, What: coach.LessonTime(arrangedOf(l))})
	}
}

// lessonFile sends a lesson as a file for a calendar.
func (s *server) lessonFile(w http.ResponseWriter, r *http.Request) error {
	about, l, err := s.ofLesson(r)
	if err != nil {
		return err
	}
	if err := s.recordLook(r, about, db.LookLessons, 0); err != nil {
		return err
	}
	file, err := calendar.Write(s.eventOf(r, about, l))
	if err != nil {
		return err
	}
	return sendFile(w, calendar.Type, "lesson-"+golf.DateOf(l.Day).String()+".ics", file)
}

// eventOf is a lesson as a calendar of the reader's has it.
func (s *server) eventOf(r *http.Request, about subject, l db.Lesson) calendar.Event {
	_, host, _ := strings.Cut(s.absolute(r, ""), "://")
	e := calendar.Event{UID: fmt.Sprintf("lesson-%d-%d@%s", about.player.ID, l.ID, host), Version: l.Changes, Written: s.now(), Day: golf.DateOf(l.Day), AllDay: l.Starts == nil,
		Minute: orZero(l.Starts), Summary: "Lesson with " + l.Coach, Place: l.Place, At: s.absolute(r, about.pages.NextLesson())}
	if l.CoachID == me(r).ID {
		e.Summary = "Lesson with " + about.player.Name
	}
	if l.Aim != "" {
		e.Text = "Aim: " + l.Aim
	}
	e.Text = strings.TrimSpace(e.Text + "\n\n" + l.Agreed)
	return e
}
