package aim

import (
	"math"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

// terrain is a hole as a ball finds it: what is drawn, what the golfer meets where
// nothing is, and what a place is worth.
type terrain struct {
	m       *Map
	hole    Point
	along   float64 // yd from the tee to the hole along the line
	country golfer.Country
	worth   *expect.Baseline // without what the published table adds, so that strokes and their worth are one golfer's
	side    *greenSide       // nil where the picture's green side is not counted
}

// newTerrain lays a picture out for the golfer whose strokes land on it.
func newTerrain(m *Map, hole Point, lands golfer.Striker, worth *expect.Baseline) *terrain {
	return &terrain{
		m: m, hole: hole, along: m.Position(hole).Along, worth: worth,
		country: lands.Country(m.green != nil, len(m.picture.Fairway) > 0),
	}
}

// ending is what follows when a ball comes to rest: strokes to come, penalties
// included, unless the stroke is played again; the chance of that; and what it
// counts for.
type ending struct {
	strokes float64
	again   float64
	shares  Shares
}

// entry is where the last ball in a direction went into water, if it did.
type entry struct {
	into    *Zone   // nil when it did not
	strokes float64 // to come from the drop
}

// end is what follows when a ball struck from a place comes to rest at another. A
// ball that goes farther in the direction of the last one, and ends in the same
// water, went into it at the same place.
func (t *terrain) end(from, p Point, last *entry) ending {
	at := t.m.Position(p)
	spot := t.m.spot(p, at)
	if spot.Kind != Water {
		last.into = nil
	}
	switch spot.Kind {
	case OnGreen:
		return ending{strokes: t.putts(p), shares: Shares{Green: 1}}
	case OnFairway:
		return t.off(golf.Fairway, p, Shares{Fairway: 1})
	case Rough:
		return t.off(golf.Rough, p, Shares{Rough: 1})
	case Bunker:
		return t.off(golf.Bunker, p, Shares{Bunker: 1})
	case Trees:
		return t.off(golf.Recovery, p, Shares{Trees: 1})
	case Out:
		return ending{again: 1, shares: Shares{Out: 1}}
	case Water:
		if zone := &t.m.picture.Zones[spot.Zone]; zone != last.into {
			last.into = zone
			last.strokes, _ = t.strokes(golf.Rough, t.m.crossing(from, p, zone))
		}
		return ending{strokes: 1 + last.strokes, shares: Shares{Water: 1}}
	}
	return t.undrawn(p, at)
}

// off is a ball at rest off the green.
func (t *terrain) off(lie golf.Lie, p Point, shares Shares) ending {
	e, tight := t.strokes(lie, p)
	if tight {
		shares.ShortSided = 1
	}
	return ending{strokes: e, shares: shares}
}

// undrawn is a ball at rest where nothing is drawn.
func (t *terrain) undrawn(p Point, at Position) ending {
	yd := p.Distance(t.hole)
	l := t.country.At(t.along-at.Along, at.Across, yd)
	e := ending{again: l.Penalty * golfer.StrokeAndDistance, shares: Shares{Green: l.Green, Penalty: l.Penalty}}
	if l.Green > 0 {
		e.strokes = l.Green * t.worth.Strokes(golf.Green, golf.Yards.Of(yd))
	}
	if drop := l.Penalty - e.again; drop > 0 {
		rough, _ := t.strokesAt(golf.Rough, p, yd)
		e.strokes += drop * (1 + rough)
	}
	for _, part := range [...]struct {
		lie    golf.Lie
		chance float64
		count  *float64
	}{{golf.Fairway, l.Fairway, &e.shares.Fairway}, {golf.Rough, l.Rough, &e.shares.Rough},
		{golf.Bunker, l.Bunker, &e.shares.Bunker}, {golf.Recovery, l.Recovery, &e.shares.Trees}} {
		if part.chance == 0 {
			continue
		}
		strokes, tight := t.strokesAt(part.lie, p, yd)
		e.strokes += part.chance * strokes
		*part.count += part.chance
		if tight {
			e.shares.ShortSided += part.chance
		}
	}
	return e
}

// putts are the strokes from a place on the green.
func (t *terrain) putts(p Point) float64 {
	return t.worth.Strokes(golf.Green, golf.Yards.Of(p.Distance(t.hole)))
}

// nearGreen is how far from the hole the picture's green side begins to count in
// full, in yards; within golf.MaxShortSided the green to work with counts instead.
const nearGreen = 40

// strokes are those from a place off the green, and whether there is too little
// green to work with.
func (t *terrain) strokes(lie golf.Lie, p Point) (strokes float64, tight bool) {
	return t.strokesAt(lie, p, p.Distance(t.hole))
}

// strokesAt is the same with the distance to the hole known.
func (t *terrain) strokesAt(lie golf.Lie, p Point, yd float64) (strokes float64, tight bool) {
	d := golf.Yards.Of(yd)
	if d > golf.MaxShortSided {
		return t.worth.Strokes(lie, d) + t.side.adds(lie, yd), false
	}
	if t.m.green == nil {
		return t.worth.Strokes(lie, d), false
	}
	shot := golf.Shot{Lie: lie, Distance: d, GreenToWork: golf.Yards.Of(t.m.green.toWork(p, t.hole)), GreenKnown: true}
	return t.worth.Shot(shot), shot.Shortfall() > 0
}

// crossing is where the line of flight from one place to another, which is in the
// zone, last enters it; the first place when that is in it too.
func (m *Map) crossing(from, to Point, z *Zone) Point {
	at := func(share float64) Point {
		return Point{from.X + share*(to.X-from.X), from.Y + share*(to.Y-from.Y)}
	}
	inside, outside := 1.0, 0.0
	if len(m.legs) == 1 {
		return at(z.enters(Position{from.Y, from.X}, Position{to.Y, to.X}))
	}
	const pieces = 12 // a strip of land narrower than a twelfth of the flight may be missed
	for i := 1; ; i++ {
		share := 1 - float64(i)/pieces
		if i > pieces {
			return from
		}
		if !z.holds(m.Position(at(share))) {
			outside = share
			break
		}
		inside = share
	}
	for range 12 {
		middle := (inside + outside) / 2
		if z.holds(m.Position(at(middle))) {
			inside = middle
		} else {
			outside = middle
		}
	}
	return at(inside)
}

// enters is the share of the straight way between two positions at which it enters
// the zone that the second is in.
func (z *Zone) enters(from, to Position) float64 {
	share := 0.0
	for _, edge := range [...]struct{ from, to, low, high float64 }{
		{from.Along, to.Along, z.From, z.To}, {from.Across, to.Across, z.Left, z.Right},
	} {
		if edge.from < edge.low {
			share = max(share, (edge.low-edge.from)/(edge.to-edge.from))
		}
		if edge.from > edge.high {
			share = max(share, (edge.high-edge.from)/(edge.to-edge.from))
		}
	}
	return math.Min(share, 1)
}
