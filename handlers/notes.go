package handlers

import (
	"fmt"
	"net/http"
	"strconv"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/form"
	"strokeledger/web/notes"
	"strokeledger/web/paths"
)

// notes reads the notes about a player for the reader, and records that the reader
// has now seen them.
func (s *server) notes(r *http.Request, pages paths.Whose, of db.NotesOf) ([]notes.Note, error) {
	kept, err := s.store.Notes(r.Context(), me(r).ID, pages.Player, of)
	if err != nil {
		return nil, err
	}
	return s.notesOf(r, kept), s.store.MarkRead(r.Context(), me(r).ID, pages.Player, kept)
}

// notesOf are stored notes for the reader.
func (s *server) notesOf(r *http.Request, kept []db.Note) []notes.Note {
	all := make([]notes.Note, len(kept))
	for i, k := range kept {
		all[i] = noteOf(k, me(r).ID, s.zoneOf(me(r)))
	}
	return all
}

// noteOf is a note for a reader, whose time zone its times are of.
func noteOf(k db.Note, reader golf.PlayerID, zone *time.Location) notes.Note {
	n := notes.Note{ID: k.ID, Mine: k.AuthorID == reader, Author: k.Author, Question: k.Kind == db.KindQuestion, Lesson: k.Kind == db.KindLesson, Private: k.Private,
		Unread: k.Unread, Answered: k.Answered, Day: golf.DateOf(k.Day), Body: k.Body, Written: k.WrittenAt.In(zone), Edited: k.EditedAt != nil, Version: versionOf(k)}
	if k.RoundID != nil {
		n.Round = *k.RoundID
	}
	if k.Hole != nil {
		n.Hole = *k.Hole
	}
	if k.Shot != nil {
		n.Shot = *k.Shot
	}
	if k.ReadAt != nil {
		n.Read = k.ReadAt.In(zone)
	}
	for _, a := range k.Replies {
		n.Replies = append(n.Replies, notes.Reply{ID: a.ID, Mine: a.AuthorID == reader, Author: a.Author, Body: a.Body, Written: a.WrittenAt.In(zone)})
	}
	return n
}

// writeNote saves a note on a round, or on a lesson when no round is named.
func (s *server) writeNote(w http.ResponseWriter, r *http.Request) error {
	about, err := s.subject(r)
	if err != nil {
		return s.keepWritten(w, r, err)
	}
	if r.FormValue("round") == "" {
		return s.writeLesson(w, r, about)
	}
	f, round := form.ParseRoundNote(r.Form), golf.RoundID(formID(r, "round"))
	if !f.Spot.Sound() {
		return golf.ErrNotFound
	}
	put, err := s.putPhrase(r, &f.Body)
	if err != nil {
		return err
	}
	if put || !f.Sound() {
		return s.statementAgain(w, r, about, round, form.Returned{Note: &f, Inserted: put})
	}
	n := db.Note{Kind: db.KindNote, Private: f.Private && !about.pages.Own, Body: f.Body.Value, RoundID: &round, Hole: known(f.Spot.Value.Hole), Shot: known(f.Spot.Value.Shot)}
	if about.pages.Own {
		n.Kind = db.KindQuestion
	}
	return s.saveNewNote(w, r, about.pages, n)
}

func (s *server) writeLesson(w http.ResponseWriter, r *http.Request, about subject) error {
	f := form.ParseLesson(r.Form, s.today(r))
	put, err := s.putPhrase(r, &f.Body)
	if err != nil {
		return err
	}
	if put || !f.Sound() {
		return s.showLessons(w, r, about, form.Returned{Lesson: &f, Inserted: put})
	}
	return s.saveNewNote(w, r, about.pages, db.Note{Kind: db.KindLesson, Private: f.Private && !about.pages.Own, Body: f.Body.Value, Day: f.Day.Value.Time()})
}

// known is a number as the database stores it: nil for 0, which means that it is
// not known.
func known[T int | float64 | golf.CourseID](n T) *T {
	if n == 0 {
		return nil
	}
	return &n
}

func (s *server) saveNewNote(w http.ResponseWriter, r *http.Request, pages paths.Whose, n db.Note) error {
	id, err := s.store.WriteNote(r.Context(), me(r).ID, pages.Player, n)
	if err != nil {
		return err
	}
	n.ID = id
	s.tellOfNote(r, pages, id)
	what := "written"
	if n.Kind == db.KindQuestion {
		what = "asked"
	}
	at := noteAt(pages, n)
	if n.Hole != nil { // the writer looks at the hole
		at = fmt.Sprintf("%s#h%d", pages.Written(*n.RoundID, *n.Hole, orZero(n.Shot)), *n.Hole)
	}
	return saved(w, r, at, what)
}

