package handlers

import (
	"fmt"
	"net/http"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"strokeledger/analysis/golf"
	"strokeledger/db"
	"strokeledger/web/form"
	"strokeledger/web/notes"
	"strokeledger/web/paths"
)

// noteMost is how many bytes a note or an answer may have.
const noteMost = 4000

// notes reads the notes about a player for the reader, and records that the reader
// has now seen them.
func (s *server) notes(r *http.Request, whose paths.Whose, of db.NotesOf) ([]notes.Note, error) {
	kept, err := s.store.Notes(r.Context(), me(r).ID, whose.Player, of)
	if err != nil {
		return nil, err
	}
	if err := s.store.MarkRead(r.Context(), me(r).ID, whose.Player, kept); err != nil {
		return nil, err
	}
	all := make([]notes.Note, len(kept))
	for i, k := range kept {
		all[i] = noteOf(k, me(r).ID)
	}
	return all, nil
}

func noteOf(k db.Note, reader golf.PlayerID) notes.Note {
	n := notes.Note{ID: k.ID, Mine: k.AuthorID == reader, Author: k.Author, Question: k.Kind == db.KindQuestion, Lesson: k.Kind == db.KindLesson, Private: k.Private,
		Unread: k.Unread, Answered: k.Answered, Day: golf.DateOf(k.Day), Body: k.Body, Written: k.WrittenAt, Edited: k.EditedAt != nil}
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
		n.Read = *k.ReadAt
	}
	for _, a := range k.Replies {
		n.Replies = append(n.Replies, notes.Reply{ID: a.ID, Mine: a.AuthorID == reader, Author: a.Author, Body: a.Body, Written: a.WrittenAt})
	}
	return n
}

// typedText reads a text of several lines, and says beside its field what is
// wrong.
func typedText(r *http.Request) (text string, problems map[string]string) {
	text = strings.TrimSpace(strings.ReplaceAll(r.FormValue("body"), "\r\n", "\n"))
	control := strings.ContainsFunc(text, func(c rune) bool { return c != '\n' && c != '\t' && unicode.IsControl(c) })
	if text == "" || len(text) > noteMost || !utf8.ValidString(text) || control {
		return text, map[string]string{"body": fmt.Sprintf("Allowed: 1 to %d letters.", noteMost)}
	}
	return text, map[string]string{}
}

// The last hole and the last shot that a note may be about.
const (
	mostHole = 18
	mostShot = 99
)

// place reads what a note on a round is about: nothing for the round, a hole, or
// a hole and a shot.
func place(on string) (hole, shot *int, err error) {
	if on == "" {
		return nil, nil, nil
	}
	h, s, both := strings.Cut(on, ".")
	n, err := strconv.Atoi(h)
	if err != nil || n < 1 || n > mostHole {
		return nil, nil, golf.ErrNotFound
	}
	if !both {
		return &n, nil, nil
	}
	k, err := strconv.Atoi(s)
	if err != nil || k < 1 || k > mostShot {
		return nil, nil, golf.ErrNotFound
	}
	return &n, &k, nil
}

// writeNote keeps a note on a round, or on a lesson when no round is named.
func (s *server) writeNote(w http.ResponseWriter, r *http.Request) error {
	player, whose, err := s.whose(r)
	if err != nil {
		return err
	}
	n := db.Note{Kind: db.KindNote, Private: r.FormValue("private") != "" && !whose.Own}
	var problems map[string]string
	n.Body, problems = typedText(r)
	values := map[string]string{"body": r.FormValue("body"), "private": r.FormValue("private"), "on": r.FormValue("on"), "day": r.FormValue("day")}
	if r.FormValue("round") == "" {
		n.Kind = db.KindLesson
		n.Day = dayOf(values, "day", problems).Time()
		if len(problems) > 0 {
			return s.showLessons(w, r, http.StatusUnprocessableEntity, player, whose, form.Typed{Form: form.FormLesson, Values: values, Problems: problems})
		}
		return s.keepNote(w, r, whose, n)
	}
	if whose.Own {
		n.Kind = db.KindQuestion
	}
	round := golf.RoundID(formID(r, "round"))
	n.RoundID = &round
	if len(problems) > 0 {
		return s.statementAgain(w, r, player, whose, round, form.Typed{Form: form.FormNote, Values: values, Problems: problems})
	}
	if n.Hole, n.Shot, err = place(r.FormValue("on")); err != nil {
		return err
	}
	return s.keepNote(w, r, whose, n)
}

