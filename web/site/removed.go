package site

import (
	"fmt"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// RemovedThing is something that was removed and can be restored.
type RemovedThing struct {
	Name    string    // identifies it in a form
	Kind    string    // one of removedKinds
	Of      string    // the player it belongs to; empty for the reader's own
	Day     golf.Date // of a round, a note, a result, a session or a trial
	Text    string    // the course, the words written, or what to practise
	Removed time.Time
}

// removedKinds are the kinds of things that can be removed, in the order of the
// page.
var removedKinds = []struct{ kind, heading, noun string }{
	{"round", "Rounds", "round"},
	{"note", "Notes", "note"},
	{"reply", "Answers", "answer"},
	{"assignment", "Practice", "practice"},
	{"result", "Results of practice", "result"},
	{"session", "Sessions of drills", "session"},
	{"plan", "Plans of practice", "plan"},
	{"trial", "Trials of the run-out book", "trial"},
	{"course", "Courses", "course"},
	{"kept", "Private notes on former pupils", "note"},
	{"range", "Range sessions", "range session"},
	{"lesson", "Lessons", "lesson"},
	{"advice", "Notes and proposals on holes", "note"},
	{"phrase", "Phrases", "phrase"},
	{"walked", "Rounds that a coach entered", "entered round"},
}

// said names it so that the reader can tell it from others.
func (r RemovedThing) said(noun string) string {
	text := fmt.Sprintf("%s of %s, “%s”", noun, words.ShortDay(r.Day), words.Excerpt(r.Text))
	switch r.Kind {
	case "round":
		text = fmt.Sprintf("round of %s, %s", words.ShortDay(r.Day), r.Text)
	case "phrase":
		text = fmt.Sprintf("phrase “%s”", words.Excerpt(r.Text))
	case "walked":
		text = fmt.Sprintf("entered round of %s, %s", words.ShortDay(r.Day), r.Text)
	case "advice":
		text = "what you said of " + r.Text
	case "plan":
		text = fmt.Sprintf("plan of %s, on %s", words.ShortDay(r.Day), r.Text)
	case "course":
		text = "course " + r.Text
	case "lesson":
		if text = "lesson of " + words.ShortDay(r.Day); r.Text != "" {
			text += fmt.Sprintf(", “%s”", words.Excerpt(r.Text))
		}
	case "assignment":
		text = fmt.Sprintf("practice “%s”", words.Excerpt(r.Text))
	}
	if r.Of != "" {
		text += ", for " + r.Of
	}
	return text
}

// NewUndo offers to restore something, nil for a kind that cannot be.
func NewUndo(r RemovedThing) *layout.Undo {
	for _, k := range removedKinds {
		if k.kind == r.Kind {
			return &layout.Undo{Text: "Removed: " + r.said(k.noun) + ".", What: r.Name}
		}
	}
	return nil
}

// RemovedPage lists what can be restored.
type RemovedPage struct {
	layout.Page
	Lede     string           // how long there is to restore, or that there is nothing
	Sections []RemovedSection // by kind; empty for nothing
}

// RemovedSection lists the removed things of one kind.
type RemovedSection struct {
	ID      string       // kind and anchor: “round”
	Heading string       // “Rounds”
	Rows    []RemovedRow // as given to NewRemovedPage, at least one
}

// RemovedRow is one removed thing.
type RemovedRow struct {
	Text string // “Round of 2 May 2026, Harrow Fen”
	When string // of its removal: “4 May 2026, 18:05”
	What string // identifies it in the form that restores it
}

// NewRemovedPage makes the page; all comes with the latest removal first.
func NewRemovedPage(page layout.Page, all []RemovedThing) RemovedPage {
	page.Title, page.Here = "Removed", paths.Account
	p := RemovedPage{Page: page, Lede: "Nothing has been removed in the last 30 days."}
	for _, k := range removedKinds {
		s := RemovedSection{ID: k.kind, Heading: k.heading}
		for _, r := range all {
			if r.Kind == k.kind {
				s.Rows = append(s.Rows, RemovedRow{words.Capital(r.said(k.noun)), words.Moment(r.Removed), r.Name})
			}
		}
		if len(s.Rows) > 0 {
			p.Sections = append(p.Sections, s)
		}
	}
	if len(p.Sections) > 0 {
		p.Lede = "You can restore each of these for 30 days after it was removed."
	}
	return p
}
