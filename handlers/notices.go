package handlers

import (
	"cmp"
	"errors"
	"net/http"
	"slices"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/coach"
	"strokeledger/web/paths"
	"strokeledger/web/practice"
	"strokeledger/web/words"
)

// tell tells somebody else what the signed-in player did. What was done stands, even
// when nobody can be told.
func (s *server) tell(r *http.Request, to golf.PlayerID, n db.Notice) {
	if to == me(r).ID {
		return
	}
	if err := s.store.Tell(r.Context(), me(r).ID, to, n); err != nil {
		s.options.Log.WarnContext(r.Context(), "somebody was not told", "kind", n.Kind, "error", err)
	}
}

// tellCoaches tells those coaches of a pupil who see a day.
func (s *server) tellCoaches(r *http.Request, pupil golf.PlayerID, day golf.Date, n db.Notice) {
	coaches, err := s.store.Coaches(r.Context(), pupil)
	if err != nil {
		s.options.Log.WarnContext(r.Context(), "no coach was told", "kind", n.Kind, "error", err)
	}
	for _, c := range coaches {
		if c.Confirmed && (c.SharedFrom == nil || golf.DateOf(*c.SharedFrom).Compare(day) <= 0) {
			s.tell(r, c.ID, n)
		}
	}
}

// tellOfNote tells who may read a new note.
func (s *server) tellOfNote(r *http.Request, pages paths.Whose, id int64) {
	n, err := s.store.Note(r.Context(), me(r).ID, pages.Player, id)
	switch {
	case err != nil:
		s.options.Log.WarnContext(r.Context(), "nobody was told of a note", "error", err)
	case n.Private:
	case n.Kind == db.KindQuestion:
		s.tellCoaches(r, pages.Player, golf.DateOf(n.Day), db.Notice{Kind: db.NoticeQuestion, OfID: pages.Player, RoundID: n.RoundID, NoteID: &id})
	default:
		s.tell(r, pages.Player, db.Notice{Kind: db.NoticeNote, OfID: pages.Player, RoundID: n.RoundID, NoteID: &id})
	}
}

// tellOfReply tells the pupil and everybody else in a conversation.
func (s *server) tellOfReply(r *http.Request, pages paths.Whose, n db.Note) {
	others, err := s.store.TalkedTo(r.Context(), pages.Player, n.ID)
	if err != nil {
		s.options.Log.WarnContext(r.Context(), "nobody was told of a reply", "error", err)
	}
	if !slices.Contains(others, pages.Player) {
		others = append(others, pages.Player)
	}
	for _, to := range others {
		if _, err := s.store.Note(r.Context(), to, pages.Player, n.ID); err == nil { // who still may read it
			s.tell(r, to, db.Notice{Kind: db.NoticeAnswer, OfID: pages.Player, RoundID: n.RoundID, NoteID: &n.ID})
		}
	}
}

// ofPractice reads the practice that somebody is told of, if the reader sees it.
func (s *server) ofPractice(r *http.Request, about subject, assignment int64) db.Assignment {
	a, err := s.store.Assignment(r.Context(), me(r).ID, about.player.ID, assignment)
	if err != nil && !errors.Is(err, golf.ErrNotFound) {
		s.options.Log.WarnContext(r.Context(), "nobody was told of practice", "error", err)
	}
	return a
}

// tellOfPractice tells who set something to practise what the player did with it on a
// day, or the player what who set it did.
func (s *server) tellOfPractice(r *http.Request, about subject, a db.Assignment, day time.Time, n db.Notice) {
	if a.AuthorID == nil {
		return
	}
	n.OfID, n.What = about.player.ID, cmp.Or(n.What, a.What)
	s.tell(r, about.player.ID, n)
	if s.authorSees(r, about, a, day) {
		s.tell(r, *a.AuthorID, n)
	}
}

// authorSees reports whether who set something to practise sees it, and what the player
// does on a day.
func (s *server) authorSees(r *http.Request, about subject, a db.Assignment, day time.Time) bool {
	if a.DueOn.Before(day) {
		day = a.DueOn
	}
	seen, err := s.store.Seen(r.Context(), *a.AuthorID, about.player.ID)
	return err == nil && (seen.SharedFrom == nil || !day.Before(*seen.SharedFrom))
}

// tellOfSession tells the coaches who set a drill, which is not done yet, of a session
// of it on a day that they see.
func (s *server) tellOfSession(r *http.Request, d askedDrill, done db.DrillSession) {
	given, err := s.store.Assignments(r.Context(), me(r).ID, d.about.player.ID, 0)
	if err != nil {
		s.options.Log.WarnContext(r.Context(), "nobody was told of a session", "error", err)
	}
	told := map[golf.PlayerID]bool{}
	for _, a := range given {
		if a.DoneAt != nil || a.AuthorID == nil || drillKey(a) != d.key || a.Feet > 0 && a.Feet != done.Feet || told[*a.AuthorID] {
			continue
		}
		if s.authorSees(r, d.about, a, done.Day) {
			told[*a.AuthorID] = true
			s.tell(r, *a.AuthorID, db.Notice{Kind: db.NoticeRecorded, OfID: d.about.player.ID, PracticeID: &a.ID, What: practice.CameTo(words.Excerpt(done.Name), done.Counted, done.Tried)})
		}
	}
}

// notices lists what the signed-in player was told; what is listed is then read.
func (s *server) notices(w http.ResponseWriter, r *http.Request) error {
	kept, err := s.store.NoticesToRead(r.Context(), me(r).ID)
	if err != nil {
		return err
	}
	var listed []int64
	for _, n := range kept {
		listed = append(listed, n.ID)
	}
	if err := s.store.NoticesRead(r.Context(), me(r).ID, listed); err != nil {
		return err
	}
	return show(w, r, http.StatusOK, coach.NewNoticesPage(shell(r), s.noticesFor(me(r), kept)).View())
}

// noticesFor are notices as the account that was told reads them.
func (s *server) noticesFor(p db.Player, kept []db.Notice) []coach.Notice {
	var all []coach.Notice
	for _, n := range kept {
		to := coach.Notice{ID: n.ID, Kind: string(n.Kind), By: n.ByName, Whose: paths.Whose{Player: n.OfID, Own: n.OfID == p.ID}, What: n.What, At: n.ToldAt.In(s.zoneOf(p)), New: n.ReadAt == nil}
		if n.RoundID != nil {
			to.Round = *n.RoundID
		}
		if n.NoteID != nil {
			to.Note = *n.NoteID
		}
		if n.PracticeID != nil {
			to.Practice = *n.PracticeID
		}
		if n.OnDay != nil {
			to.Day = golf.DateOf(*n.OnDay)
		}
		if n.CourseID != nil && n.Hole != nil {
			to.Course, to.Hole = *n.CourseID, *n.Hole
		}
		all = append(all, to)
	}
	return all
}
