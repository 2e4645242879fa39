package compare

import "strokeledger/analysis/golf"

// PartsLost are what a player lost for 18 holes in each part of the game over
// some rounds, and in all of them together at category 0.
type PartsLost struct {
	Rounds int                    // with a hole whose strokes are known
	Cells  [golf.Putting + 1]Cell // by category
}

// PartsLost averages what summed-up rounds lost to the golfer of a level from 68 to
// 110, as a sheet does.
func (l Ladder) PartsLost(rounds []Summary, level float64, seed uint64) PartsLost {
	rounds = detailed(rounds)
	p := PartsLost{Rounds: len(rounds)}
	d := l.drawn.over(len(rounds), seed)
	holes, all := make([]float64, len(rounds)), make([]float64, len(rounds))
	for i, s := range rounds {
		holes[i] = s.Holes
	}
	for _, c := range golf.Categories {
		values := make([]float64, len(rounds))
		for i, s := range rounds {
			values[i] = l.Lost(s, c, level)
			all[i] += values[i]
		}
		p.Cells[c] = d.cell(perRound(values, holes, d), 0)
	}
	p.Cells[0] = d.cell(perRound(all, holes, d), 0)
	return p
}
