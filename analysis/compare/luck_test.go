package compare

import (
	"sync"
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

// luckSeeds is how many players who do not change are looked at, with seeds 0 to
// 1,999: each plays twenty rounds as an 84, the same golfer all the time.
const luckSeeds = 2000

// luck is what was said of players who did not change.
type luck struct {
	strokes map[string]*[golf.Putting + 1]int // how often a cell was clear, by page
	counts  []int                             // how often a measure was clear
	tested  []int                             // how often both sides of it had something
	inside  map[int][]int                     // how often its interval held the truth, by how many rounds
}

// spansOf compares the last rounds with as many before.
func spansOf(rounds int) []golf.Span {
	return []golf.Span{{Last: rounds, Before: true}, {Last: rounds}}
}

// lucky plays them once for all tests. It takes some twenty seconds on one core.
var lucky = sync.OnceValue(func() *luck {
	t := new(testing.B) // season and judged want one; they fail on no legal input
	l := &luck{strokes: map[string]*[golf.Putting + 1]int{"months": {}, "months with nines": {}, "roster": {}},
		counts: make([]int, len(Measures)), tested: make([]int, len(Measures)), inside: map[int][]int{}}
	cells := map[int][][]Cell{} // of measures, by how many rounds
	value, chances := make([]float64, len(Measures)), make([]float64, len(Measures))
	plain := Ladder{drawn: ladder.drawn} // without levels, which nobody asks here
	for seed := range uint64(luckSeeds) {
		rounds := season(t, golfer.Even(84), 20, seed)
		all := judged(t, rounds, 79)
		for _, r := range all {
			for k, m := range Measures {
				v, c := m.of(r)
				value[k] += v
				chances[k] += c
			}
		}
		for _, n := range []int{3, 5, 10} {
			cells[n] = append(cells[n], NewSheet(all, spansOf(n), golf.StandardBoundary, plain, 18).Columns[1].Measures)
		}
		l.strokesSaid(t, rounds, all, plain)
	}
	for n, of := range cells {
		l.inside[n] = make([]int, len(Measures))
		for k, m := range Measures {
			truth := value[k] / chances[k]
			if !m.Share {
				truth *= wholeRound
			}
			for _, c := range of {
				l.count(n, k, c[k], truth)
			}
		}
	}
	return l
})

// strokesSaid counts what months and roster say of the strokes of a player.
func (l *luck) strokesSaid(t testing.TB, rounds []golf.Round, all []*Judged, plain Ladder) {
	months := func(page string, all []*Judged) {
		cells := NewSheet(all, spansOf(10), golf.StandardBoundary, plain, 18).Columns[1].Cells
		for k := range l.strokes[page] {
			if cells[k].Change.Word == Clear {
				l.strokes[page][k]++
			}
		}
	}
	months("months", all)
	latest := summaries(t, rounds, 79)
	var form Form
	form.lost(ladder.PartsLost(inOrderOfDays(latest[10:]), 79, 18), ladder.PartsLost(inOrderOfDays(latest[:10]), 79, 18))
	for k, c := range form.Changes {
		if c.Word == Clear {
			l.strokes["roster"][k]++
		}
	}
	for i := 1; i < len(rounds); i += 3 { // one round in three has nine holes, front or back
		rounds[i].Holes = rounds[i].Holes[9*(i%2):][:9]
	}
	months("months with nines", judged(t, rounds, 79))
}

// count counts a measure over n rounds.
func (l *luck) count(n, k int, c Cell, truth float64) {
	if c.HasInterval() && c.Interval.Low <= truth && truth <= c.Interval.High {
		l.inside[n][k]++
	}
	if n == 10 && c.Change.Known {
		l.tested[k]++
		if c.Change.Word == Clear {
			l.counts[k]++
		}
	}
}

// A change that is none is called clear as seldom as the word promises, p < .05,
// on every page: over ten rounds and the ten before in 4 to 6 % of the cells of
// 2,000 players, for everything and for each part of the game; no cell is more than
// three standard errors, 1.5 %, from the 5. A report is made of months.
func TestLuckIsSeldomClear(t *testing.T) {
	for page, clear := range lucky().strokes {
		t.Logf("%s: clear in %v of %d", page, *clear, luckSeeds)
		sum := 0
		for k, n := range clear {
			sum += n
			if n < luckSeeds*35/1000 || n > luckSeeds*65/1000 {
				t.Errorf("%s: row %d is clear in %d of %d", page, k, n, luckSeeds)
			}
		}
		if all := luckSeeds * len(clear); sum < all*4/100 || sum > all*6/100 {
			t.Errorf("%s: %d of %d cells are clear", page, sum, all)
		}
	}
}

// Counts and shares of players who do not change are clear in 6 % at most; exact
// tests of few events say it less often than that.
func TestLuckInCountsIsSeldomClear(t *testing.T) {
	l := lucky()
	for k, m := range Measures {
		t.Logf("%s: clear in %d of %d", m.Name, l.counts[k], l.tested[k])
		if l.tested[k] == 0 || l.counts[k] > l.tested[k]*6/100 {
			t.Errorf("%s is clear in %d of %d", m.Name, l.counts[k], l.tested[k])
		}
	}
}

// Intervals of 95 % of counts and shares hold the truth, the mean of all 40,000
// rounds, in 94 % at least, over three, five and ten rounds. Independent events
// alone would hold it less often, since a round's form varies; few rounds alone,
// too, since they may agree by luck.
func TestIntervalsOfCountsHoldTheTruth(t *testing.T) {
	for n, inside := range lucky().inside {
		for k, m := range Measures {
			t.Logf("%d rounds, %s: %d of %d", n, m.Name, inside[k], luckSeeds)
			if least := luckSeeds * 94 / 100; inside[k] < least {
				t.Errorf("%d rounds: %d of %d intervals of %s hold the truth, not %d", n, inside[k], luckSeeds, m.Name, least)
			}
		}
	}
}
