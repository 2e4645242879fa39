package pages

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/paths"
)

// Note is something that a coach or the player wrote, as a page is asked to show
// it.
type Note struct {
	ID         int64
	Mine       bool // who looks wrote it
	Author     string
	Question   bool
	Lesson     bool
	Private    bool
	Unread     bool
	Answered   bool
	Day        golf.Date
	Round      golf.RoundID // 0 for a lesson
	Hole, Shot int          // 0 for none
	Body       string
	Written    time.Time
	Edited     bool
	Read       time.Time // by another than its writer; zero for not yet
	Replies    []NoteReply
}

// NoteReply is an answer under a note.
type NoteReply struct {
	ID      int64
	Mine    bool
	Author  string
	Body    string
	Written time.Time
}

// Typed is a form that came back because something in it is not allowed.
type Typed struct {
	Form     string            // its name
	Of       int64             // the note or the assignment that it belongs to, 0 for none
	Values   map[string]string // as they were typed, by field
	Problems map[string]string // what is wrong, by field
}

// of returns what was typed into a form and what was wrong, if that is the form;
// otherwise nothing.
func (t Typed) of(form string, of int64) (values, problems map[string]string) {
	if t.Form != form || t.Of != of {
		return nil, nil
	}
	return t.Values, t.Problems
}

// The forms that may come back.
const (
	FormNote   = "note"
	FormLesson = "lesson"
	FormReply  = "reply"
	FormEdit   = "edit"
	FormAssign = "assign"
	FormTarget = "target"
	FormResult = "result"
	FormCard   = "card"
)

// NoteCard is a note with its conversation.
type NoteCard struct {
	ID       string
	Who      string
	What     string // question, lesson, private
	Place    string
	PlaceAt  string // address of what it is about; empty where that is in sight
	When     string
	New      bool
	Private  bool
	Body     []Paragraph
	Read     string // whether another has read it, to its writer
	Replies  []ReplyLine
	Answer   components.Area // to answer in
	AnswerTo string
	AnswerAt string          // where an answer goes; empty for a private note
	Edit     components.Area // to change it in
	EditAt   string          // where a change goes; empty for others' notes
	Remove   string
	CanHide  bool // it may be private: nobody has answered
	OpenEdit bool
	OpenSay  bool

	AnswerWrong, EditWrong components.Summary
}

// Paragraph is a paragraph or a list of a text.
type Paragraph struct {
	List  bool
	Lines []string
}

// ReplyLine is an answer.
type ReplyLine struct {
	Who, When string
	Body      []Paragraph
	Remove    string // empty for others'
}

// blocks reads plain text: a blank line ends a paragraph, lines with a hyphen
// are a list.
func blocks(text string) []Paragraph {
	var all []Paragraph
	begin := true
	for line := range strings.Lines(text) {
		line = strings.TrimSpace(line)
		item, list := strings.CutPrefix(line, "- ")
		if line == "" {
			begin = true
			continue
		}
		if begin || all[len(all)-1].List != list {
			all = append(all, Paragraph{List: list})
		}
		last := &all[len(all)-1]
		last.Lines, begin = append(last.Lines, item), false
	}
	return all
}

// noteID is the place of a note on its page.
func noteID(id int64) string { return fmt.Sprintf("note-%d", id) }

// moment writes when something was written.
func moment(t time.Time) string { return t.Format("2 Jan 2006, 15:04") }

// noteCard makes a card. here says that what the note is about is on the same
// page.
func noteCard(n Note, whose paths.Whose, here bool, typed Typed) NoteCard {
	c := NoteCard{ID: noteID(n.ID), Who: n.Author, When: moment(n.Written), New: n.Unread, Private: n.Private, Body: blocks(n.Body), CanHide: !whose.Own && len(n.Replies) == 0}
	if n.Mine {
		c.Who = "You"
	}
	if n.Edited {
		c.When += ", changed since"
	}
	switch {
	case n.Question && !n.Answered:
		c.What = "question, not answered yet"
	case n.Question:
		c.What = "question"
	case n.Lesson:
		c.What = "lesson of " + shortDay(n.Day)
	}
	if n.Round != 0 {
		c.Place, c.PlaceAt = notePlace(n), whose.Round(n.Round)
		switch {
		case n.Shot > 0:
			c.PlaceAt += paths.Shot(n.Hole, n.Shot)
		case n.Hole > 0:
			c.PlaceAt += fmt.Sprintf("#h%d", n.Hole)
		case here:
			c.PlaceAt = ""
		}
		switch {
		case here:
		case n.Hole == 0:
			c.Place += " of " + shortDay(n.Day)
		default:
			c.Place += ", round of " + shortDay(n.Day)
		}
	}
	for _, r := range n.Replies {
		line := ReplyLine{Who: r.Author, When: moment(r.Written), Body: blocks(r.Body)}
		if r.Mine {
			line.Who, line.Remove = "You", whose.RemoveReply(n.ID, r.ID)
		}
		c.Replies = append(c.Replies, line)
	}
	c.forms(n, whose, typed)
	return c
}

