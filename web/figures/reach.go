package figures

import (
	"strokeledger/analysis/compare"
	"strokeledger/web/chart"
)

// Reach is a level with its interval on a line of levels.
type Reach struct {
	Known             bool
	X, X1, X2, Target string
	HasTarget         bool
}

// levelScale holds every level.
var levelScale = chart.Range{Low: 66, High: 112, Step: 10}

// NewReach places a level and its interval beside the target; 0 shows no target.
func NewReach(p compare.PlaysTo, target float64) Reach {
	return Reach{Known: true, X: levelScale.Across(p.Level.Value), X1: levelScale.Across(p.Low.Value), X2: levelScale.Across(p.High.Value),
		HasTarget: target > 0, Target: levelScale.Across(target)}
}
