package aim

import "math"

// Point is a place in the plan, in yards: X right of the tee, Y beyond it.
type Point struct{ X, Y float64 }

// Distance is how far apart two points are, in yards.
func (p Point) Distance(q Point) float64 { return math.Hypot(q.X-p.X, q.Y-p.Y) }

// Position is a place by the centre line, in yards: how far along it from the tee,
// and how far across it, right positive.
type Position struct{ Along, Across float64 }

// Map is a picture made ready for measuring. It never changes and may be shared
// between goroutines.
type Map struct {
	picture Picture
	legs    []leg
	green   *ellipse // nil where none is drawn
}

// leg is a straight piece of the centre line.
type leg struct {
	from   float64 // yd along the line where it begins
	length float64 // yd; the last one goes on for ever
	start  Point
	dx, dy float64 // its direction
}

// Map makes a picture ready. The picture must be one that Check finds no fault
// with.
func (p Picture) Map() *Map {
	m := &Map{picture: p}
	at, heading, start := 0.0, 0.0, Point{}
	for _, b := range p.Bends {
		l := newLeg(at, b.At-at, heading, start)
		m.legs = append(m.legs, l)
		at, heading, start = b.At, heading+b.Degrees*math.Pi/180, l.at(l.length, 0)
	}
	m.legs = append(m.legs, newLeg(at, math.Inf(1), heading, start))
	if p.Green.Drawn() {
		m.green = newEllipse(p.Green, m)
	}
	return m
}

// newLeg makes a leg with a heading in radians, clockwise from straight up.
func newLeg(from, length, heading float64, start Point) leg {
	dx, dy := math.Sincos(heading)
	return leg{from, length, start, dx, dy}
}

// at is the place so far along a leg and so far to its right.
func (l leg) at(along, across float64) Point {
	return Point{l.start.X + along*l.dx + across*l.dy, l.start.Y + along*l.dy - across*l.dx}
}

// Picture returns the picture that was made ready.
func (m *Map) Picture() Picture { return m.picture }

// leg is the piece of the line at a distance from the tee.
func (m *Map) leg(along float64) leg {
	i := len(m.legs) - 1
	for i > 0 && along < m.legs[i].from {
		i--
	}
	return m.legs[i]
}

// Point is the place at a position. Near the inside of a bend several positions
// are the same place.
func (m *Map) Point(p Position) Point {
	l := m.leg(p.Along)
	return l.at(p.Along-l.from, p.Across)
}

// Position is where a place is by the centre line: at the nearest point of it.
// Before the tee and beyond the last bend the line goes straight on.
func (m *Map) Position(p Point) Position {
	best, nearest := Position{}, math.Inf(1)
	for i, l := range m.legs {
		x, y := p.X-l.start.X, p.Y-l.start.Y
		along, across := x*l.dx+y*l.dy, x*l.dy-y*l.dx
		if len(m.legs) == 1 {
			return Position{along, across}
		}
		on := min(along, l.length)
		if i > 0 {
			on = max(on, 0)
		}
		if away := (along-on)*(along-on) + across*across; away < nearest {
			nearest, best = away, Position{l.from + on, across}
		}
	}
	best.Across = math.Copysign(math.Sqrt(nearest), best.Across)
	return best
}

// CentreLine is the line from the tee to so many yards along it: its ends and its
// bends.
func (m *Map) CentreLine(to float64) []Point {
	var all []Point
	for _, l := range m.legs {
		if l.from >= to && len(all) > 0 {
			break
		}
		all = append(all, l.start)
	}
	return append(all, m.Point(Position{to, 0}))
}