func (s *server) keepNote(w http.ResponseWriter, r *http.Request, whose paths.Whose, n db.Note) error {
	id, err := s.store.WriteNote(r.Context(), me(r).ID, whose.Player, n)
	if err != nil {
		return err
	}
	n.ID = id
	what := "written"
	if n.Kind == db.KindQuestion {
		what = "asked"
	}
	return saved(w, r, noteAt(whose, n), what)
}

// noteAt is where a note is read.
func noteAt(whose paths.Whose, n db.Note) string {
	at := whose.Lessons()
	if n.RoundID != nil {
		at = whose.Round(*n.RoundID)
	}
	return fmt.Sprintf("%s#note-%d", at, n.ID)
}

// statementAgain shows a statement with a form that came back.
func (s *server) statementAgain(w http.ResponseWriter, r *http.Request, player db.Player, whose paths.Whose, round golf.RoundID, typed form.Typed) error {
	kept, err := s.store.SeenRound(r.Context(), me(r).ID, whose.Player, round)
	if err != nil {
		return err
	}
	return s.showStatement(w, r, http.StatusUnprocessableEntity, kept, player, whose, typed)
}

// ofNote reads the note of the address, which who looks may read.
func (s *server) ofNote(r *http.Request) (player db.Player, whose paths.Whose, n db.Note, err error) {
	if player, whose, err = s.whose(r); err != nil {
		return player, whose, n, err
	}
	number, err := id(r, "note")
	if err != nil {
		return player, whose, n, err
	}
	n, err = s.store.Note(r.Context(), me(r).ID, whose.Player, number)
	return player, whose, n, err
}

// noteAgain shows a note's page with a form under it that came back.
func (s *server) noteAgain(w http.ResponseWriter, r *http.Request, player db.Player, whose paths.Whose, n db.Note, which string, problems map[string]string) error {
	typed := form.Typed{Form: which, Of: n.ID, Values: map[string]string{"body": r.FormValue("body")}, Problems: problems}
	if n.RoundID != nil {
		return s.statementAgain(w, r, player, whose, *n.RoundID, typed)
	}
	return s.showLessons(w, r, http.StatusUnprocessableEntity, player, whose, typed)
}

func (s *server) editNote(w http.ResponseWriter, r *http.Request) error {
	player, whose, n, err := s.ofNote(r)
	if err != nil {
		return err
	}
	if n.AuthorID != me(r).ID {
		return golf.ErrNotFound
	}
	body, problems := typedText(r)
	if len(problems) > 0 {
		return s.noteAgain(w, r, player, whose, n, form.FormEdit, problems)
	}
	if err := s.store.EditNote(r.Context(), me(r).ID, whose.Player, n.ID, body, r.FormValue("private") != ""); err != nil {
		return err
	}
	return saved(w, r, noteAt(whose, n), "note")
}

func (s *server) removeNote(w http.ResponseWriter, r *http.Request) error {
	_, whose, n, err := s.ofNote(r)
	if err != nil {
		return err
	}
	if err := s.store.RemoveNote(r.Context(), me(r).ID, whose.Player, n.ID); err != nil {
		return err
	}
	return gone(w, r, noteAt(whose, n), db.RemovedNote, whose.Player, n.ID)
}

func (s *server) reply(w http.ResponseWriter, r *http.Request) error {
	player, whose, n, err := s.ofNote(r)
	if err != nil {
		return err
	}
	body, problems := typedText(r)
	if len(problems) > 0 {
		return s.noteAgain(w, r, player, whose, n, form.FormReply, problems)
	}
	if err := s.store.ReplyTo(r.Context(), me(r).ID, whose.Player, n.ID, body); err != nil {
		return err
	}
	return saved(w, r, noteAt(whose, n), "answered")
}

func (s *server) removeReply(w http.ResponseWriter, r *http.Request) error {
	_, whose, n, err := s.ofNote(r)
	if err != nil {
		return err
	}
	number, err := id(r, "reply")
	if err != nil {
		return err
	}
	if err := s.store.RemoveReply(r.Context(), me(r).ID, whose.Player, number); err != nil {
		return err
	}
	return gone(w, r, noteAt(whose, n), db.RemovedReply, whose.Player, number)
}
