package handicap

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"strokeledger/analysis/golf"
)

// Worked examples of the Rules of Handicapping (USGA and The R&A), as read.
func TestWorkedExamples(t *testing.T) {
	for _, c := range []struct {
		differentials []float64
		want          float64
	}{
		{[]float64{15.3, 15.2, 16.6}, 13.2},
		{[]float64{40.7, 42.4, 36.1}, 34.1},
		{[]float64{40.7, 42.4, 36.1, 45.9, 43.6, 45.0}, 37.4},
	} {
		if got, ok := Index(c.differentials); !ok || math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%v: %g, want %g", c.differentials, got, c.want)
		}
	}
	if got, by := Capped(11.6, 6.5); math.Abs(got-10.6) > 1e-9 || by != SoftCap {
		t.Errorf("soft cap: %g", got)
	}
	// Rule 3.1: Course Handicap 15, par 4, stroke index 10 gives 7.
	holes := make([]Hole, 18)
	for i := range holes {
		holes[i] = Hole{Par: 4, Index: i + 1, Strokes: 20}
	}
	if got := 4 + 2 + strokesOn(holes, 15)[9]; got != 7 {
		t.Errorf("net double bogey %d, want 7", got)
	}
}

// Rule 5.1: to the nearest tenth, .5 upward; -1.54 and -1.55 both give -1.5.
func TestRounding(t *testing.T) {
	for x, want := range map[float64]float64{-1.54: -1.5, -1.55: -1.5, -1.56: -1.6, 1.54: 1.5, 1.55: 1.6, 10.55: 10.6} {
		if got := tenth(x); math.Abs(got-want) > 1e-12 {
			t.Errorf("%g: %g, want %g", x, got, want)
		}
	}
	if got := Differential(84, 71.2, 126); math.Abs(got-11.5) > 1e-9 { // 113/126 * 12.8 = 11.479
		t.Errorf("%g", got)
	}
	// Index x Slope / 113 + (Course Rating - par): 12.4 x 126 / 113 - .8 = 13.03
	if got := CourseHandicap(12.4, 126, 71.2, 72); got != 13 {
		t.Errorf("course handicap %d", got)
	}
}

// Rule 5.2, the whole table: n differentials 1, 2, 3 ... average to (used + 1)/2.
func TestTableOfRecords(t *testing.T) {
	used := []int{3: 1, 4: 1, 5: 1, 6: 2, 7: 2, 8: 2, 9: 3, 10: 3, 11: 3, 12: 4, 13: 4, 14: 4, 15: 5, 16: 5, 17: 6, 18: 6, 19: 7, 20: 8}
	added := map[int]float64{3: -2, 4: -1, 6: -1}
	var all []float64
	for n := 1; n <= 20; n++ {
		all = append(all, float64(n))
		got, ok := Index(all)
		if n < 3 {
			if ok {
				t.Errorf("%d scores have an Index", n)
			}
			continue
		}
		if want := tenth(float64(used[n]+1)/2 + added[n]); got != want {
			t.Errorf("%d scores: %g, want %g", n, got, want)
		}
	}
	if got, _ := Index(append([]float64{-50}, all...)); got != 4.5 {
		t.Errorf("the 21st score back counts: %g", got)
	}
	if got, _ := Index([]float64{80, 80, 80, 80, 80}); got != 54 { // Rule 5.2
		t.Errorf("%g", got)
	}
}

// Rule 5.8: up to 3.0 above the Low Index as it is, then half, never 5.0 above.
func TestCaps(t *testing.T) {
	for _, c := range []struct {
		index, low, want float64
		by               Cap
	}{{9.5, 6.5, 9.5, NoCap}, {9.6, 6.5, 9.6, SoftCap}, {13.5, 6.5, 11.5, SoftCap}, {13.7, 6.5, 11.5, HardCap}, {20, 6.5, 11.5, HardCap}} {
		if got, by := Capped(c.index, c.low); math.Abs(got-c.want) > 1e-9 || by != c.by {
			t.Errorf("%g over %g: %g by %d", c.index, c.low, got, by)
		}
	}
}

// flat is a score of 18 holes whose differential is its gross score over 72.
func flat(day, gross int) Score {
	s := Score{Date: golf.Date{Year: 2026, Month: 1, Day: 1}.AddDays(day), Rating: 72, Slope: 113}
	for i := range 18 {
		s.Holes = append(s.Holes, Hole{Par: 4, Index: i + 1, Strokes: gross/18 + map[bool]int{true: 1}[i < gross%18]})
	}
	return s
}

