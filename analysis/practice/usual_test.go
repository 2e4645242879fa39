package practice

import (
	"math"
	"testing"

	"strokeledger/analysis/account"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/parallel"
)

// What is kept of rounds says the same of a game as the rounds do.
func TestSumsSayWhatRoundsSay(t *testing.T) {
	rounds := played(t, golfer.Levels{Tee: 84, Approach: 92, ShortGame: 80, Putting: 88}, 7, 3)
	rounds[2].Holes = rounds[2].Holes[:9]
	want, err := Committed().Look(rounds, 79)
	if err != nil {
		t.Fatal(err)
	}
	judge, err := expect.Level(79)
	if err != nil {
		t.Fatal(err)
	}
	var sums []Sums
	for _, r := range rounds {
		s := Sums{Bands: make([]float64, len(bands))}
		for _, h := range account.Of(r, account.Terms{Lens: judge, Fixed: judge, Boundary: golf.StandardBoundary}).Holes {
			s.Holes++
			for _, shot := range h.Shots {
				s.Bands[rowOf[shot.Band]-bandRow] += shot.Lost
			}
		}
		sums = append(sums, s)
	}
	got, err := Committed().Sum(append(sums, Sums{}), 79)
	if err != nil {
		t.Fatal(err)
	}
	same := func(a, b Estimate) bool { return math.Abs(a.Mean-b.Mean)+math.Abs(a.SD-b.SD) < 1e-9 }
	for _, c := range golf.Categories {
		if !same(got.Parts[c], want.Parts[c]) {
			t.Errorf("%s: %+v, want %+v", c, got.Parts[c], want.Parts[c])
		}
	}
	for i, b := range bands {
		if !same(got.Bands[i], want.Bands[i]) {
			t.Errorf("%+v: %+v, want %+v", b, got.Bands[i], want.Bands[i])
		}
	}
	if got.Rounds != 7 || got.Holes != 6*18+9 || math.Abs(got.Level-want.Level) > 1e-9 {
		t.Errorf("%d rounds, %g holes, level %g; want level %g", got.Rounds, got.Holes, got.Level, want.Level)
	}
	if _, err := Committed().Sum([]Sums{{}}, 79); err != ErrNothing {
		t.Errorf("of nothing: %v", err)
	}
}

// named counts by band how many of some golfers, after ten rounds each, lose more
// there than is usual for their score, leaning at least.
func named(t *testing.T, levels golfer.Levels, golfers int) []int {
	t.Helper()
	games := make([]Game, golfers)
	parallel.Do(golfers, func(i int) {
		games[i], _ = Committed().Look(played(t, levels, 10, uint64(9000+i)), 79)
	})
	count := make([]int, len(bands))
	for i := range games {
		for k := range bands {
			if Committed().BandUsual(&games[i], k).Named() {
				count[k]++
			}
		}
	}
	return count
}

// Of golfers who play everything at one level few are named in a band, about one in
// twenty; of those with one part as a 100 most are named somewhere in that part, and
// hardly anybody elsewhere. The bars are our own, from what was measured.
func TestFewAreUnusualByLuck(t *testing.T) {
	const golfers = 300
	for _, level := range []float64{79, 85, 90, 97} {
		count, all := named(t, golfer.Even(level), golfers), 0
		for k, n := range count {
			if all += n; n > golfers*13/100 {
				t.Errorf("%g, %+v: %d of %d are named", level, bands[k], n, golfers)
			}
		}
		t.Logf("%g: %.1f of 100 in a band", level, 100*float64(all)/float64(golfers*len(bands)))
		if all > golfers*len(bands)*6/100 {
			t.Errorf("%g: %d names in %d bands of %d golfers", level, all, len(bands), golfers)
		}
	}
}

func TestPlantedWeaknessIsUnusual(t *testing.T) {
	const golfers = 200
	for part, levels := range map[golf.Category]golfer.Levels{
		golf.TeeShots:  {Tee: 100, Approach: 85, ShortGame: 85, Putting: 85},
		golf.Approach:  {Tee: 85, Approach: 100, ShortGame: 85, Putting: 85},
		golf.ShortGame: {Tee: 85, Approach: 85, ShortGame: 100, Putting: 85},
		golf.Putting:   {Tee: 85, Approach: 85, ShortGame: 85, Putting: 100},
	} {
		most := 0
		for k, n := range named(t, levels, golfers) {
			if bands[k].Category == part {
				most = max(most, n)
			} else if n > golfers*10/100 {
				t.Errorf("%s is weak: %d of %d are named in %+v", part, n, golfers, bands[k])
			}
		}
		t.Logf("%s: %d of %d in the band that names most", part, most, golfers)
		if most < golfers*60/100 {
			t.Errorf("%s: only %d of %d are named in any band", part, most, golfers)
		}
	}
}
