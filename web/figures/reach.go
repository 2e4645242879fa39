package figures

import (
	"strokeledger/analysis/compare"
	"strokeledger/web/chart"
)

// Reach is a level with its 95% interval, drawn on a line of levels. Its places
// are percentages from the left.
type Reach struct {
	Known     bool   // there is a level to draw
	X         string // the level
	X1, X2    string // the ends of the interval
	HasTarget bool   // there is a target to draw
	Target    string // the target
}

// levelScale holds every level of the model, 68 to 110, with room at both ends.
var levelScale = chart.Range{Low: 66, High: 112, Step: 10}

// NewReach places a level and its interval beside the target, which is left out
// when it is 0.
func NewReach(p compare.PlaysTo, target float64) Reach {
	return Reach{Known: true, X: levelScale.Across(p.Level.Value), X1: levelScale.Across(p.Low.Value), X2: levelScale.Across(p.High.Value),
		HasTarget: target > 0, Target: levelScale.Across(target)}
}
