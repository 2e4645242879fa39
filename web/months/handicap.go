package months

import (
	"fmt"
	"slices"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/handicap"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// HandicapPage is the unofficial estimate of a Handicap Index, score by score.
type HandicapPage struct {
	layout.Page
	Lede   string // the estimate, or how many scores it still takes
	More   string // the lowest estimate and the caps; empty for none
	Months string // address of the months
	Rows   []HandicapRow
}

// HandicapRow is a score of the record.
type HandicapRow struct {
	Day          string
	At           string // address of the round's statement
	Course       string
	CourseAt     string // address of the course, where ratings are edited; empty for a coach or a course that is no longer listed
	Adjusted     string // adjusted gross score; empty when the score does not count
	Differential string // one decimal; empty when the score does not count
	After        string // the estimate after this score; empty while there is none
	Note         string // why it does not count, or what is special; usually empty
	Used         bool   // among the lowest of the last twenty, from which the estimate is made
}

// HandicapInput is what the page of the estimate is made of.
type HandicapInput struct {
	Whose   paths.Whose
	Name    string // the player's
	Record  handicap.Record
	Courses map[golf.RoundID]RatedCourse // the course of every score
}

// RatedCourse is the course of a round.
type RatedCourse struct {
	Name   string
	Course *golf.CourseID // nil when it is no longer listed
}

// NewHandicapPage makes the page, with the latest score first.
func NewHandicapPage(page layout.Page, in HandicapInput) HandicapPage {
	page.Title, page.Here = "Handicap estimate", layout.Here(in.Whose, paths.MyMonths)
	page.Foot = "Unofficial. Only an authorised association issues a Handicap Index. Worked out by the Rules of Handicapping 2024 with every recorded round as an acceptable score and no playing conditions calculation. Nine holes not played count .52 for each point of the estimate plus 1.2, which is an approximation. Stroke indexes that are not known are taken in the order of play."
	h := HandicapPage{Page: page, Months: paths.Comparison{Whose: in.Whose}.Months(), Lede: handicapLede(in)}
	var more []string
	if !in.Whose.Own {
		more = append(more, "Worked out from the rounds that are shared with you.")
	}
	if in.Record.HasLow {
		more = append(more, fmt.Sprintf("Lowest estimate of the last 365 days: %s.", index(in.Record.Low)))
	}
	switch in.Record.Cap {
	case handicap.SoftCap:
		more = append(more, "The soft cap applies: anything over 3.0 above the lowest estimate counts half.")
	case handicap.HardCap:
		more = append(more, "The hard cap applies: the estimate cannot be more than 5.0 above the lowest estimate.")
	}
	h.More = strings.Join(more, " ")
	for _, e := range slices.Backward(in.Record.Entries) {
		h.Rows = append(h.Rows, newHandicapRow(in, e))
	}
	return h
}

// handicapLede says the estimate, or what it still takes.
func handicapLede(in HandicapInput) string {
	switch r := in.Record; {
	case r.HasIndex && !in.Whose.Own:
		return fmt.Sprintf("The unofficial estimate for %s is %s.", in.Name, index(r.Index))
	case r.HasIndex:
		return fmt.Sprintf("Your unofficial estimate is %s.", index(r.Index))
	default:
		return words.Capital(words.Thin(r.Thin)) + "."
	}
}

func newHandicapRow(in HandicapInput, e handicap.Entry) HandicapRow {
	c := in.Courses[e.Score.Round]
	row := HandicapRow{Day: words.ShortDay(e.Score.Date), At: in.Whose.Round(e.Score.Round), Course: c.Name, Used: e.Used, Note: handicapNote(e)}
	if c.Course != nil && in.Whose.Own {
		row.CourseAt = paths.Course(*c.Course)
	}
	if e.Note == handicap.Counts {
		row.Adjusted, row.Differential = fmt.Sprint(e.Adjusted), index(e.Differential)
	}
	if e.HasIndex {
		row.After = index(e.Index)
	}
	return row
}

// index writes an Index or a differential with one decimal. Below 0 it has a plus
// in front, as in golf.
func index(x float64) string {
	if x < 0 {
		return fmt.Sprintf("+%.1f", -x)
	}
	return fmt.Sprintf("%.1f", x)
}

// handicapNote says why a score does not count, or what is special about it.
func handicapNote(e handicap.Entry) string {
	switch e.Note {
	case handicap.Holes:
		return fmt.Sprintf("%s: only 18 or nine holes count", words.Plural(len(e.Score.Holes), "hole", "holes"))
	case handicap.NoRating:
		return "no course and slope rating: add them to the course"
	case handicap.NineFirst:
		return "nine holes before there was an estimate: not counted"
	}
	switch {
	case e.Exceptional > 0:
		return fmt.Sprintf("exceptional score: the last twenty are reduced by %d", e.Exceptional)
	case len(e.Score.Holes) == 9:
		return "nine holes; the other nine are estimated"
	default:
		return ""
	}
}
