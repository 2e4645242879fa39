package play

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"strokeledger/analysis/aim"
	"strokeledger/web/chart"
	"strokeledger/web/words"
)

// Curve is what the hole costs by where the tee shot is aimed, with each club.
type Curve struct {
	Label  string // says what it shows
	Key    string // which line is which club
	Grid   []CurveTick
	Ticks  []CurveTick
	Lines  []CurveLine // the best club last, over the others
	Flat   [2]string   // where the strip begins in which aims cost the same within a hundredth, and how wide it is
	Middle string
	Best   CurveSpot
	Other  CurveSpot // the straight drive; no text when it is the best too
}

// CurveTick is a mark of an axis.
type CurveTick struct{ At, Text string }

// CurveLine is the curve of a club.
type CurveLine struct {
	Class string
	Path  string
}

// CurveSpot is an aim on its curve.
type CurveSpot struct{ X, Y, Text, TextX, TextY, Anchor string }

// The picture's frame, in its own units.
const (
	curveLeft, curveRight = 40.0, 340.0
	curveTop, curveBottom = 14.0, 164.0
	dearest               = .5 // strokes over the best that are shown
	widest                = 45 // yd from the middle that are shown
)

// plane turns aims and costs into places of the picture.
type plane struct {
	x, y chart.Range
}

func (p plane) at(side, cost float64) (x, y float64) {
	return curveLeft + p.x.Share(side)*(curveRight-curveLeft), curveBottom - p.y.Share(cost)*(curveBottom-curveTop)
}

// newCurve draws the curves of the clubs of an advice.
func newCurve(m measure, advice aim.Advice) Curve {
	best, straight := advice.Best(), advice.Straight()
	p := planeOf(advice)
	c := Curve{Label: fmt.Sprintf("What the hole costs by aim. %s lowest at %s, %s. %s down the middle %s.", capital(best.Club.Name), m.side(best.Best.Side), strokes(best.Best.Cost), capital(straight.Club.Name), strokes(straight.Straight.Cost))}
	c.Key = curveKey(advice)
	for _, v := range p.y.Ticks() {
		_, y := p.at(0, v)
		c.Grid = append(c.Grid, CurveTick{tenth(y), fmt.Sprintf("%.1f", v)})
	}
	for _, v := range p.x.Ticks() {
		x, _ := p.at(v, p.y.Low)
		text := m.number(v)
		if v == 0 {
			text, c.Middle = "middle", tenth(x)
		}
		c.Ticks = append(c.Ticks, CurveTick{tenth(x), text})
	}
	for i := len(advice.Clubs) - 1; i >= 0; i-- {
		c.Lines = append(c.Lines, p.line(curveClass(i, advice.Driver), advice.Clubs[i]))
	}
	left, _ := p.at(best.Flat[0], 0)
	right, _ := p.at(best.Flat[1], 0)
	c.Flat = [2]string{tenth(max(left, curveLeft)), tenth(min(right, curveRight) - max(left, curveLeft))}
	c.Best = p.spot(best.Best.Side, best.Best.Cost, strokes(best.Best.Cost), 18)
	if straight.Straight.Cost-best.Best.Cost >= .005 {
		c.Other = p.spot(0, min(straight.Straight.Cost, p.y.High), straight.Club.Name+" straight "+strokes(straight.Straight.Cost), -8)
	}
	return c
}

// curveClass sets the curves apart: the cheapest club, the longest, and the others.
func curveClass(i, driver int) string {
	switch i {
	case 0:
		return "best-club"
	case driver:
		return "second-club"
	default:
		return "other-club"
	}
}

// curveKey says which line is which club.
func curveKey(a aim.Advice) string {
	var others []string
	for i, c := range a.Clubs {
		if i > 0 && i != a.Driver {
			others = append(others, c.Club.Name)
		}
	}
	text := "Thick line: " + a.Best().Club.Name
	if a.Driver > 0 {
		text += ". Dashes: " + a.Straight().Club.Name
	}
	if len(others) > 0 {
		text += ". Dots: " + words.List(others)
	}
	return text + "."
}

// planeOf holds every aim that may be worth a thought.
func planeOf(advice aim.Advice) plane {
	lowest := advice.Best().Best.Cost
	costs, across := []float64{lowest, min(advice.Straight().Straight.Cost, lowest+dearest), lowest + .1}, []float64{-10, 10}
	for _, club := range advice.Clubs {
		for _, c := range club.Curve {
			if c.Strokes <= lowest+dearest && math.Abs(c.Side) <= widest {
				costs, across = append(costs, c.Strokes), append(across, c.Side)
			}
		}
	}
	return plane{chart.NewRange(7, across...), chart.Range{Low: math.Floor(lowest*10-1) / 10, High: math.Ceil(slices.Max(costs)*10) / 10, Step: .1}}
}

func (p plane) line(class string, club aim.TeeShot) CurveLine {
	l := CurveLine{Class: class}
	var b strings.Builder
	drawing := false
	for _, c := range club.Curve {
		if c.Strokes > p.y.High || c.Side < p.x.Low || c.Side > p.x.High {
			drawing = false
			continue
		}
		x, y := p.at(c.Side, c.Strokes)
		fmt.Fprintf(&b, "%c%s %s", "ML"[words.Tally(drawing)], tenth(x), tenth(y))
		drawing = true
	}
	l.Path = b.String()
	return l
}

func (p plane) spot(side, cost float64, text string, below float64) CurveSpot {
	x, y := p.at(side, cost)
	s := CurveSpot{X: tenth(x), Y: tenth(y), Text: text, TextX: tenth(x + 8), TextY: tenth(y + below), Anchor: "start"}
	if x > (curveLeft+curveRight)/2+40 {
		s.TextX, s.Anchor = tenth(x-8), "end"
	}
	return s
}
