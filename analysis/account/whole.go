package account

import (
	"math"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
)

// wholeScore is a hole's score as pages count it: the strokes taken and, where the
// ball was picked up, those still to come by the fixed golfer, rounded. The fixed
// golfer makes it the same score wherever it is shown.
func wholeScore(h golf.Hole, fixed *expect.Baseline) int {
	if !h.PickedUp {
		return h.Strokes()
	}
	return h.Strokes() + int(math.Round(fixed.Shot(h.Shots[len(h.Shots)-1])))
}

// Whole is the score of the round as pages count it: the sum of its holes' whole
// scores.
func (a *Account) Whole() int {
	sum := 0
	for _, h := range a.Holes {
		sum += h.Whole
	}
	return sum
}

// InWholeStrokes returns the account with every picked-up hole counted in whole
// strokes, as pages show it. What that changes stands in Lost.PickedUp, so that what
// was lost is still the score less the target.
func (a Account) InWholeStrokes() Account {
	holes := make([]Hole, len(a.Holes))
	copy(holes, a.Holes)
	for i := range holes {
		h := &holes[i]
		rounded := float64(h.Whole) - h.Score
		if !h.PickedUp || rounded == 0 {
			continue
		}
		h.Score, h.Lost = float64(h.Whole), h.Lost+rounded
		a.Score += rounded
		a.Lost.PickedUp += rounded
		a.Lost.Total += rounded
	}
	a.Holes = holes
	return a
}
