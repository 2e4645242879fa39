package analysis

import (
	"flag"
	"math"
	"testing"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/forecast"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/parallel"
)

var plantedGolfers = flag.Int("planted", 12, "how many golfers of each kind the coverage of a chance is counted over")

// How the coverage of a chance is counted.
const (
	coverRounds = 10 // that each golfer has written down
	coverTarget = 79 // that each chases, on the reference course
)

// coverPlayed is how many rounds a chance is played for, and the truth counted over:
// more of them where many golfers are counted.
func coverPlayed(golfers int) (chance, truth int) {
	if golfers < 100 {
		return 2000, 10000
	}
	return 4000, 40000
}

// A kind of golfers of one truth, each with ten rounds of their own.
type planted struct {
	name   string
	levels golfer.Levels
	least  float64 // share of them whose interval holds the truth
}

func plantedKinds() []planted {
	return []planted{
		{"a 79", golfer.Even(79), .93},
		{"an 84", golfer.Even(84), .93},
		{"an 84 with uneven parts", golfer.Levels{Tee: 79, Approach: 88, ShortGame: 81, Putting: 88}, .93},
		{"a 90, where the chance is about .01", golfer.Even(90), .88},
	}
}

// truth is the chance of a kind, counted.
func (p *planted) truth(t *testing.T, rounds int) float64 {
	c, err := forecast.Find(forecast.Ask{Target: coverTarget, Level: coverTarget, Levels: p.levels, Card: expect.ReferenceCourse(), Rounds: rounds, Seed: 7, Only: true})
	if err != nil {
		t.Fatal(err)
	}
	return c.Chance
}

// golfers are the rounds of some golfers of a kind, ten each of one long season: the
// form of a day is independent of any other's.
func (p *planted) golfers(t *testing.T, n int) [][]golf.Played {
	parameters := golfer.Committed()
	season := golfer.Season{Player: "P", Card: expect.ReferenceCourse(), Levels: p.levels, First: golf.Date{Year: 2026, Month: 4, Day: 1}, Days: 1, Rounds: n * coverRounds, Seed: 11}
	played, err := season.Play(&parameters)
	if err != nil {
		t.Fatal(err)
	}
	all := make([][]golf.Played, n)
	for i, r := range played {
		all[i/coverRounds] = append(all[i/coverRounds], golf.Played{Round: r})
	}
	return all
}

// The interval of a chance holds the truth as often as it says: 93 to 97 of 100 of
// golfers whose levels are known, 88 or more where the chance is tiny. The numbers here
// allow for that with three standard errors of how many are counted; 1,000 of each were
// counted once.
func TestChanceHoldsTheTruth(t *testing.T) {
	e, n := NewEngine(), *plantedGolfers
	played, counted := coverPlayed(n)
	for _, kind := range plantedKinds() {
		truth := kind.truth(t, counted)
		held, above := make([]bool, n), make([]bool, n)
		histories := kind.golfers(t, n)
		parallel.Do(n, func(i int) {
			c, err := e.Chance(ChanceInput{History: histories[i], Target: coverTarget, Par18: 72, Card: expect.ReferenceCourse(), Rounds: played, Seed: uint64(i), Only: true})
			if err != nil {
				t.Error(err)
				return
			}
			held[i] = truth >= c.Interval.Low && truth <= c.Interval.High
			above[i] = truth > c.Interval.High
		})
		share, high := shareOf(held), shareOf(above)
		t.Logf("%s, chance %.4f: held for %.3f of %d golfers, the truth above it for %.3f", kind.name, truth, share, n, high)
		slack := 3 * math.Sqrt(.95*.05/float64(n))
		if share < kind.least-slack || share > .97+slack && kind.least > .9 {
			t.Errorf("%s: held for %.3f of %d golfers", kind.name, share, n)
		}
	}
}

// shareOf is the share that is true.
func shareOf(all []bool) float64 {
	n := 0
	for _, b := range all {
		if b {
			n++
		}
	}
	return float64(n) / float64(len(all))
}
