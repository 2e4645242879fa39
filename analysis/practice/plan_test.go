package practice

import (
	"errors"
	"testing"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/parallel"
)

// played are rounds of a golfer of given levels on the reference course.
func played(t testing.TB, levels golfer.Levels, rounds int, seed uint64) []golf.Round {
	t.Helper()
	of := golfer.Committed()
	player, err := golfer.NewPlayer(&of, levels, expect.ReferenceCourse(), golf.StandardBoundary)
	if err != nil {
		t.Fatal(err)
	}
	all := make([]golf.Round, rounds)
	for i := range all {
		all[i].Holes = player.Play(seed, uint64(i))
	}
	return all
}

const seeds = 400

// A part of the game played as a 95, the rest as a 79: twelve rounds put that part
// first in 90 of 100, the short game in 88.
func TestPlantedWeaknessesComeFirst(t *testing.T) {
	for _, part := range golf.Categories {
		levels := golfer.Even(79)
		switch part {
		case golf.TeeShots:
			levels.Tee = 95
		case golf.Approach:
			levels.Approach = 95
		case golf.ShortGame:
			levels.ShortGame = 95
		default:
			levels.Putting = 95
		}
		first := make([]bool, seeds)
		parallel.Do(seeds, func(i int) {
			g, err := Committed().Look(played(t, levels, 12, uint64(1000+i)), 79)
			first[i] = err == nil && g.order()[0] == part
		})
		n := 0
		for _, is := range first {
			if is {
				n++
			}
		}
		least := .90
		if part == golf.ShortGame {
			least = .88
		}
		t.Logf("%s: first in %d of %d", part, n, seeds)
		if float64(n) < least*seeds {
			t.Errorf("%s: first in %d of %d", part, n, seeds)
		}
	}
}

// Golfers who play every part at one level: a clear part in 8 of 100 at most, and
// intervals that hold what the family loses: parts 90 of 100 or more, bands 80 or
// more everywhere.
func TestEvenGolfersHaveNoWeakness(t *testing.T) {
	for _, level := range []float64{79, 85, 90} {
		games := make([]Game, seeds)
		parallel.Do(seeds, func(i int) {
			games[i], _ = Committed().Look(played(t, golfer.Even(level), 12, uint64(5000+i)), 79)
		})
		clearly := 0
		parts, inBands := [golf.Putting + 1]int{}, make([]int, len(bands))
		for _, g := range games {
			is := false
			for _, c := range golf.Categories {
				is = is || g.Parts[c].Certainty() == Clear
				if holds(g.Parts[c], Committed().Lost(level, 79, int(c))) {
					parts[c]++
				}
			}
			for i := range bands {
				if holds(g.Bands[i], Committed().Lost(level, 79, bandRow+i)) {
					inBands[i]++
				}
			}
			if is {
				clearly++
			}
		}
		t.Logf("%g: a clear part in %d of %d; parts covered %v", level, clearly, seeds, parts[1:])
		if clearly > seeds*8/100 {
			t.Errorf("%g: a clear part in %d of %d", level, clearly, seeds)
		}
		for _, c := range golf.Categories {
			if parts[c] < seeds*90/100 {
				t.Errorf("%g, %s: covered in %d of %d", level, c, parts[c], seeds)
			}
		}
		for i, b := range bands {
			if inBands[i] < seeds*80/100 {
				t.Errorf("%g, %+v: covered in %d of %d", level, b, inBands[i], seeds)
			}
		}
	}
}

func holds(e Estimate, x float64) bool { i := e.Interval(); return i.Low <= x && x <= i.High }

func TestCandidates(t *testing.T) {
	of := golfer.Committed()
	levels := golfer.Even(82)
	levels.Putting = 98
	g, err := Committed().Look(played(t, levels, 12, 3), 79)
	if err != nil {
		t.Fatal(err)
	}
	for _, minutes := range []int{60, 95, 180, 600} {
		all, err := g.Candidates(of, minutes)
		if err != nil {
			t.Fatal(err)
		}
		if len(all) < 3 || len(all) > mostCandidates || all[0].Part != golf.Putting || all[0].Sure != Clear || all[0].Drill.Part != golf.Putting {
			t.Errorf("%+v", all)
		}
		sum := 0
		for _, c := range all {
			sum += c.Minutes
			if c.Minutes < leastMinutes || c.Minutes%minuteStep != 0 || c.WinBack < 0 || c.Drill.Key == "" || !c.Drill.NoMark && c.Mark.Pass == 0 {
				t.Errorf("%+v", c)
			}
		}
		if sum != minutes {
			t.Errorf("%d minutes of %d", sum, minutes)
		}
	}
	if _, err := Committed().Look(nil, 79); !errors.Is(err, ErrNothing) {
		t.Errorf("without rounds: %v", err)
	}
	if _, err := Committed().Look(nil, 60); err == nil || errors.Is(err, ErrNothing) {
		t.Errorf("a target of 60: %v", err)
	}
}

// s² / ((w / 1.28)² - s² / n0): a gain of 2 with a spread of 2 after 12 rounds takes
// 4 / (2.4414 - .3333) = 1.9 rounds, told as 5; one of 1 takes 4 / (.6104 - .3333) =
// 14.4; one of .5 will not show.
func TestMeasureAgain(t *testing.T) {
	for gain, want := range map[float64]int{2: 5, 1: 15, .5: 0, 0: 0} {
		if got := measureAgain(gain, 2, 12); got != want {
			t.Errorf("%g: %d rounds, want %d", gain, got, want)
		}
	}
}

// A short-sided chip counts for what it adds to a chip with green to work with,
// and only where it was written down.
func TestShortSideIsCounted(t *testing.T) {
	rounds := played(t, golfer.Even(85), 6, 9)
	before, err := Committed().Look(rounds, 79)
	if err != nil {
		t.Fatal(err)
	}
	marked := 0
	for i := range rounds {
		for _, h := range rounds[i].Holes {
			for k := range h.Shots {
				if s := &h.Shots[k]; s.Lie == golf.Rough && s.Distance < 20*golf.Yard && s.Distance > 8*golf.Yard {
					s.ShortSided, marked = true, marked+1
				}
			}
		}
	}
	after, err := Committed().Look(rounds, 79)
	if err != nil {
		t.Fatal(err)
	}
	if before.Cross[ShortSide].Times != 0 || after.Cross[ShortSide].Times != marked || after.Cross[ShortSide].Mean <= 0 {
		t.Errorf("before %+v, after %+v, %d marked", before.Cross[ShortSide], after.Cross[ShortSide], marked)
	}
	for _, r := range rounds {
		for _, h := range r.Holes {
			golf.RunBook{{Lie: golf.Rough, Start: 7.9, To: 20}}.Fill(h.Shots) // less than 8 yd, so that it speaks for all of them
		}
	}
	byBook, err := Committed().Look(rounds, 79)
	if err != nil {
		t.Fatal(err)
	}
	if c := byBook.Cross[ShortSide]; after.Cross[ShortSide].Book != 0 || c.Book != marked || c.Times != marked || c.Mean == after.Cross[ShortSide].Mean {
		t.Errorf("by the model %+v, by a book %+v", after.Cross[ShortSide], c)
	}
}

func BenchmarkPlan(b *testing.B) {
	of, rounds := golfer.Committed(), played(b, golfer.Even(86), 300, 1)
	for b.Loop() {
		g, err := Committed().Look(rounds, 79)
		if err != nil {
			b.Fatal(err)
		}
		if _, err := g.Candidates(of, 180); err != nil {
			b.Fatal(err)
		}
	}
}
