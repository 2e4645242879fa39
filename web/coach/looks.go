package coach

import (
	"fmt"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/web/layout"
	"strokeledger/web/notes"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// LooksPerPage is how many rows a page of looks has at most.
const LooksPerPage = 50

// LooksPage lists for a player which of the player's pages coaches opened.
type LooksPage struct {
	layout.Page
	Lede           string    // the latest look, or that there is none
	Rows           []LookRow // the latest first
	Later, Earlier string    // addresses of the pages before and after; empty for none
}

// LookRow is one kind of page that a coach opened on one day.
type LookRow struct {
	Who        string     // the coach
	What       string     // the kind of page, the statement, or how many statements
	When       string     // the last time that day
	Times      string     // how often that day
	Statements []LookedAt // when there are several
	At         string     // address of the only statement; empty for other pages and for removed rounds
}

// LookedAt is a statement that a coach opened.
type LookedAt struct {
	What  string // day and course of the round
	At    string // address of the statement; empty when the round was removed
	Times string // how often that day
}

// Look is what a row is made of.
type Look struct {
	Name   string // the coach's
	Kind   string // of page: a key of lookNames, or "statement"
	Times  int    // how often that day
	Last   time.Time
	Rounds []LookedRound // for statements, never empty; none for other pages
}

// LookedRound is a round whose statement a coach opened.
type LookedRound struct {
	ID      golf.RoundID
	Day     golf.Date // zero when the round was removed for good
	Course  string    // may be empty
	Times   int       // how often that day
	Removed bool      // it can still be brought back
}

// lookNames are the kinds of pages in words, by the names that are stored.
var lookNames = map[string]string{"months": "months side by side", "months_file": "months, downloaded", "behind": "shots behind a figure", "handicap": "the handicap estimate (unofficial)",
	"rounds": "the list of rounds", "lessons": "lessons and practice", "report": "a report", "roster": "the roster of pupils", "squad": "the pupils side by side", "plan": "the practice plan",
	"run_out": "the run-out book", "start_line": "the start line", "play": "the plan of a round", "overview": "the overview", "beside": "golfers of the same score"}

// NewLooksPage makes a page of the list, its number counted from 1; more says that
// there are earlier rows.
func NewLooksPage(page layout.Page, looks []Look, number int, more bool) LooksPage {
	page.Title, page.Here = "Who opened what", paths.Coaching
	page.Foot = "When a coach opens the same kind of page several times on a day, it is one row here. The rows stay when a coach’s access ends."
	l := LooksPage{Page: page, Lede: "No coach has opened any of your pages."}
	switch {
	case number > 1:
		l.Later = paths.Looks(number - 1)
		l.Lede = fmt.Sprintf("Page %d of what your coaches opened.", number)
	case len(looks) > 0:
		l.Lede = looks[0].Name + " looked last, on " + words.LongMoment(looks[0].Last) + "."
	}
	if more {
		l.Earlier = paths.Looks(number + 1)
	}
	for _, k := range looks {
		l.Rows = append(l.Rows, newLookRow(k))
	}
	return l
}

func newLookRow(k Look) LookRow {
	row := LookRow{Who: k.Name, What: words.Capital(lookNames[k.Kind]), When: words.Moment(k.Last), Times: words.Plural(k.Times, "time", "times")}
	var all []LookedAt
	for _, r := range k.Rounds {
		all = append(all, newLookedAt(r))
	}
	switch len(all) {
	case 0:
	case 1:
		row.What, row.At = "Statement of "+all[0].What, all[0].At
	default:
		row.What, row.Statements = words.Plural(len(all), "statement", "statements"), all
	}
	return row
}

func newLookedAt(r LookedRound) LookedAt {
	at := LookedAt{What: "a round since removed", Times: words.Plural(r.Times, "time", "times")}
	if r.Day.IsZero() {
		return at
	}
	at.What = words.Joined(words.ShortDay(r.Day), r.Course)
	if r.Removed {
		at.What += " (removed)"
	} else {
		at.At = paths.Round(r.ID)
	}
	return at
}

// FormerNotesPage lists a coach's private notes on pupils whose pages the coach
// can no longer see.
type FormerNotesPage struct {
	layout.Page
	Lede  string // how many notes, or that there are none
	Notes []FormerNote
}

// FormerNote is a private note on a former pupil.
type FormerNote struct {
	Player, ID string // ids of pupil and note, as the form that removes it sends them
	Pupil      string // the pupil's name
	When       string // the day that the note is about
	Body       []notes.Paragraph
}

// NewFormerNotesPage makes the page.
func NewFormerNotesPage(page layout.Page, notes []FormerNote) FormerNotesPage {
	page.Title, page.Here = "Private notes on former pupils", paths.Coaching
	k := FormerNotesPage{Page: page, Notes: notes, Lede: "None. When your access to a pupil ends, your private notes on that pupil are kept here."}
	if n := len(notes); n > 0 {
		k.Lede = words.Capital(words.Spelled(n)) + words.OneOrMany(n, " private note on a pupil", " private notes on pupils") + " whose pages you can no longer see. Only you can read " + words.OneOrMany(n, "it.", "them.")
	}
	return k
}

// NewFormerNote makes a note of the list; day is the one that it is about.
func NewFormerNote(player, id, pupil string, day time.Time, body string) FormerNote {
	return FormerNote{player, id, pupil, day.Format("2 Jan 2006"), notes.Paragraphs(body)}
}
