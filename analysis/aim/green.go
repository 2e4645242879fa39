package aim

import "math"

// reach is how far the edge is from the middle in a direction, in yards; the
// direction is in radians, clockwise from along the line.
func (g Green) reach(direction float64) float64 {
	sin, cos := math.Sincos(direction - g.Turn*math.Pi/180)
	along, across := cos/(g.Depth/2), sin/(g.Width/2)
	return 1 / math.Hypot(along, across)
}

// ellipse is a drawn green in the plan.
type ellipse struct {
	green  Green
	middle Point
	line   leg     // the leg of the centre line at its middle
	half   float64 // yd from the front edge to the middle on the line

	// A point is on the green where the length of (ax·x + ay·y, bx·x + by·y),
	// measured from the middle, is at most 1.
	ax, ay, bx, by float64
}

func newEllipse(g Green, m *Map) *ellipse {
	e := &ellipse{green: g, half: g.reach(0)}
	middle := g.Front + e.half
	e.line, e.middle = m.leg(middle), m.Point(Position{middle, 0})
	sin, cos := math.Sincos(g.Turn * math.Pi / 180)
	dx, dy := e.line.dx*cos+e.line.dy*sin, e.line.dy*cos-e.line.dx*sin // the green's own depth
	e.ax, e.ay, e.bx, e.by = dx/(g.Depth/2), dy/(g.Depth/2), dy/(g.Width/2), -dx/(g.Width/2)
	return e
}

// scaled is where a point is when the green is the disc of radius 1.
func (e *ellipse) scaled(p Point) (u, v float64) {
	x, y := p.X-e.middle.X, p.Y-e.middle.Y
	return e.ax*x + e.ay*y, e.bx*x + e.by*y
}

// holds reports whether a point is on the green.
func (e *ellipse) holds(p Point) bool {
	u, v := e.scaled(p)
	return u*u+v*v <= 1
}

// toWork is the green between its edge and the hole on the line from a point, in
// yards: the whole distance from a point on the green.
func (e *ellipse) toWork(from, hole Point) float64 {
	u, v := e.scaled(hole)
	fu, fv := e.scaled(from)
	du, dv := fu-u, fv-v
	// The share of the way from the hole to the ball at which the edge is crossed.
	a, b, c := du*du+dv*dv, u*du+v*dv, u*u+v*v-1
	if a == 0 || c > 0 {
		return 0
	}
	share := (-b + math.Sqrt(b*b-a*c)) / a
	return min(share, 1) * hole.Distance(from)
}

// Flag is where the hole is cut on a drawn green, in yards.
type Flag struct {
	On   float64 // on from the front edge, as the line of play runs
	Side float64 // from the middle, right positive
}

// FlagPlace names one of nine places of the hole.
type FlagPlace struct {
	Row  string // "front", "middle" or "back"
	Side string // "left", "middle" or "right"
}

// FlagPlaces are the nine places, from front left to back right.
var FlagPlaces = []FlagPlace{
	{"front", "left"}, {"front", "middle"}, {"front", "right"},
	{"middle", "left"}, {"middle", "middle"}, {"middle", "right"},
	{"back", "left"}, {"back", "middle"}, {"back", "right"},
}

// tucked is how far from the edge a hole in one of the outer places is cut, in
// yards: four paces, the least that committees are advised to keep (USGA, how to
// set up a course; from memory). On a small green it is half way out.
const tucked = 4

// At is where the hole is cut in a place of this green.
func (g Green) At(place FlagPlace) Flag {
	half, wide := g.reach(0), g.reach(math.Pi/2)
	on := map[string]float64{"front": -half, "back": half}[place.Row]
	side := map[string]float64{"left": -wide, "right": wide}[place.Side]
	away := math.Hypot(on, side)
	if away == 0 {
		return Flag{half, 0}
	}
	edge := g.reach(math.Atan2(side, on))
	inside := max(edge-tucked, edge/2) / away
	return Flag{half + on*inside, side * inside}
}

// Middle is the hole in the middle of the green.
func (g Green) Middle() Flag { return Flag{On: g.reach(0)} }

// Holds reports whether a flag is on the green.
func (g Green) Holds(f Flag) bool {
	on, side := f.On-g.reach(0), f.Side
	return math.Hypot(on, side) <= g.reach(math.Atan2(side, on))
}

// Hole is the place of the hole. Where no green is drawn it is at the end of the
// card's length, whatever the flag.
func (m *Map) Hole(f Flag) Point {
	if m.green == nil {
		return m.Point(Position{m.picture.Length, 0})
	}
	e := m.green
	x, y := e.line.dx, e.line.dy
	on := f.On - e.half
	return Point{e.middle.X + on*x + f.Side*y, e.middle.Y + on*y - f.Side*x}
}

// GreenToWork is the green between its edge and the hole on the line from a place
// off the green, in yards. ok is false where no green is drawn.
func (m *Map) GreenToWork(from, hole Point) (yd float64, ok bool) {
	if m.green == nil {
		return 0, false
	}
	return m.green.toWork(from, hole), true
}
