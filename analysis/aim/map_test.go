package aim

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func near(a, b, within float64) bool { return math.Abs(a-b) <= within }

// A line that turns by 90 degrees: worked out by hand.
func TestPositionsByHand(t *testing.T) {
	m := Picture{Par: 4, Length: 300, Bends: []Bend{{200, 90}}}.Map()
	for _, c := range []struct {
		at Position
		is Point
	}{
		{Position{0, 0}, Point{0, 0}}, {Position{100, 20}, Point{20, 100}}, {Position{-10, -5}, Point{-5, -10}},
		{Position{250, 0}, Point{50, 200}}, {Position{250, 30}, Point{50, 170}}, {Position{250, -30}, Point{50, 230}},
	} {
		if p := m.Point(c.at); p.Distance(c.is) > 1e-9 {
			t.Errorf("%v is %v, want %v", c.at, p, c.is)
		}
		if at := m.Position(c.is); !near(at.Along, c.at.Along, 1e-9) || !near(at.Across, c.at.Across, 1e-9) {
			t.Errorf("%v is at %v, want %v", c.is, at, c.at)
		}
	}
	// Outside the corner every place is as far along as the bend.
	if at := m.Position(Point{-30, 240}); !near(at.Along, 200, 1e-9) || !near(at.Across, -50, 1e-9) {
		t.Errorf("outside the corner: %v", at)
	}
	line := m.CentreLine(300)
	if len(line) != 3 || line[2].Distance(Point{100, 200}) > 1e-9 {
		t.Errorf("centre line %v", line)
	}
}

// Near the line, position and place are each other's inverse.
func TestPositionIsTheInverseOfPoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := drawn().Draw(t, "picture").Map()
		at := Position{rapid.Float64Range(-50, 600).Draw(t, "along"), rapid.Float64Range(-.5, .5).Draw(t, "across")}
		for _, b := range m.picture.Bends {
			if near(at.Along, b.At, 2) {
				return // inside a bend several positions are one place
			}
		}
		p := m.Point(at)
		got := m.Position(p)
		if math.Abs(got.Across) > math.Abs(at.Across)+1e-9 {
			t.Fatalf("%v came back as %v", at, got)
		}
		if back := m.Point(got); back.Distance(p) > 1e-6 {
			t.Fatalf("%v is %v away", at, back.Distance(p))
		}
	})
}

func TestSpots(t *testing.T) {
	p := dogleg()
	p.Bends = nil
	m := p.Map()
	for _, c := range []struct {
		x, y float64
		want Spot
	}{
		{0, 415, Spot{OnGreen, -1}},
		{0, 305, Spot{Rough, 5}},       // the last zone lies over the fairway
		{20, 240, Spot{Bunker, 3}},     //
		{-20, 240, Spot{Out, 1}},       // the second stretch of the boundary
		{-20, 200, Spot{0, -1}},        // inside the first
		{-40, 200, Spot{Out, 0}},       //
		{70, 200, Spot{Water, 4}},      // over the trees
		{50, 200, Spot{Trees, 2}},      //
		{15, 165, Spot{OnFairway, -1}}, //
		{0, 164, Spot{0, -1}},          // before the first point
		{-13.4, 255, Spot{OnFairway, -1}},
		{-13.6, 255, Spot{0, -1}}, // half way between 15 and 12
	} {
		if got := m.Spot(Point{c.x, c.y}); got != c.want {
			t.Errorf("(%g, %g): %v, want %v", c.x, c.y, got, c.want)
		}
	}
}

