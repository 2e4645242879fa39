package forecast

import (
	"fmt"
	"math"
	"runtime"

	"strokeledger/analysis/account"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/parallel"
)

// Plan is what to simulate.
type Plan struct {
	Level  float64         // the score that is chased, and the golfer who judges doubles; 68 to 110
	Levels golfer.Levels   // the levels that the parts of the game are played at
	Card   []golf.CardHole // 1 to 18 holes
	Rounds int             // at least 1
	Seed   uint64          // the same seed gives the same result on any number of cores
}

// Outcome is what many rounds came to. Shares are from 0 to 1; the other
// figures are means a round.
type Outcome struct {
	Rounds          int             // as in the plan
	Mean            float64         // score
	SD              float64         // standard deviation of the score of a round; 0 with a note
	Thin            golf.Thin       // why there is no SD; no note when there is one
	Scores          map[int]float64 // share of the rounds with each score; a score that never came is not there
	AtLevelOrBetter float64         // share of the rounds at Plan.Level or below
	Fairways        float64         // share of the fairways that were hit, 0 where there was none to hit
	Greens          float64         // hit, in par - 2 strokes or fewer
	Putts           float64         // strokes from the green
	ThreePutts      float64         // greens that took three putts or more
	UpAndDown       float64         // share of the chances that were taken, 0 where there was none
	Doubles         float64         // holes at par + 2 or worse
	CompoundDoubles float64         // of these, those on which one mistake led to the next
}

// Simulate plays the rounds of a plan on all cores. It fails on a level out of
// range, a card without holes or fewer than one round.
func Simulate(plan Plan) (Outcome, error) {
	if len(plan.Card) == 0 || plan.Rounds < 1 {
		return Outcome{}, fmt.Errorf("a plan of %d rounds on %d holes; allowed: 1 or more of both", plan.Rounds, len(plan.Card))
	}
	fixed, err := expect.Level(plan.Level)
	if err != nil {
		return Outcome{}, err
	}
	parameters := golfer.Committed()
	player, err := golfer.NewPlayer(&parameters, plan.Levels, plan.Card, golf.StandardBoundary)
	if err != nil {
		return Outcome{}, err
	}
	terms := account.Terms{Lens: fixed, Fixed: fixed, Boundary: golf.StandardBoundary}
	return playAll(player, terms, plan).outcome(plan), nil
}

// minForSD is from how many rounds a deviation can be worked out.
const minForSD = 2

// tally counts whole numbers only, so that no order of adding changes it.
type tally struct {
	scores map[int]int // rounds by score
	counts account.Counts
}

// add adds another tally.
func (t *tally) add(other *tally) {
	for score, n := range other.scores {
		t.scores[score] += n
	}
	t.counts.Add(other.counts)
}

// playAll shares the rounds out over the cores in turn: each round has its own
// stream of random numbers, so that it does not matter who plays it.
func playAll(player *golfer.Player, terms account.Terms, plan Plan) *tally {
	workers := min(runtime.GOMAXPROCS(0), plan.Rounds)
	tallies := make([]*tally, workers)
	parallel.Do(workers, func(w int) {
		tallies[w] = &tally{scores: map[int]int{}}
		for i := w; i < plan.Rounds; i += workers {
			a := account.Of(golf.Round{Holes: player.Play(plan.Seed, uint64(i))}, terms)
			tallies[w].scores[int(a.Score)]++
			tallies[w].counts.Add(a.Counts)
		}
	})
	for _, t := range tallies[1:] {
		tallies[0].add(t)
	}
	return tallies[0]
}

// outcome turns counts into means and shares.
func (t *tally) outcome(plan Plan) Outcome {
	n := float64(plan.Rounds)
	o := Outcome{Rounds: plan.Rounds}
	o.score(t.scores, plan.Level)
	c := t.counts
	o.Fairways, o.UpAndDown = share(c.Fairways, c.FairwayChances), share(c.UpAndDowns, c.UpAndDownChances)
	o.Greens, o.Putts, o.ThreePutts = float64(c.Greens)/n, float64(c.Putts)/n, float64(c.ThreePutts)/n
	o.Doubles, o.CompoundDoubles = float64(c.Doubles)/n, float64(c.Compound)/n
	return o
}

// score fills in what is about the score, from how many rounds had each.
func (o *Outcome) score(rounds map[int]int, level float64) {
	n := float64(o.Rounds)
	o.Scores = map[int]float64{}
	sum, squares, within := 0, 0, 0
	for score, k := range rounds {
		sum += k * score
		squares += k * score * score
		if float64(score) <= level {
			within += k
		}
		o.Scores[score] = float64(k) / n
	}
	o.Mean = float64(sum) / n
	if o.Thin = golf.Enough(golf.ThinSpread, o.Rounds, minForSD); !o.Thin.Any() {
		o.SD = math.Sqrt((float64(squares) - float64(sum)*o.Mean) / (n - 1))
	}
	o.AtLevelOrBetter = float64(within) / n
}

// share is the part of the chances that were taken.
func share(hit, chances int) float64 {
	if chances == 0 {
		return 0
	}
	return float64(hit) / float64(chances)
}
