package practice

import (
	"fmt"
	"math"
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

// A better golfer is never less likely to have a try count: every drill with a
// mark, every station, every whole level.
func TestChancesNeverRiseWithTheLevel(t *testing.T) {
	of := golfer.Committed()
	for _, d := range marked() {
		levels, err := LevelsOf(d, &of)
		if err != nil {
			t.Fatal(err)
		}
		for j := range d.Stations {
			for i := 1; i < len(levels); i++ {
				if levels[i][j] > levels[i-1][j]+1e-9 {
					t.Errorf("%s, station %d: %.5f at %d, %.5f at %d", d.Key, j, levels[i-1][j], golf.MinTarget+i-1, levels[i][j], golf.MinTarget+i)
				}
			}
		}
	}
}

func marked() []Drill {
	var all []Drill
	for _, d := range Drills() {
		if !d.NoMark {
			all = append(all, d)
		}
	}
	return all
}

// How many tries tell a 79 from a 90 and from an 85, beside what the design found
// with the first calibration (from memory of its table; logged, not held).
func TestMarksTellLevelsApart(t *testing.T) {
	of := golfer.Committed()
	for _, d := range marked() {
		levels, err := LevelsOf(d, &of)
		if err != nil {
			t.Fatal(err)
		}
		line := fmt.Sprintf("%-15s", d.Key)
		for _, today := range []float64{85, 90, 100} {
			m := d.Mark(levels.At(79), levels.At(today))
			line += fmt.Sprintf("  %g: %d of %d (%.2f, %.2f, %v)", today, m.Pass, m.Tries, m.Target, m.Today, m.Tells)
			if m.Tries%d.Set() != 0 || m.Target < passTarget || m.Target < m.Today || m.Tells != (m.Today <= passToday) {
				t.Errorf("%s: %+v", d.Key, m)
			}
		}
		t.Log(line)
	}
}

// The distribution of counts is a binomial where all chances are the same, and
// has the sums' mean and variance where they are not.
func TestCounts(t *testing.T) {
	p := counts([]float64{.3}, 4) // binomial 4, .3: .2401 .4116 .2646 .0756 .0081
	for k, want := range []float64{.2401, .4116, .2646, .0756, .0081} {
		if math.Abs(p[k]-want) > 1e-12 {
			t.Errorf("%d of 4: %g, want %g", k, p[k], want)
		}
	}
	chances := []float64{.9, .5, .2}
	mean, square, total := 0.0, 0.0, 0.0
	for k, x := range counts(chances, 12) {
		mean, square, total = mean+float64(k)*x, square+float64(k*k)*x, total+x
	}
	if variance := square - mean*mean; math.Abs(mean-6.4) > 1e-9 || math.Abs(variance-4*(.09+.25+.16)) > 1e-9 || math.Abs(total-1) > 1e-12 {
		t.Errorf("mean %g, variance %g, total %g", mean, variance, total)
	}
}
