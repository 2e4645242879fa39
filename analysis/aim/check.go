package aim

import (
	"fmt"
	"math"

	"strokeledger/analysis/golf"
)

// The limits of a picture. Common practice: wide enough for every hole.
const (
	MaxBends  = 6
	MaxWidths = 40
	MaxZones  = 60

	maxLength   = 700 // yd, as golf.MaxDistance
	maxAlong    = 900 // yd from the tee, beyond the green
	minAlong    = -200
	maxAcross   = 500 // yd from the line
	maxHalf     = 150 // yd from the line to the edge of a fairway
	maxBend     = 90  // degrees of one bend
	maxTurned   = 180 // degrees of all bends together, whichever way
	minGreen    = 4   // yd
	maxGreen    = 120
	maxTurn     = 180 // degrees of a green
	greenAgrees = 60  // yd between the card's length and the middle of the green
)

// checker gathers faults.
type checker struct{ faults Faults }

func (c *checker) add(part string, row int, format string, args ...any) {
	c.faults = append(c.faults, Fault{Part: part, Row: row, What: fmt.Sprintf(format, args...)})
}

// where is a row of a part, 0 for the part itself, and field what stands there.
type where struct {
	part  string
	row   int
	field string
}

// limits are the ends of what is allowed.
type limits struct{ low, high float64 }

// within checks that a number is finite and inside its limits.
func (c *checker) within(at where, x float64, allowed limits) bool {
	if x >= allowed.low && x <= allowed.high {
		return true
	}
	c.add(at.part, at.row, "%s is %s; allowed: %s to %s", at.field, plain(x), plain(allowed.low), plain(allowed.high))
	return false
}

// Check returns everything about the picture that is not allowed.
func (p Picture) Check() Faults {
	var c checker
	if p.Par < golf.MinPar || p.Par > golf.MaxPar {
		c.add("par", 0, "%d; allowed: %d to %d", p.Par, golf.MinPar, golf.MaxPar)
	}
	if !(p.Length > 0 && p.Length <= maxLength) {
		c.add("length", 0, "%s; allowed: more than 0, at most %d", plain(p.Length), maxLength)
	}
	p.checkBends(&c)
	p.checkFairway(&c)
	p.checkZones(&c)
	p.checkGreen(&c)
	if len(c.faults) == 0 {
		p.checkPlayable(&c)
	}
	return c.faults
}

// checkPlayable checks that a ball can be in play at the tee, on most of the line to the
// green and at the green.
func (p Picture) checkPlayable(c *checker) {
	m := p.Map()
	outBy := func(along float64) (zone int, out bool) {
		spot := m.Spot(m.Point(Position{along, 0}))
		return spot.Zone, spot.Kind == Out
	}
	end := p.Length
	if p.Green.Drawn() {
		end = p.Green.Front + p.Green.reach(0)
	}
	if zone, out := outBy(0); out {
		c.add("zones", zone+1, "the tee is out of bounds; allowed: a tee in bounds")
		return
	}
	if zone, out := outBy(end); out {
		c.add("zones", zone+1, "the hole is out of bounds; allowed: a hole in bounds")
		return
	}
	const pieces = 200
	outs, last := 0, 0
	for i := range pieces {
		if zone, out := outBy(end * float64(i) / pieces); out {
			outs, last = outs+1, zone
		}
	}
	if outs > pieces/2 {
		c.add("zones", last+1, "%.0f of the %.0f yd of the line are out of bounds; allowed: at most half of them",
			end*float64(outs)/pieces, end)
	}
}

// checkBends checks that the line turns on the way to the green, and never back.
func (p Picture) checkBends(c *checker) {
	if len(p.Bends) > MaxBends {
		c.add("bends", 0, "%d of them; allowed: at most %d", len(p.Bends), MaxBends)
		return
	}
	last, turned := 0.0, 0.0
	for i, b := range p.Bends {
		c.within(where{"bends", i + 1, "the turn"}, b.Degrees, limits{-maxBend, maxBend})
		if c.within(where{"bends", i + 1, "the distance"}, b.At, limits{0, maxLength}) && b.At <= last {
			c.add("bends", i+1, "at %s yd; allowed: farther from the tee than %s", plain(b.At), plain(last))
		}
		last, turned = b.At, turned+math.Abs(b.Degrees)
	}
	if turned > maxTurned {
		c.add("bends", 0, "%s degrees in all; allowed: at most %d", plain(turned), maxTurned)
	}
}

// checkFairway checks that the points go from the tee to the green.
func (p Picture) checkFairway(c *checker) {
	if len(p.Fairway) > MaxWidths {
		c.add("fairway", 0, "%d points; allowed: at most %d", len(p.Fairway), MaxWidths)
		return
	}
	for i, w := range p.Fairway {
		c.within(where{"fairway", i + 1, "left"}, w.Left, limits{0, maxHalf})
		c.within(where{"fairway", i + 1, "right"}, w.Right, limits{0, maxHalf})
		if c.within(where{"fairway", i + 1, "the distance"}, w.At, limits{0, maxAlong}) && i > 0 && w.At <= p.Fairway[i-1].At {
			c.add("fairway", i+1, "at %s yd; allowed: farther from the tee than %s", plain(w.At), plain(p.Fairway[i-1].At))
		}
	}
	if len(p.Fairway) == 1 {
		c.add("fairway", 1, "the only point; allowed: two or more, or none")
	}
}

// checkZones checks kinds and ends.
func (p Picture) checkZones(c *checker) {
	if len(p.Zones) > MaxZones {
		c.add("zones", 0, "%d of them; allowed: at most %d", len(p.Zones), MaxZones)
		return
	}
	for i, z := range p.Zones {
		if z.Kind < Out || z.Kind > Rough {
			c.add("zones", i+1, "no kind; allowed: out, water, trees, bunker, rough")
		}
		c.stretch(i+1, "along", limits{z.From, z.To}, limits{minAlong, maxAlong})
		c.stretch(i+1, "across", limits{z.Left, z.Right}, limits{-maxAcross, maxAcross})
	}
}

// stretch checks the two ends of a zone in one direction; either may be open.
func (c *checker) stretch(row int, way string, ends, allowed limits) {
	sound := true
	if !math.IsInf(ends.low, -1) {
		sound = c.within(where{"zones", row, way + ", the first end"}, ends.low, allowed)
	}
	if !math.IsInf(ends.high, 1) {
		sound = c.within(where{"zones", row, way + ", the second end"}, ends.high, allowed) && sound
	}
	if sound && ends.low >= ends.high {
		c.add("zones", row, "%s from %s to %s; allowed: the smaller number first", way, plain(ends.low), plain(ends.high))
	}
}

// checkGreen checks a green and whether it is where the card has it.
func (p Picture) checkGreen(c *checker) {
	g := p.Green
	if !g.Drawn() {
		return
	}
	sound := c.within(where{"green", 0, "the front edge"}, g.Front, limits{0, maxLength})
	sound = c.within(where{"green", 0, "the width"}, g.Width, limits{minGreen, maxGreen}) && sound
	sound = c.within(where{"green", 0, "the depth"}, g.Depth, limits{minGreen, maxGreen}) && sound
	sound = c.within(where{"green", 0, "the turn"}, g.Turn, limits{-maxTurn, maxTurn}) && sound
	if middle := g.Front + g.reach(0); sound && math.Abs(middle-p.Length) > greenAgrees {
		c.add("green", 0, "its middle is %.0f yd from the tee and the hole is %s yd long; allowed: at most %d yd between them",
			middle, plain(p.Length), greenAgrees)
	}
}
