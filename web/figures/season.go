package figures

import (
	"fmt"
	"math"
	"slices"
	"time"

	"strokeledger/analysis/compare"
	"strokeledger/web/chart"
	"strokeledger/web/words"
)

// AxisText is a figure or a word beside an axis.
type AxisText struct {
	Place  string // along the axis, percent
	Text   string
	Narrow bool // shown on narrow screens too
	End    bool // the text ends at its place instead of beginning there
}

// Season is the scores of rounds over time, as a picture and a table.
type Season struct {
	Title   string      // of the picture and the table
	Summary string      // how the mean moved, in a sentence
	Up      []AxisText  // scores
	Along   []AxisText  // months
	Rounds  []SeasonDot // one a round
	Line    string      // path of the mean of the last eight rounds; empty when there is none
	Spread  string      // area of its 95% interval
	Target  string      // place of the target's line, from the top
	Last    string      // the latest mean; empty when there is none
	LastAt  string      // its own height, from the top
	Years   []AxisText  // where each year but the first begins
	Marks   []string    // places of the marked days along the foot
	Legend  string      // what dots, line, dashes and rings are
	Table   []SeasonRow // one a round
	NoLine  string      // why there is no line; empty when there is one
}

// SeasonDot is a round in the picture.
type SeasonDot struct {
	X, Y string // its place
	At   string // address of its statement
	Text string // day and score, for the pointer and for a screen reader
}

// SeasonRow is a round in the table.
type SeasonRow struct {
	Day   string
	At    string // address of its statement
	Score string // over 18 holes on the reference course, one decimal
	Mean  string // of the last eight, with its 95% interval; empty for the first rounds
}

// NewSeason makes the picture and table of the season; there must be a round.
func NewSeason(in ComparisonInput) Season {
	s := Season{Title: "Each round as a score over 18 holes on the same course"}
	first, last := in.Line[0].Day.Time(), in.Line[len(in.Line)-1].Day.Time()
	if !last.After(first) {
		last = first.AddDate(0, 0, 1)
	}
	across := func(t time.Time) float64 { return .01 + .98*float64(t.Sub(first))/float64(last.Sub(first)) }
	values := []float64{in.Target}
	for _, p := range in.Line {
		values = append(values, p.Score)
	}
	up := chart.NewRange(5, values...)
	for _, v := range up.Ticks() {
		s.Up = append(s.Up, AxisText{Place: up.Down(v), Text: words.Plain(v)})
	}
	s.draw(in, up, across)
	s.Along, s.Years = monthMarks(first, last, across), yearMarks(first, last, across)
	s.Target = up.Down(in.Target)
	var marked []string
	for _, m := range in.Marks {
		if t := m.Day.Time(); !t.Before(first) && !t.After(last) {
			s.Marks = append(s.Marks, chart.Percent(across(t)))
			marked = append(marked, m.What+" on "+words.ShortDay(m.Day))
		}
	}
	s.summarize(in)
	s.Legend = s.legend(in, marked)
	return s
}

// draw places every round, and the mean of the last eight with its interval.
func (s *Season) draw(in ComparisonInput, up chart.Range, across func(time.Time) float64) {
	var mean, high, low []chart.Place
	for _, p := range in.Line {
		x, day := across(p.Day.Time()), words.ShortDay(p.Day)
		s.Rounds = append(s.Rounds, SeasonDot{chart.Percent(x), up.Down(p.Score), in.At.Round(p.ID), fmt.Sprintf("%s: %.1f", day, p.Score)})
		row := SeasonRow{day, in.At.Round(p.ID), fmt.Sprintf("%.1f", p.Score), ""}
		if p.HasMean {
			mean = append(mean, chart.Place{X: x, Y: clipped(1 - up.Share(p.Mean))})
			high = append(high, chart.Place{X: x, Y: clipped(1 - up.Share(p.High))})
			low = append(low, chart.Place{X: x, Y: clipped(1 - up.Share(p.Low))})
			row.Mean = fmt.Sprintf("%.1f (%.1f to %.1f)", p.Mean, p.Low, p.High)
			s.Last, s.LastAt = fmt.Sprintf("%.1f", p.Mean), up.Down(p.Mean)
		}
		s.Table = append(s.Table, row)
	}
	s.Line, s.Spread = chart.Line(mean), chart.Area(high, low)
}

// legend says what the marks of the picture are, in as many words as it has marks.
func (s *Season) legend(in ComparisonInput, marked []string) string {
	text := "Dots: rounds. "
	if s.NoLine == "" {
		text += "Line: mean of the last eight with its 95% interval, now " + s.Last + ". "
	}
	text += "Dashes: the target, " + words.Plain(in.Target) + "."
	switch len(marked) {
	case 0:
	case 1:
		text += " Ring at the foot: " + marked[0] + "."
	default:
		text += " Rings at the foot: " + words.List(marked) + "."
	}
	if s.NoLine != "" {
		text += " " + s.NoLine
	}
	return text
}

// summarize says how the mean moved, or why there is none.
func (s *Season) summarize(in ComparisonInput) {
	n := len(in.Line)
	if in.Thin.Any() {
		s.NoLine = words.Capital(words.Thin(in.Thin)) + "."
		s.Summary = words.Plural(n, "round", "rounds") + "."
		return
	}
	begin := in.Line[slices.IndexFunc(in.Line, func(p compare.Point) bool { return p.HasMean })]
	s.Summary = fmt.Sprintf("The mean of the last eight rounds goes from %.1f on %s to %s on %s; the target is %s.",
		begin.Mean, words.ShortDay(begin.Day), s.Last, words.ShortDay(in.Line[n-1].Day), words.Plain(in.Target))
}

// clipped keeps a share inside the picture.
func clipped(share float64) float64 { return math.Max(0, math.Min(1, share)) }

// mostMonths is how many months are named along a wide axis. A narrow one names
// every fourth of them.
const mostMonths = 8

// monthMarks names months along the axis of time.
func monthMarks(first, last time.Time, across func(time.Time) float64) []AxisText {
	months := (last.Year()-first.Year())*12 + int(last.Month()-first.Month()) + 1
	every := (months + mostMonths - 1) / mostMonths
	var all []AxisText
	start := time.Date(first.Year(), first.Month(), 1, 0, 0, 0, 0, time.UTC)
	for i := 0; i < months; i += every {
		t := start.AddDate(0, i, 0)
		if t.Before(first) {
			t = first
		}
		name := t.Format("Jan")
		if i == 0 || t.Month() == time.January || every > 2 {
			name = t.Format("Jan 06")
		}
		x := across(t)
		if x > .95 {
			continue // it would stand beyond the picture
		}
		all = append(all, AxisText{Place: chart.Percent(x), Text: name, Narrow: i/every%4 == 0})
	}
	return all
}

// yearMarks are the first days of the years after the first.
func yearMarks(first, last time.Time, across func(time.Time) float64) []AxisText {
	var all []AxisText
	for year := first.Year() + 1; year <= last.Year(); year++ {
		x := across(time.Date(year, time.January, 1, 0, 0, 0, 0, time.UTC))
		all = append(all, AxisText{Place: chart.Percent(x), Text: fmt.Sprint(year), End: x > .9})
	}
	return all
}
