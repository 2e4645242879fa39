package account

import (
	"slices"
	"testing"

	"strokeledger/analysis/golf"
)

// Counts by the definitions, each hole counted by hand.
func TestCounts(t *testing.T) {
	for _, c := range []struct {
		name     string
		par      int
		shots    string
		pickedUp bool
		want     Counts
	}{
		{"fairway and green", 4, "t400 f150 g20 g2", false, Counts{Holes: 1, Fairways: 1, FairwayChances: 1, Greens: 1, GreenChances: 1, Putts: 2}},
		{"green of a par 4 driven", 4, "t290 g30 g3", false, Counts{Holes: 1, Fairways: 1, FairwayChances: 1, Greens: 1, GreenChances: 1, Putts: 2}},
		{"hole in one on a par 4", 4, "t290", false, Counts{Holes: 1, Fairways: 1, FairwayChances: 1, Greens: 1, GreenChances: 1}},
		{"dropped on the fairway out of water", 4, "t400(+1) f150 g20 g2", false, Counts{Holes: 1, FairwayChances: 1, GreenChances: 1, Putts: 2, Penalties: 1}},
		{"rough, up and down", 4, "t400 r150 r12 g4", false, Counts{Holes: 1, FairwayChances: 1, GreenChances: 1, Putts: 1, UpAndDowns: 1, UpAndDownChances: 1}},
		{"chipped in", 4, "t400 f150 r12", false, Counts{Holes: 1, Fairways: 1, FairwayChances: 1, GreenChances: 1, UpAndDowns: 1, UpAndDownChances: 1}},
		{"approach holed", 4, "t400 f150", false, Counts{Holes: 1, Fairways: 1, FairwayChances: 1, Greens: 1, GreenChances: 1}},
		{"two chips", 4, "t400 f150 r12 r8 g1", false, Counts{Holes: 1, Fairways: 1, FairwayChances: 1, GreenChances: 1, Putts: 1, UpAndDownChances: 1}},
		{"penalty spoils the green", 5, "t500(+1) r300 f90 g20 g2", false, Counts{Holes: 1, FairwayChances: 1, GreenChances: 1, Putts: 2, Penalties: 1}},
		{"three putts on a par 3", 3, "t150 g60 g8 g2", false, Counts{Holes: 1, Greens: 1, GreenChances: 1, Putts: 3, ThreePutts: 1}},
		{"putted off the green and back", 3, "t150 g40 r6 g5 g2", false, Counts{Holes: 1, Greens: 1, GreenChances: 1, Putts: 3, ThreePutts: 1, UpAndDownChances: 1}},
		{"picked up on the green in two", 4, "t400 f150 g20", true, Counts{Holes: 1, Fairways: 1, FairwayChances: 1, Greens: 1, GreenChances: 1}},
		{"picked up beside the green", 4, "t400 f150 r20", true, Counts{Holes: 1, Fairways: 1, FairwayChances: 1, GreenChances: 1}},
		{"picked up after a chip", 4, "t400 f150 r20 g3", true, Counts{Holes: 1, Fairways: 1, FairwayChances: 1, GreenChances: 1, UpAndDownChances: 1}},
		{"picked up beside a par 5 in two", 5, "t500 f220 r20", true, Counts{Holes: 1, Fairways: 1, FairwayChances: 1, GreenChances: 1}},
		{"picked up on the tee", 4, "t400", true, Counts{}},
		{"chip into the pond", 4, "t400 f150 r30(+1) r30 g4", false, Counts{Holes: 1, Fairways: 1, FairwayChances: 1, GreenChances: 1, Putts: 1, Penalties: 1, UpAndDownChances: 1}},
		{"penalty on the chip, putt holed", 4, "t400 f150 r30(+1) g4", false, Counts{Holes: 1, Fairways: 1, FairwayChances: 1, GreenChances: 1, Putts: 1, Penalties: 1, UpAndDownChances: 1}},
		{"chip holed with a penalty: two strokes", 4, "t400 f150 r12(+1)", false, Counts{Holes: 1, Fairways: 1, FairwayChances: 1, GreenChances: 1, Penalties: 1, UpAndDowns: 1, UpAndDownChances: 1}},
		{"within the boundary, over the green, in", 3, "t150 b20 r25", false, Counts{Holes: 1, GreenChances: 1, UpAndDowns: 1, UpAndDownChances: 1}},
		{"from past the boundary", 4, "t400 r300 f51 g4", false, Counts{Holes: 1, FairwayChances: 1, GreenChances: 1, Putts: 1}},
		{"second drive after out of bounds", 4, "t400(+1) t400 f150 g20 g2", false, Counts{Holes: 1, FairwayChances: 1, GreenChances: 1, Putts: 2, Penalties: 1}},
	} {
		var got Counts
		got.Hole(golf.Hole{Number: 1, Par: c.par, Shots: parseShots(t, c.shots), PickedUp: c.pickedUp}, golf.StandardBoundary)
		if got != c.want {
			t.Errorf("%s:\n%+v, by hand\n%+v", c.name, got, c.want)
		}
	}
	var none Counts
	none.Hole(golf.Hole{Number: 1, Par: 4, Shots: parseShots(t, "t400"), ScoreOnly: 5}, golf.StandardBoundary)
	if (none != Counts{}) {
		t.Errorf("a score alone counts as %+v", none)
	}
}

// Putts of 6 ft and less, missed on a double; one holed is none, and so is one
// that was never played.
func TestMissedShortPutts(t *testing.T) {
	for _, c := range []struct {
		shots    string
		pickedUp bool
		want     []int
	}{
		{"t400 v200 v195 f60 g6 g2", false, []int{5}},
		{"t400 v200 v195 f60 g6.1 g2", false, nil},
		{"t400 v200 v195 f60 g20 g5 g4 g1", false, []int{6, 7}},
		{"t400 v200 v195 r4 r5 g6", false, nil},
		{"t400 v200 v195 f60 g20 g5 g1", true, []int{6}},
	} {
		h := golf.Hole{Number: 1, Par: 4, Shots: parseShots(t, c.shots), PickedUp: c.pickedUp}
		a := Of(golf.Round{Holes: []golf.Hole{h}}, fixedTerms(t, 79))
		if len(a.Doubles) != 1 || !slices.Equal(a.Doubles[0].Missed, c.want) {
			t.Errorf("%s, picked up %v: %+v, want missed %v", c.shots, c.pickedUp, a.Doubles, c.want)
		}
	}
}