// The green to work with of a round green of radius 10: worked out by hand.
func TestGreenToWorkWith(t *testing.T) {
	m := Picture{Par: 3, Length: 150, Green: Green{140, 20, 20, 0}}.Map()
	hole := m.Hole(Flag{16, 0}) // 6 yd beyond the middle
	if hole.Distance(Point{0, 156}) > 1e-9 {
		t.Fatalf("the hole is at %v", hole)
	}
	for _, c := range []struct {
		from Point
		want float64
	}{{Point{0, 120}, 16}, {Point{0, 180}, 4}, {Point{30, 156}, 8}, {Point{-30, 156}, 8}, {Point{0, 150}, 6}} {
		if got, ok := m.GreenToWork(c.from, hole); !ok || !near(got, c.want, 1e-9) {
			t.Errorf("from %v: %g, want %g", c.from, got, c.want)
		}
	}
	if _, ok := (Picture{Par: 3, Length: 150}).Map().GreenToWork(Point{}, Point{0, 150}); ok {
		t.Error("green to work with on a green that is not drawn")
	}
}

func TestTurnedGreen(t *testing.T) {
	p := Picture{Par: 4, Length: 400, Bends: []Bend{{200, 30}}, Green: Green{390, 12, 30, 25}}
	m := p.Map()
	front := m.Point(Position{390, 0})
	if u, v := m.green.scaled(front); !near(math.Hypot(u, v), 1, 1e-9) {
		t.Errorf("the front edge is %g", math.Hypot(u, v))
	}
	for i, corner := range m.GreenOutline() {
		if u, v := m.green.scaled(corner); !near(math.Hypot(u, v), 1, 1e-9) {
			t.Errorf("point %d of the edge is at %g", i, math.Hypot(u, v))
		}
	}
	// Turned clockwise, its far end is to the right of the line.
	far := m.Hole(p.Green.At(FlagPlace{"middle", "middle"}))
	sin, cos := math.Sincos(55 * math.Pi / 180)
	end := Point{far.X + 14*sin, far.Y + 14*cos}
	if m.Spot(end).Kind != OnGreen || m.Position(end).Across <= 0 {
		t.Errorf("the far end is %v at %v", m.Spot(end), m.Position(end))
	}
}

func TestNinePlaces(t *testing.T) {
	g := Green{390, 26, 30, 20}
	m := Picture{Par: 4, Length: 405, Green: g}.Map()
	for _, place := range FlagPlaces {
		f := g.At(place)
		at := m.Position(m.Hole(f))
		if !g.Holds(f) || m.Spot(m.Hole(f)).Kind != OnGreen {
			t.Errorf("%v: %v is not on the green", place, f)
		}
		for _, wrong := range []bool{place.Side == "left" && at.Across >= -4, place.Side == "right" && at.Across <= 4,
			place.Side == "middle" && !near(at.Across, 0, 1e-9), place.Row == "front" && f.On >= g.Middle().On-4, place.Row == "back" && f.On <= g.Middle().On+4} {
			if wrong {
				t.Errorf("%v is at %v, %v", place, f, at)
			}
		}
	}
	if g.Holds(Flag{-1, 0}) || g.Holds(Flag{15, 14}) {
		t.Error("a flag off the green")
	}
}

func TestOutlinesBend(t *testing.T) {
	m := Picture{Par: 4, Length: 400, Bends: []Bend{{200, 60}}, Fairway: []Width{{150, 10, 10}, {300, 20, 10}}}.Map()
	edge := m.FairwayOutline()
	if len(edge) != 6 {
		t.Fatalf("%d points", len(edge))
	}
	for _, p := range edge[1:2] {
		if at := m.Position(p); !near(at.Along, 200, 1e-9) || at.Across > -13 {
			t.Errorf("the corner is at %v", at)
		}
	}
	if zone := m.ZoneOutline(Zone{Out, -inf, inf, 30, inf}, -10, 420, 60); len(zone) != 6 || zone[0].Distance(Point{30, -10}) > 1e-9 {
		t.Errorf("%v", zone)
	}
	if m.ZoneOutline(Zone{Out, 500, 600, 1, 2}, 0, 420, 60) != nil || m.GreenOutline() != nil {
		t.Error("an outline outside the drawing")
	}
}
