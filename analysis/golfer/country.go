package golfer

import (
	"math"

	"strokeledger/analysis/golf"
)

// Country is the ground that a golfer's ball lands on where nobody has drawn it.
type Country struct{ ground ground }

// Country returns the ground of the golfer. On a hole whose green is drawn there is
// no other green, and on one whose fairway is drawn no other fairway but the fringe.
func (s Striker) Country(greenDrawn, fairwayDrawn bool) Country {
	g := s.skills.ground
	if greenDrawn {
		g.greenRadius = math.Inf(-1)
	}
	if fairwayDrawn {
		g.fairwayHalf, g.noFront = math.Inf(-1), true
	}
	return Country{g}
}

// Landing is how likely each lie is at a place, 0 to 1. With the penalty they add
// up to 1.
type Landing struct {
	Fairway, Rough, Bunker, Recovery, Green float64
	Penalty                                 float64 // see StrokeAndDistance
}

// At returns the chances of a ball that is short yards short of the hole along the
// line of play (negative past it), y yards off that line and r yards from the hole.
func (c *Country) At(short, y, r float64) Landing {
	var l landing
	c.ground.at(short, y, r, &l)
	return Landing{l.lie[golf.Fairway], l.lie[golf.Rough], l.lie[golf.Bunker], l.lie[golf.Recovery], l.lie[golf.Green], l.penalty}
}

// Stroke is a stroke off the green by what it tries for: a mixture of ways to
// strike the ball, the well-struck one first.
type Stroke struct {
	Target  float64  // yd
	Stays   float64  // chance that the ball hardly moves and stays in its lie
	Left    float64  // share of the distance that is then left
	Strikes []Strike // their shares add up to 1; not of the strokes that stay
}

// Stroke returns a stroke from lie that tries to go target yards.
func (s Striker) Stroke(lie golf.Lie, target float64) Stroke {
	f := s.skills.flightOf(lie, target, 0)
	stroke := Stroke{Target: target, Stays: f.stays, Left: f.left}
	for i, k := range f.parts {
		if i == 0 || k.share > 0 {
			stroke.Strikes = append(stroke.Strikes, Strike{k.share, k.mean, k.sd, k.angle})
		}
	}
	return stroke
}

// Target is how far the golfer tries to hit the ball from lie with the hole yd
// yards away.
func (s Striker) Target(lie golf.Lie, yd float64) float64 { return s.skills.target(lie, yd) }

// Reach is how far the golfer's longest sound stroke from lie goes, in yards.
func (s Striker) Reach(lie golf.Lie) float64 { return s.skills.reach[lie] }

// Holes is the chance that a ball struck so goes into a hole yd yards away and off
// radians to the side of where it was aimed.
func (k Strike) Holes(yd, off float64) float64 {
	return strike{k.Share, k.Mean, k.SD, k.Angle}.holes(yd, off)
}
