package practice

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/words"
)

// BookSection is the page of the book for a lie and a kind of green.
type BookSection struct {
	ID      string
	Heading string
	After   string // the carry for which run-outs are told
	Charts  []TrialChart
	Rows    []BookRow
	Trials  []TrialRow // the latest first
	Removes bool       // they can be removed
	Earlier string     // that there are more than are listed; empty otherwise
}

// TrialChart draws the trials of a club.
type TrialChart struct {
	Club, Count string
	Picture     *components.Drawing
}

// BookRow is what the book says of a club.
type BookRow struct {
	Club, Trials, Runs, Next, Grows string
	FarOff                          string // that trials lie far off; empty otherwise
}

// TrialRow is a ball that was entered.
type TrialRow struct {
	Club, Day, Lengths, Runs string
	Remove                   string // address that removes it; empty for a coach
	FarOff                   bool
}

// mostListed is how many balls of a page are listed, to be removed.
const mostListed = 60

// section is a page of the book.
func (in RunOutInput) section(of analysis.RunOutPage) BookSection {
	s := BookSection{Removes: in.Whose.Own, ID: "book-" + of.Lie.String() + "-" + of.Speed.String(), After: "Runs after " + in.length(analysis.UsualCarry),
		Heading: fmt.Sprintf("%s lie, %s green", words.Capital(of.Lie.String()), of.Speed)}
	plane := in.newPlane(of)
	far := map[int]bool{}
	var places []int
	for _, c := range of.Clubs {
		s.Charts = append(s.Charts, TrialChart{c.Name, words.Plural(len(c.Trials), "trial", "trials"), plane.chart(in, c)})
		s.Rows = append(s.Rows, in.bookRow(c))
		for _, k := range c.FarOff {
			far[c.Trials[k]] = true
		}
		places = append(places, c.Trials...)
	}
	slices.Sort(places)
	slices.Reverse(places)
	if len(places) > mostListed {
		s.Earlier = fmt.Sprintf("The latest %d of %d; the file has all of them.", mostListed, len(places))
		places = places[:mostListed]
	}
	for _, at := range places {
		t := in.Trials[at]
		row := TrialRow{Club: t.Club, Day: words.ShortDay(t.Day), Runs: run(t.Total-t.Carry) + " " + t.Unit.String(), FarOff: far[at],
			Lengths: fmt.Sprintf("%s and %s %s", form.WriteNumber(t.Carry), form.WriteNumber(t.Total), t.Unit)}
		if in.Whose.Own {
			row.Remove = in.Whose.RemoveTrial(t.ID)
		}
		s.Trials = append(s.Trials, row)
	}
	return s
}

// bookRow is what the book says of a club.
func (in RunOutInput) bookRow(c analysis.RunOutClub) BookRow {
	row := BookRow{Club: c.Name, Trials: fmt.Sprint(len(c.Trials)), Runs: in.length(c.Run(analysis.UsualCarry)), Next: "not known from two", Grows: in.grows(c)}
	if len(c.Trials) == 1 {
		row.Next = "not known from one"
	}
	if next, ok := c.Next(analysis.UsualCarry, .95); ok {
		row.Next = fmt.Sprintf("%s to %s", in.plain(next.Low), in.length(next.High))
	}
	if n := len(c.FarOff); n > 0 {
		row.FarOff = words.SpelledPlural(n, "trial", "trials") + " far off, kept"
	}
	return row
}

// grows says how the run-out goes with the carry.
func (in RunOutInput) grows(c analysis.RunOutClub) string {
	switch {
	case c.Line:
		unit := strings.TrimSuffix(strings.ToLower(words.Unit(in.Units.Far)), "s")
		return fmt.Sprintf("by %.1f %s for each %s of carry", c.Slope, in.Units.Far, unit)
	case len(c.Trials) < 5:
		return "not known from fewer than five trials: the mean"
	case c.Most-c.Least < 3:
		return "not known from carries so close together: the mean"
	default:
		return "not at all: the mean"
	}
}

// plane is where the trials of a page are drawn, the same for all of its clubs.
type plane struct{ across, up float64 } // the longest carry and total, in the reader's unit

// Where a chart lies in its picture.
const (
	chartLeft, chartRight = 30, 148
	chartTop, chartBottom = 12, 112
)

func (in RunOutInput) newPlane(of analysis.RunOutPage) plane {
	p := plane{10, 20}
	for _, c := range of.Clubs {
		for _, at := range c.Trials {
			carry, total := in.Trials[at].Yards()
			p.across, p.up = max(p.across, in.far(carry)+2), max(p.up, in.far(total)+3)
		}
	}
	return p
}

// far is yards in the reader's unit.
func (in RunOutInput) far(yd float64) float64 {
	return in.Units.Far.In(golf.Distance(yd) * golf.Yard)
}

func (p plane) x(carry float64) float64 {
	return chartLeft + (chartRight-chartLeft)*min(max(carry/p.across, 0), 1)
}

func (p plane) y(total float64) float64 {
	return chartBottom - (chartBottom-chartTop)*min(max(total/p.up, 0), 1)
}

