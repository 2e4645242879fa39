package aim

import (
	"cmp"
	"math"
	"slices"
)

// A side is called safe when the dearest side costs so much more, and others that
// cost at most half of that more than the safest are named with it. This program's
// choice.
const safeFrom = .2

// sides says what a miss on each side of the flag costs, and which side is safe.
func (a *Approach) sides(p *plane) {
	sw := p.casts[0].swing
	across, along := sw.mean()*sw.well[0].angle, sw.well[0].sd
	for _, s := range []struct {
		side Side
		turn float64
		sd   float64
	}{{LeftSide, -math.Pi / 2, across}, {RightSide, math.Pi / 2, across}, {ShortSide, math.Pi, along}, {LongSide, 0, along}} {
		a.Misses = append(a.Misses, Missed{s.side, p.missed(p.heading+s.turn, s.sd)})
	}
	slices.SortStableFunc(a.Misses, func(x, y Missed) int { return cmp.Compare(x.Strokes, y.Strokes) })
	best, worst := a.Misses[0].Strokes, a.Misses[len(a.Misses)-1].Strokes
	if worst-best < safeFrom {
		return
	}
	for _, m := range a.Misses {
		if m.Strokes < best+safeFrom/2 {
			a.Safe = append(a.Safe, m.Side)
		}
	}
}

// missed is the average cost of balls that end one to two spreads from the flag,
// within 30 degrees of a heading; one out of bounds costs a stroke and another
// approach.
func (p *plane) missed(towards, sd float64) float64 {
	sum, n := 0.0, 0
	for turn := -30.0; turn <= 30; turn += 10 {
		sin, cos := math.Sincos(towards + turn*math.Pi/180)
		for away := 1.0; away <= 2; away += .25 {
			r := away * sd
			end := p.t.end(p.start, Point{p.t.hole.X + r*sin, p.t.hole.Y + r*cos}, &entry{})
			sum += end.strokes + end.again*(1+p.look(0, 0))
			n++
		}
	}
	return sum / float64(n)
}
