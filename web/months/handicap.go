package months

import (
	"fmt"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/handicap"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// HandicapPage is the unofficial estimate of an Index, score by score.
type HandicapPage struct {
	layout.Page
	Lede   string
	More   string // caps and the Low Index
	Months string
	Rows   []HandicapRow
}

// HandicapRow is a score of the record.
type HandicapRow struct {
	Day, At, Course, CourseAt     string
	Adjusted, Differential, After string
	Note                          string
	Used                          bool
}

// RatedCourse is the course of a round, and whether it is in the list.
type RatedCourse struct {
	Name   string
	Course *golf.CourseID
}

// NewHandicapPage makes the page, the latest score first.
func NewHandicapPage(page layout.Page, whose paths.Whose, name string, r handicap.Record, courses map[golf.RoundID]RatedCourse) HandicapPage {
	page.Title, page.Here = "Handicap estimate", layout.Here(whose, paths.MyMonths)
	page.Foot = "Unofficial. Only an authorised association issues a Handicap Index. Worked out by the Rules of Handicapping 2024 with every recorded round as an acceptable score and no playing conditions calculation; the nine holes not played count .52 for each point of Index plus 1.2, an approximation from memory. Stroke indexes that are not known are taken in the order of play."
	h := HandicapPage{Page: page, Months: paths.Comparison{Whose: whose}.Months()}
	switch {
	case r.HasIndex && !whose.Own:
		h.Lede = fmt.Sprintf("The unofficial estimate for %s is %s.", name, index(r.Index))
	case r.HasIndex:
		h.Lede = fmt.Sprintf("Your unofficial estimate is %s.", index(r.Index))
	default:
		h.Lede = words.Capital(words.Thin(r.Thin)) + "."
	}
	if !whose.Own {
		h.More = "Worked out from the rounds that are shared with you. "
	}
	if r.HasLow {
		h.More += fmt.Sprintf("Low Index of the last 365 days: %s.", index(r.Low))
	}
	switch r.Cap {
	case handicap.SoftCap:
		h.More += " The soft cap holds: what is more than 3.0 above it counts half."
	case handicap.HardCap:
		h.More += " The hard cap holds: never more than 5.0 above it."
	}
	for i := len(r.Entries) - 1; i >= 0; i-- {
		e := r.Entries[i]
		c := courses[e.Score.Round]
		row := HandicapRow{Day: words.ShortDay(e.Score.Date), At: whose.Round(e.Score.Round), Course: c.Name, Used: e.Used, Note: handicapNote(e)}
		if c.Course != nil && whose.Own {
			row.CourseAt = paths.Course(*c.Course)
		}
		if e.Note == handicap.Counts {
			row.Adjusted, row.Differential = fmt.Sprint(e.Adjusted), index(e.Differential)
		}
		if e.HasIndex {
			row.After = index(e.Index)
		}
		h.Rows = append(h.Rows, row)
	}
	return h
}

// index writes an Index or differential: one below 0 is a plus.
func index(x float64) string {
	if x < 0 {
		return fmt.Sprintf("+%.1f", -x)
	}
	return fmt.Sprintf("%.1f", x)
}

func handicapNote(e handicap.Entry) string {
	switch e.Note {
	case handicap.Holes:
		return fmt.Sprintf("%s: neither 18 nor nine", words.Plural(len(e.Score.Holes), "hole", "holes"))
	case handicap.NoRating:
		return "no course and slope rating: enter them with the course"
	case handicap.NineFirst:
		return "nine holes, before there was an Index"
	}
	switch {
	case e.Exceptional > 0:
		return fmt.Sprintf("exceptional: the last twenty are reduced by %d", e.Exceptional)
	case len(e.Score.Holes) == 9:
		return "nine holes, the other nine expected"
	default:
		return ""
	}
}
