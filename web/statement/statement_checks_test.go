package statement

import (
	"testing"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/web/form"
	"strokeledger/web/layout"
)

// par3s is a round of par threes in three strokes each: a tee shot and two putts.
func par3s(holes int) golf.Round {
	r := golf.Round{}
	for i := range holes {
		r.Holes = append(r.Holes, golf.Hole{Number: i + 1, Par: 3, Shots: []golf.Shot{
			{Lie: golf.Tee, Distance: 150 * golf.Yard}, {Lie: golf.Green, Distance: 20 * golf.Foot}, {Lie: golf.Green, Distance: 2 * golf.Foot}}})
	}
	return r
}

func TestTheCardIsAskedForFirst(t *testing.T) {
	for _, c := range []struct {
		name     string
		entered  int
		nines    [2]int
		entering bool
		first    bool
		agrees   string
	}{
		{"nothing told", 18, [2]int{}, true, true, ""},
		{"one nine told", 18, [2]int{27, 0}, true, true, ""},
		{"both agree", 18, [2]int{27, 27}, true, false, "Card agrees: 27 and 27."},
		{"one does not", 18, [2]int{27, 28}, true, false, ""},
		{"a hole is open", 17, [2]int{}, true, false, ""},
		{"read later, or by a coach", 18, [2]int{}, false, false, ""},
	} {
		whole := par3s(18)
		in := asked(t, golf.Round{Holes: whole.Holes[:c.entered]}, 79, form.StandardUnits)
		in.Card, in.Nines, in.JustEntered = whole.Card(), c.nines, c.entering
		if s := NewRoundPage(layout.Page{}, in); s.CardFirst != c.first || s.Agrees != c.agrees {
			t.Errorf("%s: first %v, %q", c.name, s.CardFirst, s.Agrees)
		}
	}
}

func TestTheLineOfCounts(t *testing.T) {
	for want, c := range map[string]account.Counts{
		"": {},
		"Fairways 7 of 13, greens 6 of 18, 34 putts, up and down 3 of 9.": {Holes: 18, Fairways: 7, FairwayChances: 13, Greens: 6, GreenChances: 18, Putts: 34, UpAndDowns: 3, UpAndDownChances: 9},
		"Greens 1 of 1, 1 putt. On the 1 hole entered shot by shot.":      {Holes: 1, Greens: 1, GreenChances: 1, Putts: 1},
	} {
		if got := countsLine(c, 18); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// The statement goes on with the next hole in the order of play.
func TestTheStatementGoesOnInOrder(t *testing.T) {
	whole := par3s(9)
	in := RoundInput{Card: whole.Card(), Round: golf.Round{Holes: whole.Holes[6:]}, First: 7}
	if n := nextHole(in); n != 1 {
		t.Errorf("after hole 9 comes %d", n)
	}
	in.Round.Holes = whole.Holes[6:7]
	if n := nextHole(in); n != 8 {
		t.Errorf("after hole 7 comes %d", n)
	}
}
