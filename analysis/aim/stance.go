package aim

import (
	"math"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

// stance is a place to play from with all that may follow.
type stance struct {
	t       *terrain
	heading float64 // rad clockwise from up, of direction 0
	start   Point
	lie     golf.Lie
	yd      float64 // to the hole
	to      float64 // rad from the heading to the hole
	adds    float64 // strokes that the published table adds here to the golfer

	well, bad *lattice // where balls struck well and badly may end; bad is nil where none is
}

// cover looks at the places where some swings may end, from as far to the left of
// the heading to as far to the right. Steps are in spreads. A ball struck badly
// spreads wider, so that its places are farther apart.
func (s *stance) cover(swings []swing, step float64, leftmost, rightmost float64, counted bool) {
	var well, bad []part
	for i := range swings {
		well, bad = append(well, swings[i].well...), append(bad, swings[i].bad...)
	}
	s.well = newLattice(s.t, s.start, s.heading, spanned(well, step, leftmost, rightmost, counted))
	if len(bad) > 0 {
		s.bad = newLattice(s.t, s.start, s.heading, spanned(bad, step, leftmost, rightmost, counted))
	}
}

// cast is a swing whose lengths are summed up over a stance.
type cast struct {
	swing
	well, bad folded // bad is empty where no ball is struck badly
}

// cast sums a swing up.
func (s *stance) cast(sw swing) cast {
	c := cast{swing: sw, well: s.well.fold(sw.well)}
	if len(sw.bad) > 0 {
		c.bad = s.bad.fold(sw.bad)
	}
	return c
}

// cost is what an aim costs, by its direction from the heading. Out of bounds the
// stroke is played again, so that the cost would be part of itself:
// C = 1 + sum + again (1 + C). As rounds are played, the last of so many balls that all
// went out is followed by a drop.
func (s *stance) cost(c *cast, direction float64) float64 {
	direction += c.bias
	strokes, again := s.well.turned(&c.well, direction)
	if len(c.swing.bad) > 0 {
		more, once := s.bad.turned(&c.bad, direction)
		strokes, again = strokes+more, again+once
	}
	clean := s.clean(&c.swing, direction)
	strokes, again = c.stays*s.stayed(&c.swing)+clean*strokes, clean*again
	balls, out := 0.0, 1.0
	for range golfer.MostAgain {
		balls += out
		out *= again
	}
	total := balls*(1+strokes+again) + s.adds
	if out > 1e-9 {
		total += out * s.dropped()
	}
	return total
}

// dropped are the strokes to come from the drop after the last ball that went out.
func (s *stance) dropped() float64 {
	at, lie := golfer.Dropped(golfer.Place(s.start), golfer.Place(s.t.hole))
	if lie == golf.Green {
		return s.t.putts(Point(at))
	}
	strokes, _ := s.t.strokes(lie, Point(at))
	return strokes
}

// clean is the chance that a ball neither stays nor goes in.
func (s *stance) clean(sw *swing, direction float64) float64 {
	return (1 - sw.stays) * (1 - sw.holed(s.yd, s.to-direction))
}

// stayed are the strokes from where a ball lies that hardly moved.
func (s *stance) stayed(sw *swing) float64 {
	if sw.stays == 0 {
		return 0
	}
	x, y := s.start.X-s.t.hole.X, s.start.Y-s.t.hole.Y
	e, _ := s.t.strokes(s.lie, Point{s.t.hole.X + x*sw.left, s.t.hole.Y + y*sw.left})
	return e
}

// aim is an aim with everything that is told of it.
func (s *stance) aim(c *cast, direction float64) Aim {
	way := direction + c.bias
	a := Aim{
		Target: s.at(c.target, direction), Ends: s.at(c.mean(), way), Cost: s.cost(c, direction),
		SideSD: c.mean() * c.swing.well[0].angle, LongSD: c.swing.well[0].sd,
	}
	clean := s.clean(&c.swing, way)
	a.Shares = a.Shares.plus(s.well.shared(c.swing.well, way), clean)
	if len(c.swing.bad) > 0 {
		a.Shares = a.Shares.plus(s.bad.shared(c.swing.bad, way), clean)
	}
	a.Shares.Green += 1 - c.stays - clean
	s.stay(&a.Shares, c.stays)
	return a
}

// stay counts the balls that stay in their lie.
func (s *stance) stay(shares *Shares, chance float64) {
	*map[golf.Lie]*float64{golf.Tee: &shares.Fairway, golf.Fairway: &shares.Fairway, golf.Rough: &shares.Rough,
		golf.Bunker: &shares.Bunker, golf.Recovery: &shares.Trees}[s.lie] += chance
}

// at is the place so far away in a direction.
func (s *stance) at(yd, direction float64) Point {
	sin, cos := math.Sincos(s.heading + direction)
	return Point{s.start.X + yd*sin, s.start.Y + yd*cos}
}

// heading is the direction from one place to another, in radians clockwise from up.
func heading(from, to Point) float64 { return math.Atan2(to.X-from.X, to.Y-from.Y) }

// steps are how finely a stroke is cast: in spreads.
const (
	fineStep  = .06
	roughStep = .25
)

// spanned is how far some parts reach, about directions as far from the heading as
// leftmost and rightmost.
func spanned(parts []part, step, leftmost, rightmost float64, counted bool) extent {
	lengths, angles := span{math.Inf(1), 0, math.Inf(1)}, span{leftmost, rightmost, math.Inf(1)}
	widest := 0.0
	for _, p := range parts {
		lengths.low, lengths.high = min(lengths.low, p.mean-reachOfPattern*p.sd), max(lengths.high, p.mean+reachOfPattern*p.sd)
		lengths.step = min(lengths.step, step*p.sd)
		angles.step = min(angles.step, step*p.angle)
		widest = max(widest, reachOfPattern*p.angle)
	}
	lengths.low = max(lengths.low, 0)
	angles.low, angles.high = max(angles.low-widest, -math.Pi), min(angles.high+widest, math.Pi)
	return extent{lengths, angles, counted}
}
