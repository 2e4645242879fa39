package analysis

import (
	"flag"
	"math"
	"math/rand/v2"
	"testing"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/forecast"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/parallel"
)

var (
	plantedGolfers = flag.Int("planted", 40, "how many golfers the coverage of a chance is counted over")
	plantedFrom    = flag.Int("planted-from", 0, "number of the first of them")
)

// planted is a golfer of known levels with some rounds written down, and the truth.
type planted struct {
	history []golf.Played
	card    []golf.CardHole
	target  float64
	truth   float64
}

// plantedRounds is how many rounds each simulation has.
const plantedRounds = 1200

// plantGolfer plants the golfer of a number.
func plantGolfer(t *testing.T, number uint64, rounds int) planted {
	rng := rand.New(rand.NewPCG(11, number))
	overall := 77 + 18*rng.Float64()
	part := func() float64 { return min(max(overall+4*rng.NormFloat64(), 69), 109) }
	levels := golfer.Levels{Tee: part(), Approach: part(), ShortGame: part(), Putting: part()}
	p := planted{card: expect.ScaledCourse(5800 + 1000*rng.Float64())}
	parameters := golfer.Committed()
	season := golfer.Season{Player: "P", Card: p.card, Levels: levels, First: golf.Date{Year: 2026, Month: 4, Day: 1}, Days: 7, Rounds: rounds, Seed: number + 1000}
	played, err := season.Play(&parameters)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range played {
		p.history = append(p.history, golf.Played{Round: r})
	}
	c, err := forecast.Find(forecast.Ask{Target: 72, Level: 79, Levels: levels, Card: p.card, Rounds: plantedRounds, Seed: number + 5000, Only: true})
	if err != nil {
		t.Fatal(err)
	}
	p.target = min(max(math.Floor(c.Mean-6*rng.Float64()), golf.MinTarget), golf.MaxTarget)
	p.truth = c.AtOrBetter(int(p.target))
	return p
}

// The interval of a chance holds the truth as often as it says: 93 to 97 of 100, of
// golfers whose levels are known. The number here allows for that with three standard
// errors of how many are counted; 1,000 were counted once.
func TestChanceHoldsTheTruth(t *testing.T) {
	e := NewEngine()
	for _, rounds := range []int{PlanRounds} {
		n := *plantedGolfers
		held, above := make([]bool, n), make([]bool, n)
		parallel.Do(n, func(i int) {
			p := plantGolfer(t, uint64(*plantedFrom+i), rounds)
			c, err := e.Chance(ChanceInput{History: p.history, Target: p.target, Par18: 72, Card: p.card, Rounds: plantedRounds, Seed: uint64(*plantedFrom + i), Only: true})
			if err != nil {
				t.Error(err)
				return
			}
			held[i] = p.truth >= c.Interval.Low && p.truth <= c.Interval.High
			above[i] = p.truth > c.Interval.High
		})
		count, high := 0, 0
		for i := range held {
			if held[i] {
				count++
			}
			if above[i] {
				high++
			}
		}
		share := float64(count) / float64(n)
		t.Logf("%d rounds: held for %.3f of %d golfers, the truth above it for %.3f", rounds, share, n, float64(high)/float64(n))
		slack := 3 * math.Sqrt(.95*.05/float64(n))
		if share < .93-slack || share > .97+slack {
			t.Errorf("%d rounds: held for %.3f of %d golfers", rounds, share, n)
		}
	}
}
