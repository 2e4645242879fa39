package forecast

import (
	"cmp"
	"fmt"
	"math/rand/v2"
	"slices"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/stat"
)

// Ask is what the chance of a score is asked for.
type Ask struct {
	Target float64       // score of the holes of the card that is chased
	Level  float64       // of the golfer whose target it is, 68 to 110: the judge of doubles
	As     float64       // level at which a part of the game is tried for what ifs, 68 to 110; 0 stands for Level
	Levels golfer.Levels // at which the parts of the game are played
	Card   []golf.CardHole
	Rounds int // to play, at least 1
	Seed   uint64

	// Holes with a picture, by number, as they are played straight and by the plan; nil
	// where there is none. UsePlan plays them by the plan.
	Straight, Planned map[int]golfer.Drawn
	UsePlan           bool

	Only bool        // no change is tried, and nothing is searched
	Lost []Lost      // of each round of the player against Levels; fewer than two have no interval
	Also [][2]Change // pairs of changes that are asked for besides the most helpful ones

	// Gain is how many strokes for 18 holes a part of the game wins from one level to
	// another, about: where the search for what it takes begins.
	Gain func(c golf.Category, from, to float64) float64

	// Widens is the multiple by which the scores of 18 holes spread wider when they are
	// some strokes worse; nil where that is not known.
	Widens func(worse float64) float64
}

// as is the level at which a part of the game is tried.
func (a *Ask) as() float64 { return cmp.Or(a.As, a.Level) }

// widens is Widens for strokes over the card; 1 where it is not known.
func (a *Ask) widens(worse float64) float64 {
	if a.Widens == nil {
		return 1
	}
	return a.Widens(worse * 18 / float64(len(a.Card)))
}

// Lost is what a round lost in all parts of the game together against the golfer of
// some levels, and on how many holes.
type Lost struct {
	Strokes float64
	Holes   int // whose strokes are known
}

// Chance is how likely a score is, and what would change that.
type Chance struct {
	Target   float64         // score of the holes of the card
	Levels   golfer.Levels   // that were played
	Rounds   int             // that were played
	Played   int             // rounds of the player that it stands on; 0 with a note
	Thin     golf.Thin       // why the target's golfer was played, and there is no interval
	Mean, SD float64         // of the score
	Scores   map[int]float64 // share of the rounds with each score
	Chance   float64         // of the target or better
	Interval stat.Interval   // of Chance, 95 %; not known with a note

	// Beyond is what the player takes a round beyond what was played, because a part of
	// the game is past the end of the levels: negative where it is better than 68. Chance
	// counts it, Mean and Scores do not.
	Beyond float64

	NoDoubles float64  // chance of a round without one
	WhatIf    []WhatIf // the one that helps most first
	Pairs     []WhatIf // the most helpful two of the first three together, and those asked for
	Takes     Takes
}

// AtOrBetter is the chance of a score or better.
func (c *Chance) AtOrBetter(score int) float64 {
	sum := 0.0
	for s, share := range c.Scores {
		if s <= score {
			sum += share
		}
	}
	return sum
}

// WhatIf is what a change would do.
type WhatIf struct {
	Change  Change
	Second  Change  // 0 where it is one change alone
	Strokes float64 // a round, negative where it helps
	Chance  float64 // of the target or better
}

// Takes is the smallest single improvement of a part of the game by which the target
// comes in one round of two.
type Takes struct {
	Already bool          // it comes in one of two as it is
	Known   bool          // there is one; otherwise no single part is enough
	Part    golf.Category // that improves
	Level   float64       // to which
	Strokes float64       // a round, negative
	Chance  float64       // then
}

// resamples is how often the player's rounds are drawn anew for the interval.
const resamples = 2000

// confidence is how sure the interval is.
const confidence = .95

// Find plays the rounds of an ask and of its changes. It fails on what Simulate
// fails on.
func Find(a Ask) (Chance, error) {
	if len(a.Card) == 0 || a.Rounds < 1 {
		return Chance{}, fmt.Errorf("%d rounds on %d holes; allowed: 1 or more of both", a.Rounds, len(a.Card))
	}
	g, err := newGame(a)
	if err != nil {
		return Chance{}, err
	}
	base, err := g.play(g.now(), a.Rounds, true)
	if err != nil {
		return Chance{}, err
	}
	c := Chance{Target: a.Target, Levels: a.Levels, Rounds: a.Rounds}
	c.count(base)
	curve := newCurve(base.scores(), a.Target, a.widens)
	c.Chance = base.chance(a.Target)
	if c.Played = len(a.Lost); c.Played >= 2 {
		c.Beyond = a.shift(nil)
		if c.Beyond > beyondFrom || c.Beyond < -beyondFrom {
			c.Chance = curve.at(c.Beyond)
		}
		c.Interval = a.interval(curve)
	}
	if a.Only {
		return c, nil
	}
	if err := g.whatIfs(&c, &base); err != nil {
		return Chance{}, err
	}
	c.Takes, err = g.takes(&c, curve, &base)
	return c, err
}

// beyondFrom is from how many strokes on a player is taken to be past the end of the
// levels; less is a matter of rounding.
const beyondFrom = .01

// shift is by how much drawn rounds of the player were worse than the levels that
// are played, in strokes over the card; all rounds once for nil.
func (a *Ask) shift(drawn []int32) float64 {
	strokes, holes := 0.0, 0
	if drawn == nil {
		for _, l := range a.Lost {
			strokes, holes = strokes+l.Strokes, holes+l.Holes
		}
	}
	for _, i := range drawn {
		strokes, holes = strokes+a.Lost[i].Strokes, holes+a.Lost[i].Holes
	}
	return strokes / float64(max(holes, 1)) * float64(len(a.Card))
}

// interval is where the chance lies when the player's rounds are drawn anew, whole and
// all parts together. The chance falls as the shift rises, so that its quantiles are
// those of the shift.
func (a *Ask) interval(c curve) stat.Interval {
	n := len(a.Lost)
	draws := stat.NewDraws(rand.New(rand.NewPCG(a.Seed, uint64(n))), n, resamples)
	shift := draws.Interval(confidence, a.shift)
	return stat.Interval{Low: c.at(shift.High), High: c.at(shift.Low)}
}

// byHelp sorts what ifs, the one that helps most first.
func byHelp(all []WhatIf) {
	slices.SortStableFunc(all, func(x, y WhatIf) int { return cmp.Compare(x.Strokes, y.Strokes) })
}
