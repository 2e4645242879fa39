package notes

import (
	"fmt"
	"slices"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/web/form"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// Note is something that a coach or the player wrote.
type Note struct {
	ID         int64        // under which it is kept
	Mine       bool         // the reader wrote it
	Author     string       // name of the writer
	Question   bool         // the player asks it
	Lesson     bool         // it writes up a lesson
	Private    bool         // only its writer can read it
	Unread     bool         // the reader has not seen it, or a reply to it, before
	Answered   bool         // somebody other than its writer has replied
	Day        golf.Date    // of the round or the lesson
	Round      golf.RoundID // 0 for a lesson
	Hole, Shot int          // what it is about, counted from 1; 0 for the whole round or hole
	Body       string       // as it was typed
	Written    time.Time    // when it was first saved
	Edited     bool         // its writer has changed it since
	Version    string       // another after every change; empty before the first
	Read       time.Time    // when somebody other than its writer last read it; zero for never
	Replies    []Reply      // the earliest first
}

// Open reports whether the note is a question that nobody has answered.
func (n Note) Open() bool { return n.Question && !n.Answered }

// Reply is a reply to a note.
type Reply struct {
	ID      int64     // under which it is kept
	Mine    bool      // the reader wrote it
	Author  string    // name of the writer
	Body    string    // as it was typed
	Written time.Time // when it was saved
}

// Card is a note with its replies, and the forms that add to it.
type Card struct {
	ID      string      // place on the page
	Who     string      // the writer's name, or "You"
	What    string      // that it is a question or a lesson; empty for neither
	Place   string      // what it is about: the round, a hole or a shot; empty for a lesson
	PlaceAt string      // address of that; empty when the reader is looking at it
	When    string      // when it was written, and whether it was edited
	New     bool        // the reader has not seen it, or a reply to it, before
	Private bool        // only its writer can read it
	Body    []Paragraph // what was written
	Read    string      // to its writer, whether somebody has read it; empty to others and when private
	Replies []ReplyLine // the earliest first
	Reply   ReplyForm   // below the replies
	Edit    EditForm    // below that, to its writer only
}

// ReplyLine is a reply as the page shows it.
type ReplyLine struct {
	Who    string      // the writer's name, or "You"
	When   string      // when it was saved
	Body   []Paragraph // what was written
	Remove string      // where the form that removes it is sent; empty for others' replies
}

// ID is the place of a note on its page.
func ID(id int64) string { return fmt.Sprintf("note-%d", id) }

// NewCard makes a card of a note on a player. here says that the card is on the
// page of what the note is about; back is a form that came back, since something
// in it was wrong.
func NewCard(n Note, whose paths.Whose, here bool, back form.Returned) Card {
	c := Card{ID: ID(n.ID), Who: n.Author, What: kind(n), When: words.Moment(n.Written), New: n.Unread, Private: n.Private, Body: Paragraphs(n.Body)}
	if n.Edited {
		c.When += ", edited"
	}
	if n.Round != 0 {
		c.Place, c.PlaceAt = place(n, whose, here)
	}
	for _, r := range n.Replies {
		line := ReplyLine{Who: r.Author, When: words.Moment(r.Written), Body: Paragraphs(r.Body)}
		if r.Mine {
			line.Who, line.Remove = "You", whose.RemoveReply(n.ID, r.ID)
		}
		c.Replies = append(c.Replies, line)
	}
	if !n.Private {
		c.Reply = newReplyForm(n, whose, back)
	}
	if n.Mine {
		c.Who, c.Read, c.Edit = "You", read(n), newEditForm(n, whose, back)
	}
	return c
}

// kind says that a note is a question or a lesson.
func kind(n Note) string {
	switch {
	case n.Open():
		return "question, not answered yet"
	case n.Question:
		return "question"
	case n.Lesson:
		return "lesson of " + words.ShortDay(n.Day)
	default:
		return ""
	}
}

// read says to the writer of a note whether somebody has read it.
func read(n Note) string {
	switch {
	case n.Private:
		return ""
	case n.Read.IsZero():
		return "not read yet"
	default:
		return "read " + words.Moment(n.Read)
	}
}

// place is what a note on a round is about, and its address unless the whole
// page is about it.
func place(n Note, whose paths.Whose, here bool) (text, at string) {
	text, at = Place(n), whose.Round(n.Round)
	switch {
	case n.Shot > 0:
		at += paths.Shot(n.Hole, n.Shot)
	case n.Hole > 0:
		at += fmt.Sprintf("#h%d", n.Hole)
	case here:
		return text, ""
	}
	switch {
	case here:
		return text, at
	case n.Hole == 0:
		return text + " of " + words.ShortDay(n.Day), at
	default:
		return text + ", round of " + words.ShortDay(n.Day), at
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

// QuestionsFirst puts questions that nobody has answered before the other notes.
func QuestionsFirst(notes []Note) []Note {
	sorted := slices.Clone(notes)
	slices.SortStableFunc(sorted, func(a, b Note) int { return words.Tally(b.Open()) - words.Tally(a.Open()) })
	return sorted
}
