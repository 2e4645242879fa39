package handicap

import (
	"math"
	"slices"
)

// The figures of the Rules of Handicapping that are not in a table.
const (
	standardSlope   = 113  // Rule 5.1
	mostIndex       = 54.0 // Rule 5.2
	recordLength    = 20   // differentials of a full record, Rule 5.2
	softCapFrom     = 3.0  // above the Low Index, Rule 5.8
	hardCapAt       = 5.0  // above the Low Index, Rule 5.8
	exceptionalAt   = 7.0  // below the Index, Rule 5.9
	veryExceptional = 10.0 // below the Index, Rule 5.9
	lowIndexDays    = 365  // Rule 5.7

	// What is expected of the nine holes that were not played, per point of
	// Index: an approximation from memory, the official formula is not
	// published.
	expectedPerPoint = .52
	expectedBase     = 1.2
)

// fewestScores is from how many scores there is an Index (Rule 5.2).
const fewestScores = 3

// best is how many of the lowest differentials are averaged, and what is then
// added, by the number of differentials of the record (Rule 5.2).
var best = [recordLength + 1]struct {
	n          int
	adjustment float64
}{
	3: {1, -2}, 4: {1, -1}, 5: {1, 0}, 6: {2, -1}, 7: {2, 0}, 8: {2, 0},
	9: {3, 0}, 10: {3, 0}, 11: {3, 0}, 12: {4, 0}, 13: {4, 0}, 14: {4, 0},
	15: {5, 0}, 16: {5, 0}, 17: {6, 0}, 18: {6, 0}, 19: {7, 0}, 20: {8, 0},
}

// Index returns the Index of a record of differentials, of which the last
// twenty count, before any cap. ok is false for fewer than three.
func Index(differentials []float64) (index float64, ok bool) {
	latest := slices.Clone(differentials[max(0, len(differentials)-recordLength):])
	n, adjustment := best[len(latest)].n, best[len(latest)].adjustment
	if n == 0 {
		return 0, false
	}
	slices.Sort(latest)
	sum := 0.0
	for _, d := range latest[:n] {
		sum += d
	}
	return min(tenth(sum/float64(n)+adjustment), mostIndex), true
}

// Cap says what held an Index back.
type Cap uint8

// The caps, and none.
const (
	NoCap   Cap = iota
	SoftCap     // what is above the Low Index by more than 3.0 counts half
	HardCap     // never more than 5.0 above the Low Index
)

// Capped returns an Index as the Low Index caps it (Rule 5.8).
func Capped(index, low float64) (capped float64, by Cap) {
	switch above := index - low; {
	case above <= softCapFrom+tiny:
		return index, NoCap
	case softCapFrom+(above-softCapFrom)/2 > hardCapAt+tiny:
		return tenth(low + hardCapAt), HardCap
	default:
		return tenth(low + softCapFrom + (above-softCapFrom)/2), SoftCap
	}
}

// Differential is the Score Differential of an adjusted gross score (Rule 5.1).
func Differential(adjusted, rating, slope float64) float64 {
	return tenth(standardSlope / slope * (adjusted - rating))
}

// CourseHandicap is how many strokes an Index receives on a course (Rule 6.1).
func CourseHandicap(index, slope, rating float64, par int) int {
	return int(math.Floor(index*slope/standardSlope + rating - float64(par) + .5 + tiny))
}

// tiny is less than any difference the rules know, and more than what binary
// fractions are off by.
const tiny = 1e-9

// tenth rounds to the nearest tenth, .5 upward: -1.55 is -1.5 (Rule 5.1).
func tenth(x float64) float64 { return math.Floor(x*10+.5+tiny) / 10 }
