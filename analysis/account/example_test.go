package account_test

import (
	"fmt"

	"strokeledger/analysis/account"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
)

// A drive into the trees, a try at the gap that stays there, then out: the
// double began on the tee.
func ExampleOf() {
	hole := golf.Hole{Number: 6, Par: 4, Shots: []golf.Shot{
		{Lie: golf.Tee, Distance: 410 * golf.Yard},
		{Lie: golf.Recovery, Distance: 210 * golf.Yard},
		{Lie: golf.Recovery, Distance: 195 * golf.Yard},
		{Lie: golf.Fairway, Distance: 60 * golf.Yard},
		{Lie: golf.Green, Distance: 15 * golf.Foot},
		{Lie: golf.Green, Distance: 2 * golf.Foot},
	}}
	golfer, err := expect.Level(79)
	if err != nil {
		panic(err)
	}
	a := account.Of(golf.Round{Holes: []golf.Hole{hole}},
		account.Terms{Lens: golfer, Fixed: golfer, Boundary: golf.StandardBoundary})
	for _, d := range a.Doubles {
		fmt.Printf("hole %d, %d strokes: %s, shots %v, from the %s\n", d.Hole, d.Score, d.Kind, d.Chain, d.RootCategory)
	}
	// Output: hole 6, 6 strokes: compound, shots [1 2], from the tee
}
