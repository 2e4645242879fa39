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

// LooksPerPage is how many lines a page of looks has.
const LooksPerPage = 50

// LooksPage lists for a player which of the pages coaches opened.
type LooksPage struct {
	layout.Page
	Lede           string
	Rows           []LookRow
	Newer, Earlier string // addresses of the pages before and after, empty for none
}

// LookRow is what a coach opened on a day of one kind of page.
type LookRow struct {
	Who, What, When, Times string
	Statements             []LookedAt // when there are several, What counts them
	At                     string     // address of the only one
}

// LookedAt is a statement that was opened.
type LookedAt struct{ What, At, Times string }

// Look is what a row is made of.
type Look struct {
	Name, Kind string
	Times      int
	Last       time.Time
	Rounds     []LookedRound // of statements
}

// LookedRound is a round whose statement was opened.
type LookedRound struct {
	ID      golf.RoundID
	Day     golf.Date // zero when the round is gone for good
	Course  string
	Times   int
	Removed bool
}

// lookNames says what the kinds of pages are.
var lookNames = map[string]string{"months": "months side by side", "months_file": "the table of months, as a file", "behind": "shots behind a figure", "handicap": "the handicap estimate",
	"rounds": "the list of rounds", "lessons": "lessons and practice", "report": "a report", "roster": "the roster of pupils", "squad": "the pupils side by side"}

// NewLooksPage makes a page of the list; more says that there are earlier lines.
func NewLooksPage(page layout.Page, looks []Look, number int, more bool) LooksPage {
	page.Title, page.Here = "Who opened what", paths.Coaching
	page.Foot = "A kind of page that a coach opened more than once on a day has one line. The lines stay when a coach's access ends."
	l := LooksPage{Page: page, Lede: "No coach has opened any of your pages."}
	switch {
	case number > 1:
		l.Newer = paths.Looks(number - 1)
		l.Lede = fmt.Sprintf("Page %d of what your coaches opened.", number)
	case len(looks) > 0:
		l.Lede = "The last look was " + looks[0].Name + "’s, on " + looks[0].Last.Format("Monday 2 January 2006, 15:04") + "."
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
		at := LookedAt{What: "a round that is gone", Times: words.Plural(r.Times, "time", "times")}
		if !r.Day.IsZero() {
			at.What = words.ShortDay(r.Day)
			if r.Course != "" {
				at.What += ", " + r.Course
			}
			if r.Removed {
				at.What += " (removed)"
			} else {
				at.At = paths.Round(r.ID)
			}
		}
		all = append(all, at)
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

// FormerNotesPage lists a coach's private notes on pupils to whom access has ended.
type FormerNotesPage struct {
	layout.Page
	Lede  string
	Notes []FormerNote
}

// FormerNote is one of them.
type FormerNote struct {
	Player, ID string
	Pupil      string
	When       string
	Body       []notes.Paragraph
}

// NewFormerNotesPage makes the page.
func NewFormerNotesPage(page layout.Page, notes []FormerNote) FormerNotesPage {
	page.Title, page.Here = "Private notes on pupils of the past", paths.Coaching
	k := FormerNotesPage{Page: page, Notes: notes, Lede: "None. Private notes on a pupil stay here when your access ends."}
	if n := len(notes); n > 0 {
		k.Lede = words.Capital(words.Spelled(n)) + words.OneOrMany(n, " private note on a pupil", " private notes on pupils") + " whose pages you see no longer. Nobody but you reads them."
	}
	return k
}

// NewFormerNote makes a line of it.
func NewFormerNote(player, id, pupil string, day time.Time, body string) FormerNote {
	return FormerNote{player, id, pupil, day.Format("2 Jan 2006"), notes.Paragraphs(body)}
}