// orZero is a number of the database as pages have it: 0 for one that is not known.
func orZero(n *int) int {
	if n == nil {
		return 0
	}
	return *n
}

// noteAt is the address where a note is read.
func noteAt(pages paths.Whose, n db.Note) string {
	at := pages.Lessons()
	if n.RoundID != nil {
		at = pages.Round(*n.RoundID)
	}
	return fmt.Sprintf("%s#note-%d", at, n.ID)
}

// statementAgain shows a statement with a form that has problems.
func (s *server) statementAgain(w http.ResponseWriter, r *http.Request, about subject, round golf.RoundID, back form.Returned) error {
	kept, err := s.store.SeenRound(r.Context(), me(r).ID, about.player.ID, round)
	if err != nil {
		return err
	}
	return s.showStatement(w, r, kept, about, back)
}

// ofNote reads the note named in the address, if the reader may read it.
func (s *server) ofNote(r *http.Request) (about subject, n db.Note, err error) {
	if about, err = s.subject(r); err != nil {
		return about, n, err
	}
	number, err := id(r, "note")
	if err != nil {
		return about, n, err
	}
	n, err = s.store.Note(r.Context(), me(r).ID, about.player.ID, number)
	return about, n, err
}

// noteAgain shows the page of a note, and under the note a form that has
// problems.
func (s *server) noteAgain(w http.ResponseWriter, r *http.Request, about subject, n db.Note, back form.Returned) error {
	back.Of = n.ID
	if n.RoundID != nil {
		return s.statementAgain(w, r, about, *n.RoundID, back)
	}
	return s.showLessons(w, r, about, back)
}

func (s *server) editNote(w http.ResponseWriter, r *http.Request) error {
	about, n, err := s.ofNote(r)
	if err != nil {
		return s.keepWritten(w, r, err)
	}
	if n.AuthorID != me(r).ID {
		return golf.ErrNotFound
	}
	f := form.ParseNote(r.Form)
	if r.Form.Has("version") && r.FormValue("version") != versionOf(n) && f.Body.Value != n.Body && f.Sound() {
		f.Body.Problem = fmt.Sprintf("You have changed this note in another window, to “%s”. Save again to keep what stands here.", n.Body)
	}
	if !f.Sound() {
		return s.noteAgain(w, r, about, n, form.Returned{Edit: &f})
	}
	n.Body, n.Private = f.Body.Value, f.Private
	if err := s.store.EditNote(r.Context(), me(r).ID, about.player.ID, n); err != nil {
		return err
	}
	return saved(w, r, noteAt(about.pages, n), "note")
}

// versionOf is another for a note after every change.
func versionOf(n db.Note) string {
	if n.EditedAt == nil {
		return ""
	}
	return strconv.FormatInt(n.EditedAt.UnixMicro(), 10)
}

func (s *server) removeNote(w http.ResponseWriter, r *http.Request) error {
	about, n, err := s.ofNote(r)
	if err != nil {
		return err
	}
	if err := s.store.RemoveNote(r.Context(), me(r).ID, about.player.ID, n.ID); err != nil {
		return err
	}
	return redirectAfterRemoval(w, r, noteAt(about.pages, n), removal{db.RemovedNote, about.player.ID, n.ID})
}

func (s *server) reply(w http.ResponseWriter, r *http.Request) error {
	about, n, err := s.ofNote(r)
	if err != nil {
		return s.keepWritten(w, r, err)
	}
	f := form.ParseNote(r.Form)
	put, err := s.putPhrase(r, &f.Body)
	if err != nil {
		return err
	}
	if put || !f.Sound() {
		return s.noteAgain(w, r, about, n, form.Returned{Reply: &f, Inserted: put})
	}
	if err := s.store.ReplyTo(r.Context(), me(r).ID, about.player.ID, n.ID, f.Body.Value); err != nil {
		return err
	}
	s.tellOfReply(r, about.pages, n)
	return saved(w, r, noteAt(about.pages, n), "answered")
}

func (s *server) removeReply(w http.ResponseWriter, r *http.Request) error {
	about, n, err := s.ofNote(r)
	if err != nil {
		return err
	}
	number, err := id(r, "reply")
	if err != nil {
		return err
	}
	if err := s.store.RemoveReply(r.Context(), me(r).ID, about.player.ID, number); err != nil {
		return err
	}
	return redirectAfterRemoval(w, r, noteAt(about.pages, n), removal{db.RemovedReply, about.player.ID, number})
}
