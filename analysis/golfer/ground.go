package golfer

import (
	"math"

	"strokeledger/analysis/golf"
)

// ground is the country the ball lands in. Every chance is a smooth function
// of the landing point: that is what keeps expected strokes monotone and fit
// for optimisation.
type ground struct {
	greenRadius, greenEdge           float64 // yd
	apron, bunker, recovery, penalty float64 // shares of the misses near the green
	fairwayHalf, fairwayEdge         float64 // yd
	fairwayBunker                    float64 // share of the misses of the fairway
	recoveryFrom, recoveryShare      float64 // yd off the line; share of the balls beyond it
	penaltyFrom, penaltyShare        float64 // yd off the line; share of the balls beyond it
	noFront                          bool    // there is no fairway in front of the green but what is drawn
}

// Softness of edges and the reach of the rules near the green, in yards. From
// the prototype; there is no published source.
const (
	recoveryEdge      = 6     // softness of the line beyond which there is trouble
	penaltyEdge       = 8     // softness of the line beyond which there are penalties
	nearEnds, nearFar = 55, 8 // from the hole, where the rules of the fairway take over, and how softly
	approachShort     = 14    // short of the hole, where the fairway in front of the green begins
	approachSoft      = 4     // softness of that edge
	approachMost      = .65   // share of the balls there that lie on fairway
	approachWide      = 144   // yd²; how it thins out sideways
	recoveryGrows     = 40    // from the hole, at which the parameter nearRecovery holds
)

// nothing is how many softnesses beyond an edge a chance counts as 0: it is below
// 1e-13 there, so that nobody can tell.
const nothing = 30

// landing is the chance of each lie where a ball came to rest, and of a
// penalty there.
type landing struct {
	lie     [golf.Green + 1]float64 // by lie; with the penalty they add up to 1
	penalty float64
}

// at works out the lie of a ball that is short of the hole by short yards
// along the line (negative past it), y yards off the line and r yards from the
// hole.
func (g *ground) at(short, y, r float64, l *landing) {
	near, green, front := 0.0, 0.0, 0.0
	if r < nearEnds+nothing*nearFar {
		near = logistic((nearEnds - r) / nearFar)
	}
	if r < g.greenRadius+nothing*g.greenEdge {
		green = logistic((g.greenRadius - r) / g.greenEdge)
	}
	if !g.noFront && near > 0 && y*y < nothing*approachWide && short > approachShort-nothing*approachSoft {
		front = approachMost * logistic((short-approachShort)/approachSoft) * math.Exp(-y*y/approachWide)
	}
	far, miss := 1-near, near*(1-green)
	around := miss * (1 - front)
	q := g.recovery * r * r / (recoveryGrows * recoveryGrows)
	recovery := q / (1 + q)

	u := math.Abs(y)
	lost := g.penaltyShare * logistic((u-g.penaltyFrom)/penaltyEdge)
	trouble := (1 - lost) * g.recoveryShare * logistic((u-g.recoveryFrom)/recoveryEdge)
	fairway := logistic((g.fairwayHalf - u) / g.fairwayEdge)
	open := far * (1 - trouble - lost)
	off := open * (1 - fairway)

	l.penalty = around*g.penalty + far*lost
	l.lie[golf.Green] = near * green
	l.lie[golf.Fairway] = miss*front + around*g.apron + open*fairway
	l.lie[golf.Bunker] = around*g.bunker + off*g.fairwayBunker
	l.lie[golf.Recovery] = around*recovery + far*trouble
	l.lie[golf.Rough] = around*(1-g.apron-g.bunker-g.penalty-recovery) + off*(1-g.fairwayBunker)
}
