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

// AxisText is a figure or word beside an axis.
type AxisText struct {
	Place, Text string
	Narrow      bool // shown on narrow screens too
	End         bool // anchored inward
}

// Season is the line of a season.
type Season struct {
	Title, Say   string // what the picture is and what it shows
	Up           []AxisText
	Along        []AxisText
	Rounds       []Dot
	Line, Spread string
	Target       string // place of the rule
	TargetText   string
	Last         string // the latest mean, in figures, and where it stands
	LastAt       string
	Marks        []AxisText
	Table        []SeasonRow
	None         string // why there is no line
}

// Dot is a round on the line.
type Dot struct{ X, Y, At, Text string }

// SeasonRow is the table beside the picture.
type SeasonRow struct{ Day, At, Score, Mean string }

// NewSeason makes the picture and table of the season; there must be a round.
func NewSeason(q ComparisonInput) Season {
	s := Season{Title: "Each round as a score of 18 holes on one course"}
	first, last := q.Line[0].Day.Time(), q.Line[len(q.Line)-1].Day.Time()
	if !last.After(first) {
		last = first.AddDate(0, 0, 1)
	}
	across := func(t time.Time) float64 { return .01 + .98*float64(t.Sub(first))/float64(last.Sub(first)) }
	values := []float64{q.Target}
	for _, p := range q.Line {
		values = append(values, p.Score)
	}
	up := chart.NewRange(5, values...)
	for _, v := range up.Ticks() {
		s.Up = append(s.Up, AxisText{Place: up.Down(v), Text: words.Plain(v)})
	}
	var mean, high, low []chart.Place
	for _, p := range q.Line {
		x, day := across(p.Day.Time()), words.ShortDay(p.Day)
		s.Rounds = append(s.Rounds, Dot{chart.Percent(x), up.Down(p.Score), q.At.Round(p.ID), fmt.Sprintf("%s: %s", day, fmt.Sprintf("%.1f", p.Score))})
		row := SeasonRow{day, q.At.Round(p.ID), fmt.Sprintf("%.1f", p.Score), ""}
		if p.HasMean {
			mean = append(mean, chart.Place{X: x, Y: clipped(1 - up.Share(p.Mean))})
			high = append(high, chart.Place{X: x, Y: clipped(1 - up.Share(p.High))})
			low = append(low, chart.Place{X: x, Y: clipped(1 - up.Share(p.Low))})
			row.Mean = fmt.Sprintf("%.1f (%.1f to %.1f)", p.Mean, p.Low, p.High)
			s.Last, s.LastAt = fmt.Sprintf("%.1f", p.Mean), up.Down(p.High)
		}
		s.Table = append(s.Table, row)
	}
	s.Line, s.Spread = chart.Line(mean), chart.Area(high, low)
	s.Along = monthMarks(first, last, across)
	s.Target, s.TargetText = up.Down(q.Target), "target "+words.Plain(q.Target)
	for _, m := range q.Marks {
		if t := m.Day.Time(); !t.Before(first) && !t.After(last) {
			s.Marks = append(s.Marks, AxisText{Place: chart.Percent(across(t)), Text: m.What, End: across(t) > .45})
		}
	}
	s.say(q)
	return s
}

func (s *Season) say(q ComparisonInput) {
	n := len(q.Line)
	if q.Thin.Any() {
		s.None = words.Capital(words.Thin(q.Thin)) + "."
		s.Say = fmt.Sprintf("%s.", words.Plural(n, "round", "rounds"))
		return
	}
	begin := q.Line[slices.IndexFunc(q.Line, func(p compare.Point) bool { return p.HasMean })]
	s.Say = fmt.Sprintf("The mean of the last eight rounds goes from %.1f on %s to %s on %s; the target is %s.",
		begin.Mean, words.ShortDay(begin.Day), s.Last, words.ShortDay(q.Line[n-1].Day), words.Plain(q.Target))
}

func clipped(share float64) float64 { return math.Max(0, math.Min(1, share)) }

// mostMonths is how many months are named along a wide axis, and every fourth
// of them along a narrow one.
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
