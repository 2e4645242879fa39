package expect

import "strokeledger/analysis/golf"

// Short-side cost is stored at these nodes and read bilinearly: the distance
// to the hole from 3 to 30 yd, and the green that is missing, 0 to 8.5 yd (the
// longest standard run-out).
const (
	ShortDistances = 10
	ShortFalls     = 9
	shortStep      = 3.0
	shortFallStep  = 8.5 / (ShortFalls - 1)
)

// ShortDistance returns the distance in yards of short-side node i.
func ShortDistance(i int) float64 { return shortStep * float64(i+1) }

// Shortfall returns the yards of missing green of short-side node j.
func Shortfall(j int) float64 { return shortFallStep * float64(j) }

// ShortTable holds what missing green adds to expected strokes from the
// fairway, rough and a bunker. A blocked lie is charged as rough.
type ShortTable [3][ShortDistances][ShortFalls]float64

// ShortLies lists the lies of a ShortTable in order.
var ShortLies = []golf.Lie{golf.Fairway, golf.Rough, golf.Bunker}

func shortRow(lie golf.Lie) int {
	switch lie {
	case golf.Tee, golf.Fairway:
		return 0
	case golf.Bunker:
		return 2
	default:
		return 1
	}
}

// at reads the table for a shot from lie with fall yards of green missing.
func (t *ShortTable) at(lie golf.Lie, yd, fall float64) float64 {
	x := min(max(yd/shortStep-1, 0), ShortDistances-1)
	y := min(max(fall/shortFallStep, 0), ShortFalls-1)
	i, j := min(int(x), ShortDistances-2), min(int(y), ShortFalls-2)
	u, v := x-float64(i), y-float64(j)
	row := &t[shortRow(lie)]
	near := row[i][j] + v*(row[i][j+1]-row[i][j])
	far := row[i+1][j] + v*(row[i+1][j+1]-row[i+1][j])
	return near + u*(far-near)
}
