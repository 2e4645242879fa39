package aim

// Spot is what a picture says of a place.
type Spot struct {
	Kind Kind // 0 where nothing is drawn
	Zone int  // place of the zone in the picture, from 0; -1 where it is none
}

// Spot says what is drawn at a place: the green; else the last zone that holds it;
// else the fairway; else nothing.
func (m *Map) Spot(p Point) Spot { return m.spot(p, m.Position(p)) }

func (m *Map) spot(p Point, at Position) Spot {
	if m.green != nil && m.green.holds(p) {
		return Spot{OnGreen, -1}
	}
	for i := len(m.picture.Zones) - 1; i >= 0; i-- {
		if m.picture.Zones[i].holds(at) {
			return Spot{m.picture.Zones[i].Kind, i}
		}
	}
	if left, right, ok := m.picture.FairwayAt(at.Along); ok && at.Across >= -left && at.Across <= right {
		return Spot{OnFairway, -1}
	}
	return Spot{0, -1}
}

// holds reports whether a position is in the zone, its edges included.
func (z *Zone) holds(at Position) bool {
	return at.Along >= z.From && at.Along <= z.To && at.Across >= z.Left && at.Across <= z.Right
}

// FairwayAt is how far the edges of the drawn fairway are from the line at a
// distance from the tee. ok is false where there is none.
func (p *Picture) FairwayAt(along float64) (left, right float64, ok bool) {
	for i := 1; i < len(p.Fairway); i++ {
		a, b := p.Fairway[i-1], p.Fairway[i]
		if along >= a.At && along <= b.At {
			w := (along - a.At) / (b.At - a.At)
			return a.Left + w*(b.Left-a.Left), a.Right + w*(b.Right-a.Right), true
		}
	}
	return 0, 0, false
}
