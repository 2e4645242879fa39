package handlers

import (
	"net/http"
	"slices"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/coach"
	"strokeledger/web/paths"
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

// tellOfPractice tells who set something to practise what the player did with it.
func (s *server) tellOfPractice(r *http.Request, about subject, assignment int64, n db.Notice) {
	given, err := s.store.Assignments(r.Context(), me(r).ID, about.player.ID, 0)
	if err != nil {
		s.options.Log.WarnContext(r.Context(), "nobody was told of practice", "error", err)
	}
	i := slices.IndexFunc(given, func(a db.Assignment) bool { return a.ID == assignment })
	if i < 0 || given[i].AuthorID == nil {
		return
	}
	if n.What == "" {
		n.What = given[i].What
	}
	if _, err := s.store.Seen(r.Context(), *given[i].AuthorID, about.player.ID); err == nil {
		n.OfID = about.player.ID
		s.tell(r, *given[i].AuthorID, n)
	}
}

// notices lists what the signed-in player was told, which is then read.
func (s *server) notices(w http.ResponseWriter, r *http.Request) error {
	kept, err := s.store.Notices(r.Context(), me(r).ID)
	if err != nil {
		return err
	}
	var all []coach.Notice
	for _, n := range kept {
		to := coach.Notice{Kind: string(n.Kind), By: n.ByName, Whose: paths.Whose{Player: n.OfID, Own: n.OfID == me(r).ID}, What: n.What, At: s.here(r, n.ToldAt), New: n.ReadAt == nil}
		if n.RoundID != nil {
			to.Round = *n.RoundID
		}
		if n.NoteID != nil {
			to.Note = *n.NoteID
		}
		if n.CourseID != nil && n.Hole != nil {
			to.Course, to.Hole = *n.CourseID, *n.Hole
		}
		all = append(all, to)
	}
	if err := s.store.NoticesRead(r.Context(), me(r).ID); err != nil {
		return err
	}
	return show(w, r, http.StatusOK, coach.NewNoticesPage(shell(r), all).View())
}