// Rule 5.9: 7.0 to 9.9 below the Index takes 1 off each of the last 20
// differentials, 10.0 or more takes 2.
func TestExceptionalScores(t *testing.T) {
	for _, c := range []struct{ gross, want int }{{86, 0}, {85, 1}, {83, 1}, {82, 2}, {80, 2}} {
		scores := []Score{flat(0, 92), flat(1, 92), flat(2, 92), flat(3, 92), flat(4, 92)} // Index 20.0
		r := Estimate(append(scores, flat(5, c.gross)))
		last := r.Entries[5]
		if last.Exceptional != c.want || r.Entries[0].Differential != float64(20-c.want) || last.Differential != float64(c.gross-72-c.want) {
			t.Errorf("%d: %+v", c.gross, last)
		}
	}
}

// Rule 5.8 in a record: once twenty scores stand, bad ones cannot lift the
// Index by more than 5.0 over the lowest of a year; after the year they can.
func TestTheLowIndexHolds(t *testing.T) {
	var scores []Score
	for i := range 20 {
		scores = append(scores, flat(i, 80)) // Index 8.0
	}
	for i := range 20 {
		scores = append(scores, flat(30+i, 100))
	}
	r := Estimate(scores)
	if !r.HasLow || r.Low != 8 || r.Index != 13 || r.Cap != HardCap {
		t.Errorf("%g by %d over %g", r.Index, r.Cap, r.Low)
	}
	later := Estimate(append(scores, flat(30+19+400, 100)))
	if later.HasLow || later.Cap != NoCap || later.Index <= 13 {
		t.Errorf("after the year: %g by %d", later.Index, later.Cap)
	}
}

// Nine holes: the other nine are expected from the Index (2024), an
// approximation from memory; without an Index they wait.
func TestNineHoles(t *testing.T) {
	nine := flat(9, 92)
	nine.Holes, nine.Rating = nine.Holes[:9], 36
	if r := Estimate([]Score{nine}); r.Entries[0].Note != NineFirst || r.Thin.Missing() != 3 {
		t.Errorf("%+v", r.Entries[0])
	}
	r := Estimate([]Score{flat(0, 92), flat(1, 92), flat(2, 92), flat(3, 92), flat(4, 92), nine})
	gross := 0
	for _, h := range nine.Holes {
		gross += h.Strokes
	}
	if want := tenth(float64(gross-36) + .52*20 + 1.2); r.Entries[5].Differential != want {
		t.Errorf("%g, want %g", r.Entries[5].Differential, want)
	}
}

func TestScoresThatDoNotCount(t *testing.T) {
	short, unrated := flat(0, 92), flat(1, 92)
	short.Holes = short.Holes[:12]
	unrated.Slope = 0
	r := Estimate([]Score{short, unrated, flat(2, 92)})
	if r.Entries[0].Note != Holes || r.Entries[1].Note != NoRating || r.Entries[2].Note != Counts || r.Thin.Missing() != 2 || r.HasIndex {
		t.Errorf("%+v", r)
	}
	if r := Estimate(nil); r.Thin.Missing() != 3 || len(r.Entries) != 0 {
		t.Errorf("%+v", r)
	}
	// before an Index no hole counts more than par + 5 (Rule 3.1)
	blown := flat(0, 90)
	blown.Holes[0].Strokes = 15
	if r := Estimate([]Score{blown}); r.Entries[0].Adjusted != 90-5+9 {
		t.Errorf("%d", r.Entries[0].Adjusted)
	}
}

func TestWhatHoldsForAnyRecord(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var scores []Score
		for i := range rapid.IntRange(0, 45).Draw(t, "scores") {
			scores = append(scores, flat(7*i, rapid.IntRange(70, 130).Draw(t, "gross")))
		}
		r := Estimate(scores)
		if r.HasIndex != (len(scores) >= 3) || r.Index > 54 || r.HasLow && r.Index > r.Low+5+1e-9 {
			t.Fatalf("%+v", r)
		}
		back := slices.Clone(scores)
		slices.Reverse(back)
		if other := Estimate(back); other.Index != r.Index {
			t.Fatalf("in another order %g, not %g", other.Index, r.Index)
		}
		used := 0
		for _, e := range r.Entries {
			if e.Used {
				used++
			}
		}
		if n := best[min(len(scores), recordLength)].n; used != n {
			t.Fatalf("%d differentials are used, want %d", used, n)
		}
	})
}
