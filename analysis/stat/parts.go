package stat

import (
	"cmp"
	"math"
	"slices"
)

// RoundedParts rounds parts to multiples of unit so that what is printed adds
// up: the rounded parts sum to the rounded sum (largest remainder). A part that
// is a multiple already stays; none moves by a whole unit.
func RoundedParts(parts []float64, unit float64) []float64 {
	down := make([]float64, len(parts))
	order := make([]int, len(parts))
	sum, floor := 0.0, 0.0
	for i, p := range parts {
		down[i] = math.Floor(p / unit)
		order[i] = i
		sum += p / unit
		floor += down[i]
	}
	rest := func(i int) float64 { return parts[i]/unit - down[i] }
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(rest(j), rest(i)) })
	for k := range int(math.Round(sum) - floor) {
		down[order[k]]++
	}
	for i := range down {
		down[i] *= unit
	}
	return down
}
