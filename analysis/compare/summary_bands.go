package compare

import (
	"strokeledger/analysis/account"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
)

// standardBands are the bands of a summary, whatever boundary a player has chosen, so
// that players can be set side by side.
var standardBands = account.Bands(golf.StandardBoundary)

// Band is what the round lost in a band of the standard boundary, by their list, to
// the golfer of the target that the player had when it was summed up.
func (s Summary) Band(i int) float64 {
	if s.bands == nil {
		return 0
	}
	return s.bands[i]
}

// Bands are all of these.
func (s Summary) Bands() []float64 { return s.bands }

// lostInBands is what a round lost by band to the golfer of a target, on the holes
// whose strokes are known.
func lostInBands(r golf.Round, target float64) ([]float64, error) {
	judge, err := expect.Level(target)
	if err != nil {
		return nil, err
	}
	lost := map[account.Band]float64{}
	for _, h := range account.Of(r, account.Terms{Lens: judge, Fixed: judge, Boundary: golf.StandardBoundary}).Holes {
		if !h.Detailed {
			continue
		}
		for _, s := range h.Shots {
			lost[s.Band] += s.Lost
		}
	}
	all := make([]float64, len(standardBands))
	for i, b := range standardBands {
		all[i] = lost[b]
	}
	return all, nil
}
