package notes

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/paths"
	"strokeledger/web/words"
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
	Replies    []Reply
}

// Reply is an answer under a note.
type Reply struct {
	ID      int64
	Mine    bool
	Author  string
	Body    string
	Written time.Time
}

// Card is a note with its conversation.
type Card struct {
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

// Paragraphs reads plain text: a blank line ends a paragraph, lines with a hyphen
// are a list.
func Paragraphs(text string) []Paragraph {
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

// ID is the place of a note on its page.
func ID(id int64) string { return fmt.Sprintf("note-%d", id) }

// NewCard makes a card. here says that what the note is about is on the same
// page.
func NewCard(n Note, whose paths.Whose, here bool, back form.Returned) Card {
	c := Card{ID: ID(n.ID), Who: n.Author, When: words.Moment(n.Written), New: n.Unread, Private: n.Private, Body: Paragraphs(n.Body), CanHide: !whose.Own && len(n.Replies) == 0}
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
		c.What = "lesson of " + words.ShortDay(n.Day)
	}
	if n.Round != 0 {
		c.Place, c.PlaceAt = Place(n), whose.Round(n.Round)
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
			c.Place += " of " + words.ShortDay(n.Day)
		default:
			c.Place += ", round of " + words.ShortDay(n.Day)
		}
	}
	for _, r := range n.Replies {
		line := ReplyLine{Who: r.Author, When: words.Moment(r.Written), Body: Paragraphs(r.Body)}
		if r.Mine {
			line.Who, line.Remove = "You", whose.RemoveReply(n.ID, r.ID)
		}
		c.Replies = append(c.Replies, line)
	}
	c.forms(n, whose, back)
	return c
}

// forms are where the note is answered and, by its writer, changed.
func (c *Card) forms(n Note, whose paths.Whose, back form.Returned) {
	if !n.Private {
		typed := back.ReplyTo(n.ID)
		c.AnswerAt, c.OpenSay = whose.Reply(n.ID), !typed.Sound()
		c.AnswerTo = "Answer"
		if n.Mine {
			c.AnswerTo = "Say more"
		}
		c.Answer = components.FilledArea(components.Area{Name: "body", ID: "reply-" + c.ID, Label: c.AnswerTo}, typed.Body)
		c.AnswerWrong = components.Summed(c.Answer.Field())
	}
	if !n.Mine {
		return
	}
	typed := back.EditOf(n.ID, n.Body)
	c.EditAt, c.Remove, c.OpenEdit = whose.Note(n.ID), whose.RemoveNote(n.ID), !typed.Sound()
	c.Edit = components.FilledArea(components.Area{Name: "body", ID: "edit-" + c.ID, Label: "Change it"}, typed.Body)
	c.EditWrong = components.Summed(c.Edit.Field())
	switch {
	case n.Private:
	case n.Read.IsZero():
		c.Read = "not read yet"
	default:
		c.Read = "read " + words.Moment(n.Read)
	}
}

// Place says what a note on a round is about.
func Place(n Note) string {
	switch {
	case n.Shot > 0:
		return fmt.Sprintf("hole %d, shot %d", n.Hole, n.Shot)
	case n.Hole > 0:
		return fmt.Sprintf("hole %d", n.Hole)
	default:
		return "the round"
	}
}

// QuestionsFirst puts what the pupil asked and nobody answered before the rest.
func QuestionsFirst(notes []Note) []Note {
	sorted := slices.Clone(notes)
	slices.SortStableFunc(sorted, func(a, b Note) int { return words.Tally(b.Open()) - words.Tally(a.Open()) })
	return sorted
}

// Open reports whether the note is a question that nobody has answered.
func (n Note) Open() bool { return n.Question && !n.Answered }

// HeadLines is how many lines say who wrote a note, or what to practise.
const HeadLines = 2

// Lines is how many lines a note takes where a line holds so many letters.
func (c Card) Lines(letters int) int {
	n := HeadLines
	count := func(all []Paragraph) {
		for _, p := range all {
			for _, l := range p.Lines {
				n += 1 + len(l)/letters
			}
		}
	}
	count(c.Body)
	for _, r := range c.Replies {
		n++
		count(r.Body)
	}
	return n
}
