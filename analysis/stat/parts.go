package stat

import (
	"cmp"
	"math"
	"slices"
)

// RoundedParts rounds parts to multiples of unit so that what is printed adds
// up: the rounded parts sum to the rounded sum (largest remainder). None moves
// by a whole unit.
func RoundedParts(parts []float64, unit float64) []float64 {
	sum := 0.0
	for _, p := range parts {
		sum += p
	}
	return RoundedTo(parts, unit, sum)
}

// RoundedTo rounds parts to multiples of unit so that they sum to total, rounded
// to unit, which must be nearer to their sum than a unit a part.
func RoundedTo(parts []float64, unit, total float64) []float64 {
	down := make([]float64, len(parts))
	order := make([]int, len(parts))
	floor := 0.0
	for i, p := range parts {
		down[i] = math.Floor(p / unit)
		order[i] = i
		floor += down[i]
	}
	rest := func(i int) float64 { return parts[i]/unit - down[i] }
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(rest(j), rest(i)) })
	n := int(math.Round(total/unit) - floor)
	for k := range n {
		down[order[k%len(order)]]++
	}
	for k := range -n {
		down[order[len(order)-1-k%len(order)]]--
	}
	for i := range down {
		down[i] *= unit
	}
	return down
}