// forms are where the note is answered and, by its writer, changed.
func (c *NoteCard) forms(n Note, whose paths.Whose, typed Typed) {
	if !n.Private {
		values, problems := typed.of(FormReply, n.ID)
		c.AnswerAt, c.OpenSay = whose.Reply(n.ID), len(problems) > 0
		c.AnswerTo = "Answer"
		if n.Mine {
			c.AnswerTo = "Say more"
		}
		c.Answer = components.Area{Name: "body", ID: "reply-" + c.ID, Label: c.AnswerTo, Value: values["body"], Problem: problems["body"]}
		c.AnswerWrong = components.Summed(c.Answer.Field())
	}
	if !n.Mine {
		return
	}
	values, problems := typed.of(FormEdit, n.ID)
	if len(problems) == 0 {
		values = map[string]string{"body": n.Body}
	}
	c.EditAt, c.Remove, c.OpenEdit = whose.Note(n.ID), whose.RemoveNote(n.ID), len(problems) > 0
	c.Edit = components.Area{Name: "body", ID: "edit-" + c.ID, Label: "Change it", Value: values["body"], Problem: problems["body"]}
	c.EditWrong = components.Summed(c.Edit.Field())
	switch {
	case n.Private:
	case n.Read.IsZero():
		c.Read = "not read yet"
	default:
		c.Read = "read " + moment(n.Read)
	}
}

// notePlace says what a note on a round is about.
func notePlace(n Note) string {
	switch {
	case n.Shot > 0:
		return fmt.Sprintf("hole %d, shot %d", n.Hole, n.Shot)
	case n.Hole > 0:
		return fmt.Sprintf("hole %d", n.Hole)
	default:
		return "the round"
	}
}

// questionsFirst puts what the pupil asked and nobody answered before the rest.
func questionsFirst(notes []Note) []Note {
	sorted := slices.Clone(notes)
	slices.SortStableFunc(sorted, func(a, b Note) int { return flag(b.open()) - flag(a.open()) })
	return sorted
}

// open reports whether the note is a question that nobody has answered.
func (n Note) open() bool { return n.Question && !n.Answered }

// notes shows what is written about the round, and where to write.
func (s *Statement) notes(q Asked) {
	for _, n := range questionsFirst(q.Notes) {
		s.Notes = append(s.Notes, noteCard(n, q.Whose, true, q.Typed))
		s.NotesFirst = s.NotesFirst || n.Unread || n.open() && !q.Whose.Own
	}
	s.NotesFirst = s.NotesFirst || q.Typed.Form != "" && q.Typed.Form != FormCard || q.On != ""
	s.CanWrite, s.Write = q.Coached, noteForm(q)
}

// NoteForm is where a note on a round is written.
type NoteForm struct {
	At      string
	Round   string
	On      []Choice // what it is about
	Body    components.Area
	CanHide bool
	Private bool
	Button  string
	Open    bool
	Wrong   components.Summary
}

// noteForm is the form under a statement: a coach's note, or a player's question.
func noteForm(q Asked) NoteForm {
	values, problems := q.Typed.of(FormNote, 0)
	f := NoteForm{At: q.Whose.Notes(), Round: fmt.Sprint(q.ID), CanHide: !q.Whose.Own, Private: values["private"] != "", Button: "Write it"}
	f.Body = components.Area{Name: "body", ID: "write", Label: "A note", Value: values["body"], Problem: problems["body"], Hint: "Lines that begin with a hyphen become a list."}
	if q.Whose.Own {
		f.Body.Label, f.Button = "A question to your coach", "Ask it"
	}
	f.Wrong = components.Summed(f.Body.Field())
	f.Open = q.On != "" || len(problems) > 0
	on := q.On
	if len(problems) > 0 {
		on = values["on"]
	}
	f.On = []Choice{{"", "the round", on == ""}}
	for i, h := range q.Account.Holes {
		f.On = append(f.On, Choice{fmt.Sprint(h.Number), fmt.Sprintf("hole %d", h.Number), on == fmt.Sprint(h.Number)})
		for k := range h.Shots {
			value := fmt.Sprintf("%d.%d", h.Number, k+1)
			shot := q.Round.Holes[i].Shots[k]
			f.On = append(f.On, Choice{value, fmt.Sprintf("hole %d, shot %d: %s, %s", h.Number, k+1, shot.Lie, far(shot.Lie, shot.Distance, q.Units)), on == value})
		}
	}
	return f
}
