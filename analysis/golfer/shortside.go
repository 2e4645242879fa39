package golfer

import (
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
)

// Short returns what missing green adds to the golfer's expected strokes: the
// well-struck ball finishes past the hole by most of what is missing. It is never
// negative and never falls as more is missing; a weak golfer who leaves many
// chips short may pay nothing for the first yards.
func (g *Golfer) Short() expect.ShortTable {
	var t expect.ShortTable
	tally := newTally(g.grid)
	for l, lie := range expect.ShortLies {
		for d := range expect.ShortDistances {
			cost := &t[l][d]
			for j := range cost {
				cost[j] = g.after(tally, lie, expect.ShortDistance(d), expect.Shortfall(j))
			}
			level := cost[0]
			for j := range cost {
				cost[j] = max(cost[j]-level, 0)
				if j > 0 {
					cost[j] = max(cost[j], cost[j-1])
				}
			}
		}
	}
	return t
}

// after is what the golfer takes when the well-struck ball is moved past the
// hole, from this stroke to the last.
func (g *Golfer) after(tally *tally, lie golf.Lie, yd, past float64) float64 {
	s := g.skills.strokeStep(tally, lie, yd, past)
	e, _ := s.value(-1, g.e)
	return e
}

// Stored returns the golfer as the level file keeps it.
func (g *Golfer) Stored() expect.Stored {
	return expect.Stored{T: g.T, Table: g.Table(), Short: g.Short()}
}
