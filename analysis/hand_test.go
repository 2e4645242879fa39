package analysis

import (
	"fmt"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
)

// Two rounds typed by hand, stroke by stroke as a golfer tells them, so that
// the golfer of the engine is not its own only witness. The counts are from the
// stories beside the files, counted by hand.
//
// told is how far apart two parts must be for a story to tell them apart.
func TestRoundsTypedByHand(t *testing.T) {
	const told = .3
	for _, c := range []struct {
		file        string
		nines       [2]int // strokes, without what was still to come
		counts      account.Counts
		doubles     []string
		worst       golf.Category // what a coach would name first, or with another part that costs as much
		lowest, top float64       // strokes lost there, roughly
	}{
		{
			file: "hand-86.csv", nines: [2]int{42, 44},
			counts: account.Counts{Holes: 17, Fairways: 7, FairwayChances: 13, Greens: 8, GreenChances: 17, Putts: 33, ThreePutts: 3,
				UpAndDowns: 2, UpAndDownChances: 7, Penalties: 1, Doubles: 3, Compound: 1, Single: 1, Unknown: 1},
			doubles: []string{"6 compound from 1 tee", "10 single from 1 tee", "18 unknown from 0 "},
			worst:   golf.TeeShots, lowest: 1, top: 4,
		},
		{
			file: "hand-88.csv", nines: [2]int{46, 41},
			counts: account.Counts{Holes: 18, Fairways: 8, FairwayChances: 14, Greens: 6, GreenChances: 18, Putts: 33, ThreePutts: 2,
				UpAndDowns: 2, UpAndDownChances: 12, Penalties: 3, Doubles: 5},
			doubles: []string{"2 single from 5 putting", "3 single from 1 approach", "6", "11 single from 2 approach", "14 single from 1 tee"},
			worst:   golf.Approach, lowest: 3, top: 9,
		},
	} {
		r := rounds(t, c.file)[0]
		a := analyst(t, Target(79)).Statement(r, 72).Account
		nines := [2]int{}
		for i, h := range r.Holes {
			nines[i/9] += h.Strokes()
		}
		if nines != c.nines {
			t.Errorf("%s: %v, by hand %v", c.file, nines, c.nines)
		}
		got := a.Counts
		if c.counts.Single == 0 { // kinds are told hole by hole below
			got.Compound, got.Single, got.Separate, got.Leak, got.Unknown = 0, 0, 0, 0, 0
		}
		if diff := cmp.Diff(c.counts, got); diff != "" {
			t.Errorf("%s: by hand -, counted +\n%s", c.file, diff)
		}
		for i, d := range a.Doubles {
			said := fmt.Sprintf("%d %s from %d %s", d.Hole, d.Kind, d.Root, d.RootCategory)
			if i >= len(c.doubles) || c.doubles[i] != said && c.doubles[i] != fmt.Sprint(d.Hole) {
				t.Errorf("%s: double %s, by hand %v", c.file, said, c.doubles)
			}
		}
		if math.Abs(a.Lost.Total-(a.Score-79)) > 1e-9 {
			t.Errorf("%s: lost %.6f of %.6f", c.file, a.Lost.Total, a.Score-79)
		}
		for _, other := range golf.Categories {
			if a.Lost.Of(other) > a.Lost.Of(c.worst)+told {
				t.Errorf("%s: %s cost %.2f, %s %.2f", c.file, other, a.Lost.Of(other), c.worst, a.Lost.Of(c.worst))
			}
		}
		if lost := a.Lost.Of(c.worst); lost < c.lowest || lost > c.top {
			t.Errorf("%s: %s cost %.2f", c.file, c.worst, lost)
		}
	}
}
