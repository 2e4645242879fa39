package analysis

import (
	"cmp"
	"slices"

	"strokeledger/analysis/account"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
)

// OverviewLeaks is how many of the dearest bands an overview names.
const OverviewLeaks = 3

// OverviewInput is what an overview of a player is made of.
type OverviewInput struct {
	History  []golf.Played // all rounds, in the order of their days
	Target   float64       // the player's
	Boundary golf.Distance // the player's
	Lesson   golf.Date     // of the last lesson; zero for none
	Practice []Practised
}

// Practised is what a player practises: since when, and the figure that it is to move.
type Practised struct {
	From golf.Date
	Row  string // as compare.Row is written
}

// Overview answers "what should a coach know before this player's lesson?".
type Overview struct {
	Months                   // of the spans below, with the season
	Latest   *compare.Column // the last ten rounds
	Leaks    []Leak          // the dearest bands of these, the dearest first
	Bands    int             // how many bands they were chosen from
	Lesson   Between         // before and since the last lesson
	Practice []Between       // before and since each was set
	Doubles  DoublesTogether
}

// Leak is a band that loses strokes.
type Leak struct {
	compare.Row
	compare.Cell
	Sure compare.Word // that it loses anything at all
}

// Between is as many as ten rounds before a day beside those since.
type Between struct {
	Day           golf.Date
	Before, Since *compare.Column // nil when either has no round
	Row           int             // of the sheet, 0 for everything; -1 for one that is not there
}

// Known reports whether there are rounds on both sides, of a row that is there.
func (b Between) Known() bool { return b.Before != nil && b.Row >= 0 }

// Overview works out an overview. Targets outside golf.MinTarget to golf.MaxTarget
// are an error.
func (e *Engine) Overview(in OverviewInput) (Overview, error) {
	days := []golf.Date{in.Lesson}
	for _, p := range in.Practice {
		days = append(days, p.From)
	}
	report := ReportInput{History: in.History}
	var spans []golf.Span
	for _, day := range days {
		spans = append(spans, report.around(day)...)
	}
	spans = append(spans, UsualReport())
	m, err := e.Months(MonthsInput{History: in.History, Choice: golf.Comparison{Spans: spans}, Target: in.Target, Boundary: in.Boundary})
	if err != nil {
		return Overview{}, err
	}
	o := Overview{Months: m, Latest: &m.Sheet.Columns[len(spans)-1]}
	o.Lesson = o.between(0, in.Lesson)
	for i, p := range in.Practice {
		b := o.between(2*(i+1), p.From)
		b.Row = slices.IndexFunc(m.Sheet.Rows, func(r compare.Row) bool { return r.String() == p.Row })
		o.Practice = append(o.Practice, b)
	}
	o.leaks()
	o.Doubles = doublesTogether(o.Latest)
	return o, nil
}

// around are the days of the rounds before a day, as many as a form is taken over,
// and of those since. Without a day, or a round before it, no round is in them.
func (in ReportInput) around(day golf.Date) []golf.Span {
	earlier := in.before(day)
	if day.IsZero() || len(earlier) == 0 {
		return []golf.Span{beforeAll, beforeAll}
	}
	return []golf.Span{{From: firstOf(earlier), To: day.AddDays(-1)}, {From: day}}
}

// between are two columns beside each other.
func (o *Overview) between(column int, day golf.Date) Between {
	before, since := &o.Sheet.Columns[column], &o.Sheet.Columns[column+1]
	if len(before.Rounds) == 0 || len(since.Rounds) == 0 {
		return Between{Day: day}
	}
	return Between{Day: day, Before: before, Since: since}
}

// leaks finds the dearest bands.
func (o *Overview) leaks() {
	for k, row := range o.Sheet.Rows {
		cell := o.Latest.Cells[k]
		if row.Band == (account.Band{}) || cell.Shots == 0 {
			continue
		}
		if o.Bands++; cell.Mean > 0 {
			o.Leaks = append(o.Leaks, Leak{row, cell, cell.Apart()})
		}
	}
	slices.SortStableFunc(o.Leaks, func(a, b Leak) int { return cmp.Compare(b.Mean, a.Mean) })
	o.Leaks = o.Leaks[:min(OverviewLeaks, len(o.Leaks))]
}

// DoublesTogether are the doubles of some rounds.
type DoublesTogether struct {
	Rounds   int
	All      int
	Kinds    map[account.Kind]int
	Began    [golf.Putting + 1]int // by the part of the game of the root; without one at 0
	Holes    map[int]int           // by the number of the hole
	Clubs    []ClubCount           // of the shots off the green that began one, where a club was entered; the most first
	OffGreen int                   // began off the green
}

// ClubCount is how many doubles began with a club.
type ClubCount struct {
	Club  string
	Count int
}

// doublesTogether gathers the doubles of a column.
func doublesTogether(c *compare.Column) DoublesTogether {
	d := DoublesTogether{Rounds: len(c.Rounds), Kinds: map[account.Kind]int{}, Holes: map[int]int{}}
	clubs := map[string]int{}
	for _, r := range c.Rounds {
		for _, double := range r.Account.Doubles {
			d.All++
			d.Kinds[double.Kind]++
			d.Began[double.RootCategory]++
			d.Holes[double.Hole]++
			if double.RootCategory == 0 || double.RootCategory == golf.Putting {
				continue
			}
			d.OffGreen++
			if club := clubOf(r.Round, double); club != "" {
				clubs[club]++
			}
		}
	}
	for club, n := range clubs {
		d.Clubs = append(d.Clubs, ClubCount{club, n})
	}
	slices.SortFunc(d.Clubs, func(a, b ClubCount) int { return cmp.Or(cmp.Compare(b.Count, a.Count), cmp.Compare(a.Club, b.Club)) })
	return d
}

// clubOf is the club of the shot at which a double began; empty when not entered.
func clubOf(r golf.Round, d account.Double) string {
	for _, h := range r.Holes {
		if h.Number == d.Hole && d.Root >= 1 && d.Root <= len(h.Shots) {
			return h.Shots[d.Root-1].Club
		}
	}
	return ""
}
