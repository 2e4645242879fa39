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

// bestOf tells how many of the lowest differentials are averaged for a record of
// some length, and what is then added (Rule 5.2).
func bestOf(differentials int) (n int, adjustment float64) {
	switch {
	case differentials < fewestScores:
		return 0, 0
	case differentials == 3:
		return 1, -2
	case differentials == 4:
		return 1, -1
	case differentials == 5:
		return 1, 0
	case differentials == 6:
		return 2, -1
	case differentials <= 8:
		return 2, 0
	case differentials <= 11:
		return 3, 0
	case differentials <= 14:
		return 4, 0
	case differentials <= 16:
		return 5, 0
	case differentials <= 18:
		return 6, 0
	case differentials == 19:
		return 7, 0
	default:
		return 8, 0
	}
}

// Index returns the Index of a record of differentials, of which the last
// twenty count, before any cap. ok is false for fewer than three.
func Index(differentials []float64) (index float64, ok bool) {
	latest := slices.Clone(differentials[max(0, len(differentials)-recordLength):])
	n, adjustment := bestOf(len(latest))
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
