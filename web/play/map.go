package play

import (
	"fmt"
	"math"
	"strings"

	"strokeledger/analysis/aim"
)

// Map is a hole from above, the tee at the foot, in yards: right of the tee is to the
// right, and beyond it is up.
type Map struct {
	ID       string // of its title on the page
	ViewBox  string
	Title    string
	Fairway  string // the path of its edge; empty for none drawn
	Zones    []Ground
	Green    string // the path of its edge; empty for none drawn
	Centre   string // the line from the tee to the hole
	Ticks    []YardMark
	Pin      string
	Says     []Saying
	Tee      string
	Patterns []Rings
	Small    bool // it shows a green alone, so that its marks are finer
}

// Ground is a zone: later ones lie over earlier ones.
type Ground struct {
	Class string // of its hatching
	Edge  string // class of its edge
	Path  string
}

// YardMark is a distance from the tee, marked on the line.
type YardMark struct {
	Path string
	X, Y string
	Text string
}

// Saying is a word in the map.
type Saying struct {
	X, Y   string
	Text   string
	Anchor string // start, middle or end
	Strong bool
}

// Rings is where the well-struck balls of an aim end: half of them, and nine in ten.
type Rings struct {
	Class  string // pattern-best or pattern-straight
	Line   string // from where the ball is played to the aim
	Cross  string // at the aim
	X, Y   string
	Turned string // the transform of the rings
	Half   [2]string
	Most   [2]string
}

// Sizes of the map, in yards.
const (
	beside     = 76  // shown on either side of the line
	behindTee  = 14  // shown behind the tee
	behindHole = 34  // shown beyond the hole
	beyondEdge = 400 // where ground without an end is cut off, beyond what is shown
	tickEvery  = 50
	tickFirst  = 100
	rounding   = .3 // share of a bunker's side that is rounded off
	sayApart   = 11 // between words on one side
)

// frame is what a map shows.
type frame struct{ left, right, top, bottom float64 } // yards, y up

// NewMap draws a picture. id is that of its title on the page.
func NewMap(id, title string, p aim.Picture) Map {
	m := p.Map()
	flag := m.Hole(p.Green.Middle())
	f := frameOf(m, p, flag)
	drawn := Map{ID: id, Title: title, ViewBox: fmt.Sprintf("%s %s %s %s", tenth(f.left), tenth(-f.top), tenth(f.right-f.left), tenth(f.top-f.bottom))}
	drawn.Fairway, drawn.Green = path(m.FairwayOutline(), true), path(m.GreenOutline(), true)
	for _, z := range p.Zones {
		if g, seen := groundOf(m, z); seen {
			drawn.Zones = append(drawn.Zones, g)
		}
	}
	drawn.Centre = path(m.CentreLine(p.Length), false)
	drawn.Ticks = ticksOf(m, p.Length)
	drawn.Pin = fmt.Sprintf("M%s %sv-13l8 3-8 3", tenth(flag.X), tenth(-flag.Y))
	drawn.Tee = "M-5 2h10M-5 -2h10"
	drawn.Says = append(sayings(m, p, f), Saying{X: "8", Y: "2.5", Anchor: "start", Text: fmt.Sprintf("tee, %s yd", yards(p.Length))})
	return drawn
}

// frameOf is wide enough for the line of play and what lies beside it.
func frameOf(m *aim.Map, p aim.Picture, flag aim.Point) frame {
	f := frame{-beside, beside, 0, -behindTee}
	for _, at := range append(m.CentreLine(p.Length), flag) {
		f.left, f.right = min(f.left, at.X-beside), max(f.right, at.X+beside)
		f.top = max(f.top, at.Y+behindHole)
	}
	return f
}

// tenth writes a coordinate.
func tenth(x float64) string { return yards(x + 0) }

// path joins points.
func path(points []aim.Point, closed bool) string {
	var b strings.Builder
	for i, p := range points {
		fmt.Fprintf(&b, "%c%s %s", "ML"[min(i, 1)], tenth(p.X), tenth(-p.Y))
	}
	if closed && len(points) > 0 {
		b.WriteByte('Z')
	}
	return b.String()
}

