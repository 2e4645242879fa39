package compare

import (
	"math"
	"testing"

	"strokeledger/analysis/account"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/stat"
)

func keptOf(rounds []golf.Round) []golf.Played {
	var all []golf.Played
	for i, r := range rounds {
		all = append(all, golf.Played{ID: golf.RoundID(i + 1), Round: r, Target: 79})
	}
	return all
}

func judged(t testing.TB, rounds []golf.Round, level float64) []*Judged {
	t.Helper()
	lens, err := expect.Level(level)
	if err != nil {
		t.Fatal(err)
	}
	all, err := Judge(keptOf(rounds), lens, golf.StandardBoundary)
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// twoMonths is ten rounds at some levels and ten more at others, side by side.
func twoMonths(t testing.TB, before, after golfer.Levels, seed uint64) Sheet {
	rounds := append(season(t, before, 10, 2*seed), season(t, after, 10, 2*seed+1)...)
	for i := range rounds {
		rounds[i].Date = golf.Date{Year: 2026, Month: 5, Day: 1}.AddDays(3 * i)
	}
	return NewSheet(judged(t, rounds, 79), []golf.Span{{Last: 10, Before: true}, {Last: 10}}, golf.StandardBoundary, ladder, seed)
}

// approachWorse is an approach that loses four strokes a round more than a 79's
// own, by the mean of many rounds.
func approachWorse(t testing.TB) golfer.Levels {
	t.Helper()
	const rounds = 2000
	mean := func(l golfer.Levels) float64 {
		sum := 0.0
		for _, j := range judged(t, season(t, l, rounds, 77), 79) {
			sum += j.lost[golf.Approach]
		}
		return sum / rounds
	}
	own := mean(golfer.Even(79))
	levels := golfer.Even(79)
	levels.Approach = 88
	levels.Approach = 79 + 9*4/(mean(levels)-own) // nearly straight from 79 on
	if d := mean(levels) - own; math.Abs(d-4) > .15 {
		t.Fatalf("the planted approach loses %.2f more, not 4", d)
	}
	return levels
}

// A change that was planted is found.
func TestPlantedChangesAreFound(t *testing.T) {
	const seeds = 100
	worse := approachWorse(t)
	found := 0
	for seed := range uint64(seeds) {
		if c := twoMonths(t, worse, golfer.Even(79), seed).Columns[1].Cells[golf.Approach].Change; c.Word == Clear && c.Mean < 0 {
			found++
		}
	}
	t.Logf("found %d of %d", found, seeds)
	if found < 85 {
		t.Errorf("an approach better by 4 strokes is clear in %d of %d", found, seeds)
	}
}

// The interval of 95 % holds the truth in 93 to 97 of 100: for whole rounds the
// truth of everything lost is known exactly, a golfer's own expectation less
// that of the one he is compared with.
func TestIntervalsHoldTheTruth(t *testing.T) {
	const seeds = 1000
	card := expect.ReferenceCourse()
	for _, c := range []struct {
		name  string
		holes func(round int) int
	}{
		{"whole rounds", func(int) int { return 18 }},
		{"nines among them", func(round int) int { return []int{18, 9, 18}[round%3] }},
	} {
		inside := 0
		truth := 0.0
		for seed := range uint64(seeds) {
			rounds := season(t, golfer.Even(84), 12, 4000+seed)
			for i := range rounds {
				rounds[i].Holes = rounds[i].Holes[:c.holes(i)]
			}
			sheet := NewSheet(judged(t, rounds, 79), []golf.Span{{Last: 12}}, golf.StandardBoundary, Ladder{drawn: &draws{}}, seed)
			cell := sheet.Columns[0].Cells[0]
			truth = lossOf(t, 84, 79, card, rounds)
			if cell.HasInterval() && cell.Interval.Low <= truth && truth <= cell.Interval.High {
				inside++
			}
		}
		t.Logf("%s: %d of %d hold %.3f", c.name, inside, seeds, truth)
		if inside < 930 || inside > 970 {
			t.Errorf("%s: %d of %d intervals hold the truth", c.name, inside, seeds)
		}
	}
}

// lossOf is what a golfer of a level loses to another for 18 holes, on the
// holes of some rounds.
func lossOf(t *testing.T, level, to float64, card []golf.CardHole, rounds []golf.Round) float64 {
	a, err := expect.Level(level)
	if err != nil {
		t.Fatal(err)
	}
	b, err := expect.Level(to)
	if err != nil {
		t.Fatal(err)
	}
	lost, holes := 0.0, 0
	for _, r := range rounds {
		n := len(r.Holes)
		holes += n
		lost += a.Course(card[:n]) - b.Course(card[:n])
	}
	return lost * 18 / float64(holes)
}

// What stands in a column adds up: bands to their part, parts to everything,
// and everything to what the accounts of the rounds lost.
func TestASheetAddsUp(t *testing.T) {
	rounds := judged(t, season(t, golfer.Even(86), 9, 5), 79)
	sheet := NewSheet(rounds, []golf.Span{{Last: 4}, {Last: 9}, {To: golf.Date{Year: 2020, Month: 1, Day: 1}}}, golf.StandardBoundary, ladder, 1)
	for i, c := range sheet.Columns {
		sum := map[golf.Category]float64{}
		parts, lost := 0.0, 0.0
		shots := 0
		for k, row := range sheet.Rows {
			switch {
			case row.Category != 0 && row.Band == (account.Band{}):
				parts += c.Cells[k].Mean
				shots += c.Cells[k].Shots
			case row.Category != 0:
				sum[row.Category] += c.Cells[k].Mean
			}
		}
		for _, r := range c.Rounds {
			lost += r.Account.Lost.Total
		}
		if n := len(c.Rounds); n > 0 {
			lost /= float64(n)
		}
		if math.Abs(parts-c.Cells[0].Mean) > 1e-9 || math.Abs(parts-lost) > 1e-9 || shots != c.Cells[0].Shots {
			t.Errorf("column %d: parts %g, all %g, accounts %g; shots %d of %d", i, parts, c.Cells[0].Mean, lost, shots, c.Cells[0].Shots)
		}
		for _, part := range golf.Categories {
			if math.Abs(sum[part]-c.Cells[part].Mean) > 1e-9 {
				t.Errorf("column %d: bands of %s add up to %g, not %g", i, part, sum[part], c.Cells[part].Mean)
			}
			if got := len(c.ShotsOf(Row{Category: part})); got != c.Cells[part].Shots {
				t.Errorf("column %d: %d shots behind %s, %d counted", i, got, part, c.Cells[part].Shots)
			}
		}
		for k, m := range Measures {
			behind, counted := c.HolesOf(m, golf.StandardBoundary), 0.0
			for _, r := range c.Rounds {
				value, chances := m.of(r)
				if m.Share {
					value = chances
				}
				counted += value
			}
			if m.Name != "compounding" && m.Name != "putts" && m.Name != "penalties" && float64(len(behind)) != counted {
				t.Errorf("column %d: %d holes behind %s, %g counted", i, len(behind), m.Name, counted)
			}
			if len(c.Rounds) == 0 && c.Measures[k].Known {
				t.Errorf("an empty column knows its %s", m.Name)
			}
		}
	}
}

// A change of whole rounds is Welch's test of their values. Worked example:
// NIST/SEMATECH e-Handbook 1.3.5.3 stands in package stat; here that the same
// test is used, and that a side of two rounds has no word.
func TestChangesAreWelchs(t *testing.T) {
	a, b := []float64{1, 4, 2, 6, 3}, []float64{-1, 0, 2, 1}
	eighteen := func(n int) []float64 {
		all := make([]float64, n)
		for i := range all {
			all[i] = 18
		}
		return all
	}
	from, to := perRound(a, eighteen(5), ladder.drawn.over(5, 1)), perRound(b, eighteen(4), ladder.drawn.over(4, 1))
	want, _ := stat.Welch(stat.Of(a), stat.Of(b))
	if c := changeOf(from, to); c.Mean != want.Mean || c.Word != Clear || want.P > .05 {
		t.Errorf("%+v, want %+v", c, want)
	}
	if c := changeOf(from, perRound(b[:2], eighteen(2), ladder.drawn.over(2, 1))); !c.Known || c.Word != 0 {
		t.Errorf("two rounds have a word: %+v", c)
	}
	if c := changeOf(from, perRound(nil, nil, ladder.drawn.over(0, 1))); c.Known {
		t.Errorf("a change from nothing: %+v", c)
	}
}

// The same rounds told with a hole less on one side weigh by their holes.
func TestRoundsWeighByTheirHoles(t *testing.T) {
	f := perRound([]float64{4, 1}, []float64{18, 9}, ladder.drawn.over(2, 1))
	if want := 18 * 5. / 27; math.Abs(f.Mean-want) > 1e-12 {
		t.Errorf("%g, want %g", f.Mean, want)
	}
}

// A change is from the nearest span before that has rounds; a span without rounds
// has none.
func TestChangesSkipEmptySpans(t *testing.T) {
	rounds := season(t, golfer.Even(79), 12, 3)
	first, last := rounds[0].Date, rounds[len(rounds)-1].Date
	empty := golf.Span{From: last.AddDays(400), To: last.AddDays(401)}
	s := NewSheet(judged(t, rounds, 79), []golf.Span{empty, {From: first, To: rounds[5].Date}, empty, {From: rounds[6].Date, To: last}, empty}, golf.StandardBoundary, NewLadder(), 1)
	for i, want := range []int{-1, -1, 1, 1, 3} {
		if got := s.PlayedBefore(i); got != want {
			t.Errorf("before column %d rounds were played in %d, want %d", i, got, want)
		}
	}
	for i, want := range []bool{false, false, false, true, false} {
		if got := s.Columns[i].Cells[golf.Putting].Change.Known; got != want {
			t.Errorf("column %d: a change is known: %t", i, got)
		}
	}
	if c := s.Columns[3].Cells[0]; c.Change.Mean != c.Mean-s.Columns[1].Cells[0].Mean {
		t.Errorf("%+v", c.Change)
	}
}
