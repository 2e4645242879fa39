package compare

import (
	"math"
	"testing"

	"strokeledger/analysis/stat"
)

// counted is a count of rounds of 18 holes.
func counted(values ...float64) Figure {
	holes, hits := make([]float64, len(values)), 0.0
	for i, v := range values {
		holes[i] = 18
		hits += v
	}
	f := perRound(values, holes, ladder.drawn.over(len(values), 1))
	f.events = events{kind: ofRate, hits: int(hits), chances: 18 * len(values)}
	return f
}

// shared is a share of rounds.
func shared(hits, chances []float64) Figure {
	f := ratio(hits, chances, 1, ladder.drawn.over(len(hits), 1))
	all, tries := sums(hits, chances)
	f.events = events{kind: ofShare, hits: int(all), chances: int(tries)}
	return f
}

// Rounds that agree by luck are not certain: their interval is that of independent
// events. Two doubles in each of three rounds are 6 events, 2.20 to 13.06 (E. S.
// Pearson and H. O. Hartley, Biometrika Tables for Statisticians, table 40, from
// memory).
func TestRoundsThatAgreeAreNotCertain(t *testing.T) {
	drawn := ladder.drawn.over(3, 1)
	if i := drawn.cell(counted(2, 2, 2), 54).Interval; math.Abs(i.Low-2.20/3) > .005 || math.Abs(i.High-13.06/3) > .005 {
		t.Errorf("%+v", i)
	}
	// 5 of 41 chances, as often in every round: by hand from Wilson's formula
	up := drawn.cell(shared([]float64{1, 2, 2}, []float64{9, 16, 16}), 41).Interval
	if math.Abs(up.Low-.0532) > 5e-4 || math.Abs(up.High-.2555) > 5e-4 {
		t.Errorf("%+v", up)
	}
	// rounds that differ more than independent events reach farther than these
	if i := drawn.cell(counted(0, 0, 9), 54).Interval; i.Low != 0 || i.High < 15 {
		t.Errorf("%+v", i)
	}
}

// The words of counts: 4 leaks in five rounds and then none have a chance of .125
// where nothing changed, which Welch's test of the rounds puts at .016.
func TestWordsOfFewEvents(t *testing.T) {
	before, after := counted(1, 1, 0, 1, 1), counted(0, 0, 0, 0, 0)
	if d, _ := stat.Welch(before.Sample, after.Sample); d.P > .02 {
		t.Errorf("by Welch's test %g", d.P)
	}
	for name, c := range map[string]struct {
		from, to Figure
		want     Word
	}{
		"4 and none":                     {before, after, Leaning},
		"6 and none, no round differs":   {counted(2, 2, 2), counted(0, 0, 0), Clear}, // 2/2⁶
		"none and none":                  {after, after, Chance},
		"many, but as different as that": {counted(0, 9, 0, 9, 0, 9), counted(9, 9, 0, 9, 9, 9), Chance},
		"1 of 4 and 3 of 4, tea":         {shared([]float64{1, 0, 0}, []float64{2, 1, 1}), shared([]float64{1, 1, 1}, []float64{2, 1, 1}), Chance}, // .49
		"all of 30 and 20 of 30":         {shared([]float64{10, 10, 10}, []float64{10, 10, 10}), shared([]float64{7, 6, 7}, []float64{10, 10, 10}), Clear},
	} {
		if got := changeOf(c.from, c.to); got.Word != c.want {
			t.Errorf("%s: %d, want %d", name, got.Word, c.want)
		}
	}
	if c := changeOf(Figure{Sample: stat.Of([]float64{1, 1, 1}), Known: true}, Figure{Sample: stat.Of([]float64{2, 2, 2}), Known: true}); c.Word != 0 {
		t.Errorf("strokes of which no round differs from another have a word: %+v", c)
	}
}
