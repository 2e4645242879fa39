package aim

import (
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

// swing is a stroke of a player as it is cast over a hole.
type swing struct {
	target      float64 // yd that is tried for
	stays, left float64 // as in golfer.Stroke
	well, bad   []part  // bad ones spread alike in direction
	bias        float64 // rad to the right of the aim
}

// mostBad is the most of all balls that a player is taken to strike badly.
const mostBad = .7

// newSwing is the player's stroke from a lie that tries for target yards.
func newSwing(s golfer.Striker, lie golf.Lie, target float64, p Pattern) swing {
	stroke := s.Stroke(lie, target)
	sw := swing{target: target, stays: stroke.Stays, left: stroke.Left, bias: p.Side / target}
	wide, deep, often := factor(p.Wide), factor(p.Deep), factor(p.Bad)
	bad := 0.0
	for _, k := range stroke.Strikes[1:] {
		bad += k.Share
	}
	if bad > 0 {
		often = min(often, mostBad/bad)
	}
	for _, k := range stroke.Strikes[1:] {
		sw.bad = append(sw.bad, part{k.Share * often, k.Mean, k.SD, k.Angle * wide})
	}
	well := stroke.Strikes[0]
	sw.well = []part{{1 - bad*often, well.Mean + p.Long, well.SD * deep, well.Angle * wide}}
	return sw
}

// factor is a multiple of which 0 stands for 1.
func factor(x float64) float64 {
	if x == 0 {
		return 1
	}
	return x
}

// mean is how far the well-struck ball goes on average.
func (s *swing) mean() float64 { return s.well[0].mean }

// holed is the chance that the ball goes in, of those that do not stay.
func (s *swing) holed(yd, off float64) float64 {
	chance := 0.0
	for _, parts := range [][]part{s.well, s.bad} {
		for _, p := range parts {
			if p.share > 0 {
				chance += p.share * golfer.Strike{Share: p.share, Mean: p.mean, SD: p.sd, Angle: p.angle}.Holes(yd, off)
			}
		}
	}
	return chance
}
