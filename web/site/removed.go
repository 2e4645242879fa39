package site

import (
	"fmt"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// RemovedThing is something that was removed and can be brought back.
type RemovedThing struct {
	Name    string // names it in a form
	Kind    string // one of removedKinds
	Of      string // whose it is; empty for one's own
	Day     golf.Date
	Text    string // course, words, or what to practise
	Removed time.Time
}

// removedKinds are what can be removed, in the order of the page.
var removedKinds = []struct{ kind, heading, noun string }{
	{"round", "Rounds", "round"},
	{"note", "Notes", "note"},
	{"reply", "Answers", "answer"},
	{"assignment", "Practice", "practice"},
	{"result", "Results of practice", "result"},
	{"course", "Courses", "course"},
}

// said says what it is.
func (r RemovedThing) said(noun string) string {
	text := fmt.Sprintf("%s of %s, “%s”", noun, words.ShortDay(r.Day), words.Excerpt(r.Text))
	switch r.Kind {
	case "round":
		text = fmt.Sprintf("round of %s, %s", words.ShortDay(r.Day), r.Text)
	case "course":
		text = "course " + r.Text
	case "assignment":
		text = fmt.Sprintf("practice “%s”", words.Excerpt(r.Text))
	}
	if r.Of != "" {
		text += ", for " + r.Of
	}
	return text
}

// NewUndo offers the way back from a removal.
func NewUndo(r RemovedThing) *layout.Undo {
	for _, k := range removedKinds {
		if k.kind == r.Kind {
			return &layout.Undo{Text: "Removed: " + r.said(k.noun) + ".", What: r.Name}
		}
	}
	return nil
}

// RemovedPage lists what can be brought back.
type RemovedPage struct {
	layout.Page
	Lede     string
	Sections []RemovedSection
}

// RemovedSection lists what is of one kind.
type RemovedSection struct {
	ID, Heading string
	Rows        []RemovedRow
}

// RemovedRow is one thing.
type RemovedRow struct{ Text, When, What string }

// NewRemovedPage makes the page, by kind and the latest removal first.
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
		p.Lede = "Each can be brought back for 30 days after its removal, as it was."
	}
	return p
}
