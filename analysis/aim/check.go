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

// within checks that a number is finite and inside its limits.
func (c *checker) within(part string, row int, field string, x, low, high float64) bool {
	if x >= low && x <= high {
		return true
	}
	c.add(part, row, "%s is %s; allowed: %s to %s", field, plain(x), plain(low), plain(high))
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
	return c.faults
}

func (p Picture) checkBends(c *checker) {
	if len(p.Bends) > MaxBends {
		c.add("bends", 0, "%d of them; allowed: at most %d", len(p.Bends), MaxBends)
		return
	}
	last, turned := 0.0, 0.0
	for i, b := range p.Bends {
		c.within("bends", i+1, "the turn", b.Degrees, -maxBend, maxBend)
		if c.within("bends", i+1, "the distance", b.At, 0, maxLength) && b.At <= last {
			c.add("bends", i+1, "at %s yd; allowed: farther from the tee than %s", plain(b.At), plain(last))
		}
		last, turned = b.At, turned+math.Abs(b.Degrees)
	}
	if turned > maxTurned {
		c.add("bends", 0, "%s degrees in all; allowed: at most %d", plain(turned), maxTurned)
	}
}

func (p Picture) checkFairway(c *checker) {
	if len(p.Fairway) > MaxWidths {
		c.add("fairway", 0, "%d points; allowed: at most %d", len(p.Fairway), MaxWidths)
		return
	}
	for i, w := range p.Fairway {
		c.within("fairway", i+1, "left", w.Left, 0, maxHalf)
		c.within("fairway", i+1, "right", w.Right, 0, maxHalf)
		if c.within("fairway", i+1, "the distance", w.At, 0, maxAlong) && i > 0 && w.At <= p.Fairway[i-1].At {
			c.add("fairway", i+1, "at %s yd; allowed: farther from the tee than %s", plain(w.At), plain(p.Fairway[i-1].At))
		}
	}
	if len(p.Fairway) == 1 {
		c.add("fairway", 1, "the only point; allowed: two or more, or none")
	}
}

func (p Picture) checkZones(c *checker) {
	if len(p.Zones) > MaxZones {
		c.add("zones", 0, "%d of them; allowed: at most %d", len(p.Zones), MaxZones)
		return
	}
	for i, z := range p.Zones {
		if z.Kind < Out || z.Kind > Rough {
			c.add("zones", i+1, "no kind; allowed: out, water, trees, bunker, rough")
		}
		c.stretch(i+1, "along", z.From, z.To, minAlong, maxAlong)
		c.stretch(i+1, "across", z.Left, z.Right, -maxAcross, maxAcross)
	}
}

// stretch checks the two ends of a zone in one direction; either may be open.
func (c *checker) stretch(row int, way string, from, to, low, high float64) {
	sound := true
	if !math.IsInf(from, -1) {
		sound = c.within("zones", row, way+", the first end", from, low, high)
	}
	if !math.IsInf(to, 1) {
		sound = c.within("zones", row, way+", the second end", to, low, high) && sound
	}
	if sound && from >= to {
		c.add("zones", row, "%s from %s to %s; allowed: the smaller number first", way, plain(from), plain(to))
	}
}

func (p Picture) checkGreen(c *checker) {
	g := p.Green
	if !g.Drawn() {
		return
	}
	sound := c.within("green", 0, "the front edge", g.Front, 0, maxLength)
	sound = c.within("green", 0, "the width", g.Width, minGreen, maxGreen) && sound
	sound = c.within("green", 0, "the depth", g.Depth, minGreen, maxGreen) && sound
	sound = c.within("green", 0, "the turn", g.Turn, -maxTurn, maxTurn) && sound
	if middle := g.Front + g.reach(0); sound && math.Abs(middle-p.Length) > greenAgrees {
		c.add("green", 0, "its middle is %.0f yd from the tee and the hole is %s yd long; allowed: at most %d yd between them",
			middle, plain(p.Length), greenAgrees)
	}
}
