package forecast

import (
	"math"
	"runtime"

	"strokeledger/analysis/account"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/parallel"
)

// game plays the rounds of an ask, as they are and with changes.
type game struct {
	ask        Ask
	parameters golfer.Parameters
	terms      account.Terms
}

func newGame(a Ask) (*game, error) {
	fixed, err := expect.Level(a.Level)
	if err != nil {
		return nil, err
	}
	return &game{a, golfer.Committed(), account.Terms{Lens: fixed, Fixed: fixed, Boundary: golf.StandardBoundary}}, nil
}

// setup is how rounds are played.
type setup struct {
	levels        golfer.Levels
	style         golfer.Style
	noCompounding bool
}

// now is how the player plays as it is.
func (g *game) now() setup {
	s := setup{levels: g.ask.Levels, style: golfer.Style{ByHole: true, Drawn: g.ask.Straight}}
	if g.ask.UsePlan {
		s.style.Drawn = g.ask.Planned
	}
	return s
}

// round is a simulated round.
type round struct {
	score       int
	compounding float64
	doubles     int
}

// field is many rounds of one setup.
type field struct {
	rounds        []round
	noCompounding bool
}

// play plays some rounds of a setup on all cores, the same ones for each setup.
func (g *game) play(s setup, rounds int, judged bool) (field, error) {
	player, err := golfer.NewPlayer(&g.parameters, s.levels, g.ask.Card, golf.StandardBoundary)
	if err != nil {
		return field{}, err
	}
	if player, err = player.In(s.style); err != nil {
		return field{}, err
	}
	f := field{make([]round, rounds), s.noCompounding}
	workers := min(runtime.GOMAXPROCS(0), rounds)
	parallel.Do(workers, func(w int) {
		for i := w; i < rounds; i += workers {
			holes := player.Play(g.ask.Seed, uint64(i))
			if judged {
				f.rounds[i] = g.judge(holes)
				continue
			}
			for _, h := range holes {
				f.rounds[i].score += h.Strokes()
			}
		}
	})
	return f, nil
}

// judge counts a round with its doubles.
func (g *game) judge(holes []golf.Hole) round {
	a := account.Of(golf.Round{Holes: holes}, g.terms)
	r := round{score: int(a.Score), doubles: len(a.Doubles)}
	for _, d := range a.Doubles {
		r.compounding += d.Compounding
	}
	return r
}

// first are the first rounds of a field.
func (f *field) first(n int) *field { return &field{f.rounds[:n], f.noCompounding} }

// score is what a round counts.
func (f *field) score(r round) float64 {
	if f.noCompounding {
		return float64(r.score) - r.compounding
	}
	return float64(r.score)
}

// mean is that of the scores.
func (f *field) mean() float64 {
	sum := 0.0
	for _, r := range f.rounds {
		sum += f.score(r)
	}
	return sum / float64(len(f.rounds))
}

// chance is the share of the rounds at a target or better.
func (f *field) chance(target float64) float64 {
	n := 0
	for _, r := range f.rounds {
		if f.score(r) <= target+1e-9 {
			n++
		}
	}
	return float64(n) / float64(len(f.rounds))
}

// scores are how many rounds had each score.
func (f *field) scores() map[int]int {
	all := map[int]int{}
	for _, r := range f.rounds {
		all[r.score]++
	}
	return all
}

// count fills in what is about the scores.
func (c *Chance) count(f field) {
	n := float64(len(f.rounds))
	c.Mean, c.Scores = f.mean(), map[int]float64{}
	squares, clean := 0.0, 0
	for _, r := range f.rounds {
		squares += (float64(r.score) - c.Mean) * (float64(r.score) - c.Mean)
		if r.doubles == 0 {
			clean++
		}
	}
	if n > 1 {
		c.SD = math.Sqrt(squares / (n - 1))
	}
	for score, k := range f.scores() {
		c.Scores[score] = float64(k) / n
	}
	c.NoDoubles = float64(clean) / n
}
