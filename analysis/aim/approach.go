package aim

import (
	"cmp"
	"math"
	"slices"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

// search is the part of the plane in which an approach's aims are looked for, in
// yards from where the straight one ends.
type search struct {
	side        int // to either side
	short, long int
}

// searchOf is where aims of a stroke of so many yards are looked for: in 4 yd steps.
func searchOf(target, reach float64) search {
	steps := func(yd float64) int { return coarse * int(math.Round(yd/coarse)) }
	s := search{steps(min(24, .25*target+4)), steps(min(20, .2*target+4)), steps(min(16, .12*target+4))}
	for s.long > 0 && target+float64(s.long) > reach {
		s.long--
	}
	return s
}

// plane looks for the best aim of an approach.
type plane struct {
	stance
	striker golfer.Striker
	pattern Pattern
	target  float64 // yd of the straight aim
	search  search
	casts   map[int]*cast
	costs   map[[2]int]float64
}

// newPlane takes a stance for an approach, which is not covered yet.
func newPlane(t *terrain, striker golfer.Striker, lie golf.Lie, start Point, pattern Pattern) *plane {
	p := &plane{striker: striker, pattern: pattern, casts: map[int]*cast{}, costs: map[[2]int]float64{}}
	p.stance = stance{t: t, start: start, lie: lie, yd: start.Distance(t.hole), heading: heading(start, t.hole)}
	p.target = striker.Target(lie, p.yd)
	p.search = searchOf(p.target, striker.Reach(lie))
	return p
}

// cover looks once at the places that planes with one start share; steps are in spreads.
func cover(step float64, counted bool, planes ...*plane) {
	var ends []swing
	reach := 0.0
	for _, p := range planes {
		short := p.swing(-p.search.short)
		ends = append(ends, short, p.swing(0), p.swing(p.search.long))
		reach = max(reach, (float64(p.search.side+coarse)+math.Abs(p.pattern.Side))/short.target)
	}
	first := planes[0]
	first.cover(ends, step, -reach, reach, counted)
	for _, p := range planes {
		p.well, p.bad = first.well, first.bad
	}
}

// swing is the stroke that goes so many yards farther than the straight one.
func (p *plane) swing(long int) swing {
	target := max(p.target+float64(long), 1)
	pattern := p.pattern
	pattern.Side *= target / p.target
	return newSwing(p.striker, p.lie, target, pattern)
}

// direction of an aim that is so far to the side of the line to the hole.
func direction(side int, target float64) float64 {
	return math.Asin(min(max(float64(side)/target, -1), 1))
}

// look is the cost of an aim.
func (p *plane) look(side, long int) float64 {
	at := [2]int{side, long}
	if cost, known := p.costs[at]; known {
		return cost
	}
	c, known := p.casts[long]
	if !known {
		made := p.cast(p.swing(long))
		c, p.casts[long] = &made, &made
	}
	cost := p.cost(c, direction(side, c.target))
	p.costs[at] = cost
	return cost
}

// seek looks at the plane, coarsely and then by the yard about the best. It returns
// the best aim: of those within tied, the one nearest to the flag.
func (p *plane) seek() (side, long int) {
	p.look(0, 0)
	bias := int(math.Round(p.pattern.Side))
	for long := -p.search.short; long <= p.search.long; long += coarse {
		for side := -p.search.side; side <= p.search.side; side += coarse {
			p.look(side-bias, long)
		}
	}
	at, _ := p.least()
	for long := at[1] - coarse + 1; long < at[1]+coarse; long++ {
		for side := at[0] - coarse + 1; side < at[0]+coarse; side++ {
			if long >= -p.search.short && long <= p.search.long {
				p.look(side, long)
			}
		}
	}
	at, cost := p.least()
	away := func(at [2]int) float64 { return math.Hypot(float64(at[0]+bias), float64(at[1])) }
	for other, c := range p.costs {
		if c <= cost+tied && (away(other) < away(at) || away(other) == away(at) && before(other, at)) {
			at = other
		}
	}
	return at[0], at[1]
}

// before puts places in an order, whatever order a map has them in.
func before(a, b [2]int) bool { return a[0] < b[0] || a[0] == b[0] && a[1] < b[1] }

// least is the cheapest aim that was looked at.
func (p *plane) least() (at [2]int, cost float64) {
	cost = math.Inf(1)
	for other, c := range p.costs {
		if c < cost || c == cost && before(other, at) {
			at, cost = other, c
		}
	}
	return at, cost
}

// aimAt is an aim with everything that is told of it.
func (p *plane) aimAt(side, long int) Aim {
	c := p.casts[long]
	a := p.aim(c, direction(side, c.target))
	a.Side, a.Long = float64(side), c.target*math.Cos(direction(side, c.target))-p.target
	return a
}

// approach is the best aim of an approach beside the flag.
func (p *plane) approach(from From) *Approach {
	side, long := p.seek()
	a := &Approach{From: from, Best: p.aimAt(side, long), Flag: p.aimAt(0, 0)}
	for at, cost := range p.costs {
		target := p.casts[at[1]].target
		a.Plane = append(a.Plane, Aimed{float64(at[0]), target*math.Cos(direction(at[0], target)) - p.target, cost})
	}
	slices.SortFunc(a.Plane, func(x, y Aimed) int {
		return cmp.Or(cmp.Compare(x.Long, y.Long), cmp.Compare(x.Side, y.Side))
	})
	a.sides(p)
	return a
}
