package practice

import (
	"fmt"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/chart"
	"strokeledger/web/components"
	"strokeledger/web/words"
)

// The plane of the two pictures: days go across, better is up.
const (
	carryWidth  = 356.0
	carryHigh   = 136.0
	carryLeft   = 44.0
	carryRight  = 334.0
	carryTop    = 10.0
	carryBase   = 112.0
	carryTicks  = 5
	carryInside = 2.0 // between the band of a month and its ends
)

// carryPlane is a picture with its days.
type carryPlane struct {
	*components.Drawing
	first, last golf.Date
}

// carryPlane draws the months of both pictures.
func (in DrillInput) carryPlane(label string) carryPlane {
	months := in.Carry.Months
	p := carryPlane{&components.Drawing{Class: "carry-drawing", Width: carryWidth, Height: carryHigh, Label: label}, months[0].Span.From, months[len(months)-1].Span.To}
	for _, m := range months {
		x := p.x(m.Span.From)
		p.DrawLine("month-tick", x, carryTop, x, carryBase+4)
		p.DrawWords("", x+2, carryBase+18, "start", m.Span.From.Time().Format("Jan"))
	}
	return p
}

// x is where a day begins.
func (p carryPlane) x(d golf.Date) float64 {
	all := float64(words.DaysBetween(p.first, p.last) + 1)
	return carryLeft + (carryRight-carryLeft)*float64(words.DaysBetween(p.first, d))/all
}

// within are the sessions of the months that are shown.
func (p carryPlane) within(all []analysis.CarrySession) []analysis.CarrySession {
	var shown []analysis.CarrySession
	for _, s := range all {
		if s.Day.Compare(p.first) >= 0 && s.Day.Compare(p.last) <= 0 {
			shown = append(shown, s)
		}
	}
	return shown
}

// scale draws the lines of a scale; up is where more stands.
func (p carryPlane) scale(values []float64, up bool) func(v float64) float64 {
	r := chart.NewRange(carryTicks, values...)
	y := func(v float64) float64 {
		share := r.Share(v)
		if up {
			share = 1 - share
		}
		return carryTop + (carryBase-carryTop)*min(max(share, 0), 1)
	}
	for _, t := range r.Ticks() {
		p.DrawLine("grid-line", carryLeft, y(t), carryRight, y(t))
		p.DrawWords("", carryLeft-6, y(t)+4, "end", words.Plain(t))
	}
	return y
}

// carrySessions draws the share of each session with where it lies.
func (in DrillInput) carrySessions() *components.Drawing {
	values := []float64{0} // so that the foot is none of 100
	var said []string
	p := in.carryPlane("")
	shown := p.within(in.Carry.Sessions)
	for _, s := range shown {
		counted, of := s.Made()
		said = append(said, fmt.Sprintf("%s %s, between %s", words.ShortDay(s.Day), hundred(float64(counted)/float64(of)), strings.Replace(hundreds(s.Share), " to ", " and ", 1)))
		values = append(values, 100*s.Share.Low, 100*s.Share.High)
	}
	if len(shown) == 0 {
		said = append(said, "none in these months")
	}
	p.Label = fmt.Sprintf("%s, %s of 100 by session: %s.", in.DrillFor.Name, made(in.DrillFor), strings.Join(said, "; "))
	aim := !in.carryMoved() && in.Carry.Sessions[0].Feet == in.Feet
	if aim {
		values = append(values, 100*in.Of)
		p.Label += fmt.Sprintf(" %s reaches %s.", words.Capital(words.A(in.Target)), hundred(in.Of))
	}
	y := p.scale(values, true)
	if aim {
		p.DrawLine("carry-aim", carryLeft, y(100*in.Of), carryRight, y(100*in.Of))
		p.DrawWords("", carryLeft+4, y(100*in.Of)-4, "start", fmt.Sprintf("%s: %s", words.A(in.Target), hundred(in.Of)))
	}
	for _, s := range shown {
		counted, of := s.Made()
		x := p.x(s.Day)
		p.DrawLine("carry-whisker", x, y(100*s.Share.Low), x, y(100*s.Share.High))
		p.DrawDot("carry-dot", x, y(100*float64(counted)/float64(of)), 3.5)
	}
	return p.Drawing
}

// carryMonths draws the level of each month with where it lies.
func (in DrillInput) carryMonths() *components.Drawing {
	values := []float64{in.Target}
	var said []string
	p := in.carryPlane("")
	for _, m := range in.Carry.Months {
		if m.PlaysTo.Known() {
			values = append(values, m.PlaysTo.Low.Value, m.PlaysTo.High.Value)
			said = append(said, fmt.Sprintf("%s %s, %s", words.Span(m.Span, true), words.Level(m.PlaysTo.Level), words.LevelRange(m.PlaysTo)))
		}
	}
	p.Label = fmt.Sprintf("%s on the course: no month has the %s rounds that a level takes.", words.Capital(in.Carry.Part.String()), words.Spelled(compare.MinRounds))
	if len(said) > 0 {
		p.Label = fmt.Sprintf("%s on the course plays to, by month: %s.", words.Capital(in.Carry.Part.String()), strings.Join(said, "; "))
	}
	y := p.scale(values, false)
	p.DrawLine("carry-aim", carryLeft, y(in.Target), carryRight, y(in.Target))
	p.DrawWords("", carryRight+4, y(in.Target)+4, "start", words.Plain(in.Target))
	for _, m := range in.Carry.Months {
		if !m.PlaysTo.Known() {
			continue
		}
		from, to := p.x(m.Span.From)+carryInside, p.x(m.Span.To.AddDays(1))-carryInside
		low, high, middle := y(m.PlaysTo.Low.Value), y(m.PlaysTo.High.Value), y(m.PlaysTo.Level.Value)
		p.DrawRect("carry-band", from, low, to-from, high-low)
		p.DrawLine("carry-mean", from, middle, to, middle)
		p.DrawWords("carry-words", (from+to)/2, middle-4, "middle", fmt.Sprintf("%.0f", m.PlaysTo.Level.Value))
	}
	return p.Drawing
}