// rounded joins points with round corners.
func rounded(points []aim.Point) string {
	var b strings.Builder
	for i, corner := range points {
		before, after := points[(i+len(points)-1)%len(points)], points[(i+1)%len(points)]
		from, to := between(corner, before), between(corner, after)
		fmt.Fprintf(&b, "%c%s %sQ%s %s %s %s", "ML"[min(i, 1)], tenth(from.X), tenth(-from.Y), tenth(corner.X), tenth(-corner.Y), tenth(to.X), tenth(-to.Y))
	}
	return b.String() + "Z"
}

func between(a, b aim.Point) aim.Point {
	return aim.Point{X: a.X + rounding*(b.X-a.X), Y: a.Y + rounding*(b.Y-a.Y)}
}

// groundOf draws a zone; seen is false for one that has no room.
func groundOf(m *aim.Map, z aim.Zone) (g Ground, seen bool) {
	outline := m.ZoneOutline(z, -beyondEdge, m.Picture().Length+beyondEdge, beyondEdge)
	if outline == nil {
		return g, false
	}
	g = Ground{Class: groundClass(z.Kind), Edge: edgeClass(z.Kind), Path: path(outline, true)}
	if z.Kind == aim.Bunker && len(outline) == 4 {
		g.Path = rounded(outline)
	}
	return g, true
}

// groundClass is how a kind of ground is hatched.
func groundClass(kind aim.Kind) string {
	return [...]string{aim.Out: "ground-out", aim.Water: "ground-water", aim.Trees: "ground-trees", aim.Bunker: "ground-bunker", aim.Rough: "ground-rough"}[kind]
}

// edgeClass is the edge of a kind of ground: red where a penalty stroke is lost.
func edgeClass(kind aim.Kind) string {
	return [...]string{aim.Out: "edge-out", aim.Water: "edge-water", aim.Trees: "edge-trees", aim.Bunker: "edge-bunker", aim.Rough: "edge-rough"}[kind]
}

// ticksOf marks every fifty yards from the tee.
func ticksOf(m *aim.Map, length float64) []YardMark {
	var all []YardMark
	for at := float64(tickFirst); at < length-tickEvery/2; at += tickEvery {
		left, right := m.Point(aim.Position{Along: at, Across: -3}), m.Point(aim.Position{Along: at, Across: 3})
		all = append(all, YardMark{Path: path([]aim.Point{left, right}, false), X: tenth(right.X + 1), Y: tenth(-right.Y + 2.5), Text: yards(at)})
	}
	return all
}

// sayings names ground beside the line where it can be read: not bunkers, whose dots
// say it, and no two words over each other.
func sayings(m *aim.Map, p aim.Picture, f frame) []Saying {
	var all []Saying
	var places []aim.Point
	for _, z := range p.Zones {
		if z.Kind == aim.Bunker {
			continue
		}
		s, at := sayingOf(m, z, f)
		crowded := false
		for _, other := range places {
			crowded = crowded || math.Abs(other.Y-at.Y) < sayApart && math.Abs(other.X-at.X) < 2*beside/3
		}
		if !crowded && at.Y > f.bottom+behindTee && at.Y < f.top-4 {
			all, places = append(all, s), append(places, at)
		}
	}
	return all
}

// sayingOf is the word for a zone: at the frame on its side, or in the middle.
func sayingOf(m *aim.Map, z aim.Zone, f frame) (Saying, aim.Point) {
	along := (max(z.From, 0) + min(z.To, m.Picture().Length)) / 2
	s := Saying{Text: kindWords[z.Kind], Anchor: "middle"}
	left, right := max(z.Left, -beside), min(z.Right, beside)
	at := m.Point(aim.Position{Along: along, Across: (left + right) / 2})
	switch {
	case z.Right < 0:
		at.X, s.Anchor = max(f.left+4, m.Point(aim.Position{Along: along, Across: left}).X+4), "start"
	case z.Left > 0:
		at.X, s.Anchor = min(f.right-4, m.Point(aim.Position{Along: along, Across: right}).X-4), "end"
	}
	s.X, s.Y = tenth(at.X), tenth(-at.Y)
	return s, at
}
