package pages

import (
	"strings"
	"time"

	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// Looks lists for a player which of the pages coaches opened.
type Looks struct {
	layout.Page
	Lede string
	Rows []LookRow
}

// LookRow is a page that a coach opened on a day.
type LookRow struct{ Who, What, At, When, Times string }

// Look is what a row is made of.
type Look struct {
	Name, Page string
	Times      int
	Last       time.Time
}

// lookNames says what the pages are, by their address below the player's.
var lookNames = map[string]string{"/months": "months side by side", "/months.csv": "the table of months, as a file", "/months/behind": "shots behind a figure", "/handicap": "the handicap estimate",
	"/rounds": "the list of rounds", "/lessons": "lessons and practice", "/report": "a report", paths.Coaching: "the roster of pupils", paths.Squad: "the pupils side by side"}

// NewLooks makes the page.
func NewLooks(page layout.Page, looks []Look) Looks {
	page.Title, page.Here = "Who opened what", paths.Coaching
	page.Foot = "A page that a coach opened more than once on a day has one line. The lines stay when a coach's leave ends; the latest 500 are shown."
	l := Looks{Page: page, Lede: "No coach has opened any of your pages."}
	if len(looks) > 0 {
		l.Lede = "The last look was " + looks[0].Name + "’s, on " + looks[0].Last.Format("Monday 2 January 2006, 15:04") + "."
	}
	for _, k := range looks {
		row := LookRow{Who: k.Name, What: lookNames[k.Page], When: moment(k.Last), Times: plural(k.Times, "time", "times")}
		switch {
		case row.What != "":
			row.What = capital(row.What)
		case strings.HasPrefix(k.Page, paths.Rounds+"/"):
			row.What, row.At = "A statement", k.Page
		default:
			row.What = k.Page
		}
		l.Rows = append(l.Rows, row)
	}
	return l
}

// KeptNotes lists a coach's private notes on pupils whose leave has ended.
type KeptNotes struct {
	layout.Page
	Lede  string
	Notes []KeptNote
}

// KeptNote is one of them.
type KeptNote struct {
	Player, ID string
	Pupil      string
	When       string
	Body       []Paragraph
}

// NewKeptNotes makes the page.
func NewKeptNotes(page layout.Page, notes []KeptNote) KeptNotes {
	page.Title, page.Here = "Private notes on pupils of the past", paths.Coaching
	k := KeptNotes{Page: page, Notes: notes, Lede: "None. Private notes on a pupil stay here when the leave ends."}
	if n := len(notes); n > 0 {
		k.Lede = capital(spelled(n)) + word(n, " private note on a pupil", " private notes on pupils") + " whose leave has ended. Nobody but you reads them."
	}
	return k
}

// NewKeptNote makes a line of it.
func NewKeptNote(player, id, pupil string, day time.Time, body string) KeptNote {
	return KeptNote{player, id, pupil, day.Format("2 Jan 2006"), blocks(body)}
}
