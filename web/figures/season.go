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
	Text   string // the figure or the word
	Narrow bool   // shown on narrow screens too
	End    bool   // the text ends at its place instead of beginning there
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
	Day   string // of the round, as 2 May 2026
	At    string // address of its statement
	Score string // over 18 holes on the reference course, one decimal
	Mean  string // of the last eight, with its 95% interval; empty for the first rounds
}

// NewSeason makes the picture and table of the season; there must be a round.
func NewSeason(in ComparisonInput) Season {
	s := Season{Title: "Each round as a score over 18 holes on the same course"}
	days, up := seasonDays(in.Line), seasonScores(in)
	for _, v := range up.Ticks() {
		s.Up = append(s.Up, AxisText{Place: up.Down(v), Text: words.Plain(v)})
	}
	for _, p := range in.Line {
		s.add(p, in.At.Round(p.ID), days, up)
	}
	s.drawMean(in.Line, days, up)
	s.Along, s.Years = monthMarks(days), yearMarks(days)
	s.Target = up.Down(in.Target)
	var marked []string
	for _, m := range in.Marks {
		if days.holds(m.Day.Time()) {
			s.Marks = append(s.Marks, chart.Percent(days.across(m.Day.Time())))
			marked = append(marked, m.What+" on "+words.ShortDay(m.Day))
		}
	}
	s.summarize(in)
	s.Legend = s.legend(in, marked)
	return s
}

// timeAxis is the time along the picture.
type timeAxis struct{ first, last time.Time }

// seasonDays is the time from the first round to the last, one day at least.
func seasonDays(line []compare.Point) timeAxis {
	a := timeAxis{line[0].Day.Time(), line[len(line)-1].Day.Time()}
	if !a.last.After(a.first) {
		a.last = a.first.AddDate(0, 0, 1)
	}
	return a
}

// across is how far from the left a time stands. A dot at either end is whole.
func (a timeAxis) across(t time.Time) float64 {
	return .01 + .98*float64(t.Sub(a.first))/float64(a.last.Sub(a.first))
}

func (a timeAxis) holds(t time.Time) bool { return !t.Before(a.first) && !t.After(a.last) }

// seasonScores is the scale of the scores and the target.
func seasonScores(in ComparisonInput) chart.Range {
	values := []float64{in.Target}
	for _, p := range in.Line {
		values = append(values, p.Score)
	}
	return chart.NewRange(5, values...)
}

// add takes in a round with the address of its statement.
func (s *Season) add(p compare.Point, at string, days timeAxis, up chart.Range) {
	day := words.ShortDay(p.Day)
	dot := SeasonDot{X: chart.Percent(days.across(p.Day.Time())), Y: up.Down(p.Score), At: at, Text: fmt.Sprintf("%s: %.1f", day, p.Score)}
	row := SeasonRow{Day: day, At: at, Score: fmt.Sprintf("%.1f", p.Score)}
	if p.HasMean {
		row.Mean = fmt.Sprintf("%.1f (%.1f to %.1f)", p.Mean, p.Low, p.High)
		s.Last, s.LastAt = fmt.Sprintf("%.1f", p.Mean), up.Down(p.Mean)
	}
	s.Rounds, s.Table = append(s.Rounds, dot), append(s.Table, row)
}

// drawMean draws the mean with its interval, as far as they lie in the picture.
func (s *Season) drawMean(line []compare.Point, days timeAxis, up chart.Range) {
	var mean, high, low []chart.Place
	for _, p := range line {
		if p.HasMean {
			at := func(score float64) chart.Place {
				return chart.Place{X: days.across(p.Day.Time()), Y: clipped(1 - up.Share(score))}
			}
			mean, high, low = append(mean, at(p.Mean)), append(high, at(p.High)), append(low, at(p.Low))
		}
	}
	s.Line, s.Spread = chart.Line(mean), chart.Area(high, low)
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

// legend says what the marks of the picture are, in as many words as it has marks.
func (s *Season) legend(in ComparisonInput, marked []string) string {
	text := "Dots: rounds. "
	if s.NoLine == "" {
		text += "Line: mean of the last eight with its 95% interval, now " + s.Last + ". "
	}
	text += "Dashes: the target, " + words.Plain(in.Target) + "."
	if len(marked) > 0 {
		text += fmt.Sprintf(" %s at the foot: %s.", words.OneOrMany(len(marked), "Ring", "Rings"), words.List(marked))
	}
	if s.NoLine != "" {
		text += " " + s.NoLine
	}
	return text
}

// clipped keeps a share inside the picture.
func clipped(share float64) float64 { return math.Max(0, math.Min(1, share)) }

// mostMonths is how many months are named along a wide axis. A narrow one names
// every fourth of them.
const mostMonths = 8

// monthMarks names months along the axis of time, but none that would stand
// beyond the picture.
func monthMarks(days timeAxis) []AxisText {
	first := days.first
	months := (days.last.Year()-first.Year())*12 + int(days.last.Month()-first.Month()) + 1
	every := (months + mostMonths - 1) / mostMonths
	var all []AxisText
	for i := 0; i < months; i += every {
		t := time.Date(first.Year(), first.Month()+time.Month(i), 1, 0, 0, 0, 0, time.UTC)
		if t.Before(first) {
			t = first
		}
		name := t.Format("Jan")
		if i == 0 || t.Month() == time.January || every > 2 {
			name = t.Format("Jan 06")
		}
		if x := days.across(t); x <= .95 {
			all = append(all, AxisText{Place: chart.Percent(x), Text: name, Narrow: i/every%4 == 0})
		}
	}
	return all
}

// yearMarks are the first days of the years after the first.
func yearMarks(days timeAxis) []AxisText {
	var all []AxisText
	for year := days.first.Year() + 1; year <= days.last.Year(); year++ {
		x := days.across(time.Date(year, time.January, 1, 0, 0, 0, 0, time.UTC))
		all = append(all, AxisText{Place: chart.Percent(x), Text: fmt.Sprint(year), End: x > .9})
	}
	return all
}
