package aim

import "math"

// curved is into how many pieces the edge of a green is cut for drawing.
const curved = 48

// ZoneOutline is the edge of a zone, for drawing. Open ends are cut where the
// drawing ends: along from low to high, and so many yards to either side.
func (m *Map) ZoneOutline(z Zone, low, high, side float64) []Point {
	from, to := max(z.From, low), min(z.To, high)
	left, right := max(z.Left, -side), min(z.Right, side)
	if from >= to || left >= right {
		return nil
	}
	return m.strip([]Width{{from, -left, right}, {to, -left, right}})
}

// FairwayOutline is the edge of the drawn fairway; nil where there is none.
func (m *Map) FairwayOutline() []Point {
	if len(m.picture.Fairway) < 2 {
		return nil
	}
	return m.strip(m.picture.Fairway)
}

// strip is the edge of a strip along the line: up its left side, and down its
// right one. Bends are corners of it.
func (m *Map) strip(widths []Width) []Point {
	var up, down []Point
	add := func(w Width) {
		up = append(up, m.Point(Position{w.At, -w.Left}))
		down = append(down, m.Point(Position{w.At, w.Right}))
	}
	add(widths[0])
	for i := 1; i < len(widths); i++ {
		a, b := widths[i-1], widths[i]
		for _, bend := range m.picture.Bends {
			if bend.At > a.At && bend.At < b.At {
				w := (bend.At - a.At) / (b.At - a.At)
				at := Width{bend.At, a.Left + w*(b.Left-a.Left), a.Right + w*(b.Right-a.Right)}
				up, down = append(up, m.mitre(at.At, -at.Left)), append(down, m.mitre(at.At, at.Right))
			}
		}
		add(b)
	}
	for i := len(down) - 1; i >= 0; i-- {
		up = append(up, down[i])
	}
	return up
}

// mitre is where the edge of a strip turns at a bend: on the line that halves it.
func (m *Map) mitre(at, across float64) Point {
	i := 0
	for i < len(m.legs)-1 && m.legs[i].from < at {
		i++
	}
	before, after := m.legs[i-1], m.legs[i]
	x, y := before.dy+after.dy, -before.dx-after.dx
	length := math.Hypot(x, y)
	half := math.Hypot(before.dx+after.dx, before.dy+after.dy) / 2 // the cosine of half the bend
	reach := across / max(half, .5) / length
	return Point{after.start.X + reach*x, after.start.Y + reach*y}
}

// GreenOutline is the edge of the drawn green; nil where there is none.
func (m *Map) GreenOutline() []Point {
	if m.green == nil {
		return nil
	}
	e := m.green
	all := make([]Point, curved)
	for i := range all {
		angle := 2 * math.Pi * float64(i) / curved
		r := e.green.reach(angle)
		sin, cos := math.Sincos(angle)
		x, y := e.line.dx*cos+e.line.dy*sin, e.line.dy*cos-e.line.dx*sin
		all[i] = Point{e.middle.X + r*x, e.middle.Y + r*y}
	}
	return all
}
