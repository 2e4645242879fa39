package pages

import (
	"fmt"
	"math"
	"time"

	"strokeledger/analysis/compare"
	"strokeledger/web/chart"
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

func season(q AskedMonths) Season {
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
		s.Up = append(s.Up, AxisText{Place: up.Down(v), Text: plain(v)})
	}
	var mean, high, low []chart.Place
	for _, p := range q.Line {
		x, day := across(p.Day.Time()), shortDay(p.Day)
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
	s.Target, s.TargetText = up.Down(q.Target), "target "+plain(q.Target)
	for _, m := range q.Marks {
		if t := m.Day.Time(); !t.Before(first) && !t.After(last) {
			s.Marks = append(s.Marks, AxisText{Place: chart.Percent(across(t)), Text: m.What, End: across(t) > .45})
		}
	}
	s.say(q)
	return s
}

func (s *Season) say(q AskedMonths) {
	n := len(q.Line)
	if n < compare.MinRounds {
		s.None = fmt.Sprintf("The mean of the last eight is drawn from %d rounds on.", compare.MinRounds)
		s.Say = fmt.Sprintf("%s.", plural(n, "round", "rounds"))
		return
	}
	begin := q.Line[compare.MinRounds-1]
	s.Say = fmt.Sprintf("The mean of the last eight rounds goes from %.1f on %s to %s on %s; the target is %s.",
		begin.Mean, shortDay(begin.Day), s.Last, shortDay(q.Line[n-1].Day), plain(q.Target))
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

// Putts is the share of putts that went in, by length.
type Putts struct {
	Title, Say  string
	Up, Along   []AxisText
	Target      string // path of the target's golfer
	Tour        string
	TargetText  string
	Points      []PuttPoint
	Table       []PuttRow
	TargetShort string // heading of its column
}

// PuttPoint is one length with its interval.
type PuttPoint struct{ X, Y, High, Low, Text string }

// PuttRow is the table beside the picture.
type PuttRow struct{ Length, At, Holed, Share, Interval, Target, Tour string }

// The lengths that the picture holds, in feet.
const (
	shortestFt = 1.5
	longestFt  = 60.0
)

func putts(q AskedMonths) Putts {
	p := Putts{Title: "Share of putts holed, by length", TargetText: "the " + plain(q.Target), TargetShort: "A " + plain(q.Target)}
	across := func(ft float64) float64 {
		return clipped(math.Log(ft/shortestFt) / math.Log(longestFt/shortestFt))
	}
	up := chart.Range{Low: 0, High: 1, Step: .25}
	for _, v := range up.Ticks() {
		p.Up = append(p.Up, AxisText{Place: up.Down(v), Text: percent(v)})
	}
	for i, ft := range []float64{2, 3, 4, 6, 10, 15, 20, 30, 50} {
		length := golfFeet(ft, q)
		p.Along = append(p.Along, AxisText{Place: chart.Percent(across(ft)), Text: length, Narrow: i%2 == 0})
	}
	var target, tour []chart.Place
	for ft := shortestFt; ft <= longestFt*1.001; ft *= 1.08 {
		target = append(target, chart.Place{X: across(ft), Y: 1 - q.Putter.MakeRate(ft)})
		tour = append(tour, chart.Place{X: across(ft), Y: 1 - q.TourPutt.MakeRate(ft)})
	}
	p.Target, p.Tour = chart.Line(target), chart.Line(tour)
	below := ""
	for _, h := range compare.PuttingCurve(q.Sheet.Columns) {
		i, length := h.Interval(), puttLength(h, q)
		p.Points = append(p.Points, PuttPoint{chart.Percent(across(h.Length.Feet())), up.Down(h.Share()), up.Down(i.High), up.Down(i.Low), length + ": " + percent(h.Share())})
		p.Table = append(p.Table, PuttRow{length, q.At.BehindPutts(h.String()), fmt.Sprintf("%d of %d", h.Made, h.Tried), percent(h.Share()), percent(i.Low) + " to " + percent(i.High), percent(h.By(q.Putter)), percent(h.By(q.TourPutt))})
		if i.High < h.By(q.Putter) {
			below += ", " + length
		}
	}
	p.Say = fmt.Sprintf("Within reach of the %s golfer at every length.", plain(q.Target))
	if below != "" {
		p.Say = fmt.Sprintf("Fewer than the %s golfer holes, beyond chance: %s.", plain(q.Target), below[2:])
	}
	if len(p.Table) == 0 {
		p.Say = "No putt in these spans."
	}
	return p
}
