package forecast

import (
	"testing"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

func BenchmarkChance(b *testing.B) {
	a := Ask{Target: 79, Level: 79, Levels: golfer.Levels{Tee: 82, Approach: 84, ShortGame: 84, Putting: 86}, Card: expect.ReferenceCourse(),
		Rounds: 4000, Seed: 1, Gain: func(c golf.Category, from, to float64) float64 { return (from - to) / 4 }}
	for b.Loop() {
		if _, err := Find(a); err != nil {
			b.Fatal(err)
		}
	}
}