// stepFor is a round number that goes a few times into a length.
func stepFor(length float64) float64 {
	for _, step := range []float64{5, 10, 20} {
		if length/step <= 3.2 {
			return step
		}
	}
	return 50
}

// chart draws the trials of a club: ink dots, the run-out as a line with its band, and
// thin dashes where nothing would run.
func (p plane) chart(in RunOutInput, c analysis.RunOutClub) *components.Drawing {
	d := &components.Drawing{Class: "trial-drawing", Width: 156, Height: 128, Label: in.chartLabel(c)}
	for n := 0.0; n < p.across; n += stepFor(p.across) {
		d.DrawLine("grid-line", p.x(n), chartTop, p.x(n), chartBottom)
		d.DrawWords("", p.x(n), chartBottom+13, "middle", words.Plain(n))
	}
	for n := 0.0; n < p.up; n += stepFor(p.up) {
		d.DrawLine("grid-line", chartLeft, p.y(n), chartRight, p.y(n))
		d.DrawWords("", chartLeft-5, p.y(n)+4, "end", words.Plain(n))
	}
	p.line(d, in, c)
	end := min(p.across, p.up)
	d.DrawLine("no-run-line", p.x(0), p.y(0), p.x(end), p.y(end))
	for k, at := range c.Trials {
		carry, total := in.Trials[at].Yards()
		if slices.Contains(c.FarOff, k) {
			d.DrawDot("far-trial-dot", p.x(in.far(carry)), p.y(in.far(total)), 3.2)
		} else {
			d.DrawDot("trial-dot", p.x(in.far(carry)), p.y(in.far(total)), 2.8)
		}
	}
	d.DrawLine("axis-line", chartLeft, chartBottom, chartRight, chartBottom)
	d.DrawLine("axis-line", chartLeft, chartTop, chartLeft, chartBottom)
	return d
}

// line draws the total that goes with a carry, and where 19 of 20 more balls end.
func (p plane) line(d *components.Drawing, in RunOutInput, c analysis.RunOutClub) {
	const steps = 12
	from, to := max(c.Least-1, 0), c.Most+1
	var middle, upper, lower []float64
	for i := range steps + 1 {
		carry := from + (to-from)*float64(i)/steps
		x := p.x(in.far(carry))
		middle = append(middle, x, p.y(in.far(carry+c.Run(carry))))
		if next, ok := c.Next(carry, .95); ok {
			upper = append(upper, x, p.y(in.far(carry+next.High)))
			lower = append([]float64{x, p.y(in.far(carry + next.Low))}, lower...)
		}
	}
	if len(upper) > 0 {
		d.DrawCurve("trial-band", append(upper, lower...), true)
	}
	d.DrawCurve("trial-mean", middle, false)
}

// chartLabel tells what the chart shows.
func (in RunOutInput) chartLabel(c analysis.RunOutClub) string {
	const told = 12
	var balls []string
	for k, at := range c.Trials {
		if k == told {
			balls = append(balls, fmt.Sprintf("%d more", len(c.Trials)-told))
			break
		}
		carry, total := in.Trials[at].Yards()
		balls = append(balls, in.plain(carry)+" and "+in.plain(total))
	}
	return fmt.Sprintf("%s, carry and total in %s: %s.", c.Name, in.Units.Far, strings.Join(balls, ", "))
}

// CardTable says where to land each club, for the bag.
type CardTable struct {
	Caption   string
	Corner    string
	Distances []string
	Rows      []CardRow
}

// CardRow is a club of the card.
type CardRow struct {
	Club  string
	Lands []string // in paces; a dash where it was not tried
}

// cardLengths are the distances of the card, in the reader's unit.
func (in RunOutInput) cardLengths() []float64 {
	if in.Units.Far == golf.Metres {
		return []float64{10, 14, 18, 22, 26, 30}
	}
	return []float64{12, 16, 20, 24, 28, 32}
}

// card is the table of a page of the book.
func (in RunOutInput) card(of analysis.RunOutPage) CardTable {
	t := CardTable{Caption: fmt.Sprintf("%s lie, %s green.", words.Capital(of.Lie.String()), of.Speed), Corner: "To the hole, " + in.Units.Far.String()}
	for _, x := range in.cardLengths() {
		t.Distances = append(t.Distances, words.Plain(x))
	}
	for _, c := range of.Clubs {
		row := CardRow{Club: c.Name}
		for _, x := range in.cardLengths() {
			text := "–"
			if land, ok := c.Land(in.Units.Far.Of(x).Yards()); ok {
				text = fmt.Sprint(int(math.Round(land)))
			}
			row.Lands = append(row.Lands, text)
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// run writes a run-out, with a minus for a ball that came back.
func run(x float64) string {
	if x < -.05 {
		return words.Minus + words.Plain(-x)
	}
	return words.Plain(x)
}

// rounded is a length without what the arithmetic of units adds.
func rounded(yd float64) float64 { return math.Round(yd*1e3) / 1e3 }
