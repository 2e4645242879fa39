package figures

import (
	"fmt"

	"strokeledger/web/chart"
)

// CostBar is a small bar of strokes at a fixed scale, so that two of them can be
// compared wherever they stand. Its places are pixels.
type CostBar struct {
	Size string // of the picture: its width
	Zero string // where nothing is lost
	chart.Bar
}

// Costs of shots are drawn with 34 px a stroke, those of holes with 20.
const (
	shotStroke, shotZero, shotSize = 34.0, 24.0, 100.0
	holeStroke, holeZero, holeSize = 20.0, 30.0, 100.0
)

// ShotCost is the bar of what a shot lost, in strokes.
func ShotCost(lost float64) CostBar { return costBar(lost, shotStroke, shotZero, shotSize) }

// HoleCost is the bar of what a hole lost, in strokes.
func HoleCost(lost float64) CostBar { return costBar(lost, holeStroke, holeZero, holeSize) }

func costBar(lost, stroke, zero, size float64) CostBar {
	px := func(x float64) string { return fmt.Sprintf("%.1f", x) }
	end := zero + lost*stroke
	b := CostBar{Size: px(size), Zero: px(zero)}
	drawn := min(max(end, 0), size)
	b.X, b.Width, b.Won = px(min(zero, drawn)), px(max(zero, drawn)-min(zero, drawn)), lost < 0
	b.Empty = b.Width == "0.0"
	if drawn != end {
		b.Cut = px(drawn)
	}
	return b
}
