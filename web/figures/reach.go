package figures

import (
	"strokeledger/analysis/compare"
	"strokeledger/web/chart"
	"strokeledger/web/components"
	"strokeledger/web/words"
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

// Levels is the line that holds every level of the model, 68 to 110, with room at
// both ends.
var Levels = chart.Range{Low: 66, High: 112, Step: 10}

// LevelAxis is the axis of Levels with figures at 70, 80, 90 and 100.
func LevelAxis() components.Axis {
	var a components.Axis
	for _, level := range []float64{70, 80, 90, 100} {
		x := Levels.Across(level)
		a.Grid = append(a.Grid, x)
		a.Ticks = append(a.Ticks, components.Tick{X: x, Text: words.Plain(level)})
	}
	return a
}

// NewReach places a level and its interval beside the target, which is left out
// when it is 0.
func NewReach(p compare.PlaysTo, target float64) Reach {
	return Reach{Known: true, X: Levels.Across(p.Level.Value), X1: Levels.Across(p.Low.Value), X2: Levels.Across(p.High.Value),
		HasTarget: target > 0, Target: Levels.Across(target)}
}
