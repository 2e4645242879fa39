package practice

import (
	"bytes"
	"flag"
	"math"
	"os"
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

var update = flag.Bool("update", false, "play the table of the family anew and write it")

// familySeed is the seed of the committed table.
const familySeed = 11

// The committed table is what the committed golfer plays: some of its levels are
// played again.
func TestCommittedFamily(t *testing.T) {
	if *update {
		f, err := BuildFamily(golfer.Committed(), familySeed)
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile("family.bin", f.Encode(), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	f := Committed()
	if !bytes.Equal(f.Encode(), committedFamily) {
		t.Error("what is read and written is another table")
	}
	again := &Family{}
	if err := again.playLevels(golfer.Committed(), familySeed, 5); err != nil {
		t.Fatal(err)
	}
	for k := range again.lost[5] {
		for row, x := range again.lost[5][k] {
			if float32(x) != float32(f.lost[5][k][row]) {
				t.Fatalf("level %g judged by %g, row %d: %g, committed %g; go test -update writes it", levelOf(5), levelOf(k), row, x, f.lost[5][k][row])
			}
		}
	}
	if _, err := DecodeFamily(committedFamily[4:]); err == nil {
		t.Error("a cut table is read")
	}
}

// A golfer who is judged by the own level loses nothing, and one of level S judged
// by T loses S - T: the identity, within the noise of 6,000 rounds with a spread
// of 4 (.05 of a standard error), and the parts add up to it.
func TestFamilyLosesTheDifference(t *testing.T) {
	f := Committed()
	for _, s := range []float64{72, 79, 85, 90, 101} {
		for _, target := range []float64{70, 79, 88} {
			sum := 0.0
			for c := range golf.Categories {
				sum += f.Lost(s, target, c+1)
			}
			if total := f.Lost(s, target, 0); math.Abs(total-(s-target)) > .25 || math.Abs(sum-total) > 1e-4 {
				t.Errorf("%g judged by %g: %.3f, parts %.3f", s, target, total, sum)
			}
		}
	}
	if got := f.LevelFor(f.Lost(86, 79, int(golf.Putting)), 79, int(golf.Putting)); math.Abs(got-86) > 1e-6 {
		t.Errorf("level for what an 86 loses: %g", got)
	}
	t.Logf("chains a round at 79, 85, 90: %.2f %.2f %.2f", f.Chains(79), f.Chains(85), f.Chains(90))
}
