package forecast

import (
	"math"
	"runtime"
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/stat"
)

// asked is an ask of a golfer who is a weak putter, on the reference course.
func asked(rounds int) Ask {
	return Ask{Target: 79, Level: 79, Levels: golfer.Levels{Tee: 80, Approach: 83, ShortGame: 78, Putting: 90}, Card: expect.ReferenceCourse(),
		Rounds: rounds, Seed: 1, Gain: func(_ golf.Category, from, to float64) float64 { return (from - to) / 4 }}
}

func find(t testing.TB, a Ask) Chance {
	t.Helper()
	c, err := Find(a)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// Two computations of one number: the mean of the rounds and the model's expectation,
// within three standard errors.
func TestChanceHasTheModelsMean(t *testing.T) {
	for _, level := range []float64{70, 79, 90, 100} {
		a := asked(20000)
		a.Levels, a.Only = golfer.Even(level), true
		c := find(t, a)
		skill, err := expect.SkillOf(level)
		if err != nil {
			t.Fatal(err)
		}
		want, allowed := expect.ModelStrokes(a.Card, skill), 3*c.SD/math.Sqrt(20000)
		t.Logf("level %g: mean %.3f, the model's %.3f, three standard errors %.3f", level, c.Mean, want, allowed)
		if math.Abs(c.Mean-want) > allowed {
			t.Errorf("level %g: mean %.3f, the model's %.3f, three standard errors %.3f", level, c.Mean, want, allowed)
		}
	}
}

func TestChanceIsTheSameOnAnyNumberOfCores(t *testing.T) {
	a := asked(600)
	a.Lost = []Lost{{3, 18}, {-2, 18}, {.5, 9}, {-1, 18}, {0, 18}}
	all := find(t, a)
	before := runtime.GOMAXPROCS(1)
	defer runtime.GOMAXPROCS(before)
	if diff := cmp.Diff(all, find(t, a)); diff != "" {
		t.Error(diff)
	}
}

func TestChangesHelpAsTheyShould(t *testing.T) {
	a := asked(4000)
	a.Also = [][2]Change{{Longer, PuttingAsTarget}, {Longer, ShortGameAsTarget}, {Longer, Longer}}
	c := find(t, a)
	by := map[Change]WhatIf{}
	for _, w := range c.WhatIf {
		by[w.Change] = w
	}
	if _, there := by[ShortGameAsTarget]; there {
		t.Error("a short game that is better than the target's is changed")
	}
	if _, there := by[PlansAims]; there {
		t.Error("there is a plan without pictures")
	}
	if c.WhatIf[0].Change != PuttingAsTarget {
		t.Errorf("what helps a weak putter most is %v", c.WhatIf[0])
	}
	for change, w := range by {
		if helps := change != OneClubLess; (w.Strokes < 0) != helps || (w.Chance > c.Chance) != helps {
			t.Errorf("%v: %+.2f strokes, %.3f after %.3f", change, w.Strokes, w.Chance, c.Chance)
		}
	}
	if by[ShortPutts].Strokes <= by[PuttingAsTarget].Strokes {
		t.Error("short putts win more than all putts")
	}
	if len(c.Pairs) != 4 {
		t.Errorf("%d pairs: %v", len(c.Pairs), c.Pairs)
	}
	for _, w := range c.Pairs {
		one, other := by[w.Change].Strokes, by[w.Second].Strokes
		if math.Abs(w.Strokes-one-other) > .5 || w.Strokes > min(one, other) {
			t.Errorf("%v and %v: %+.2f together, %+.2f and %+.2f alone", w.Change, w.Second, w.Strokes, one, other)
		}
	}
	if !c.Takes.Known || c.Takes.Chance < .5 || c.Takes.Strokes >= 0 {
		t.Errorf("takes %+v", c.Takes)
	}
}

// A part of the game may be tried at any level: nearer to the player's own it wins
// less, and at one that the player has passed it is not tried.
func TestPartsAreTriedAtAnotherLevel(t *testing.T) {
	putting := func(as float64) (w WhatIf, there bool) {
		a := asked(400)
		a.As = as
		for _, w := range find(t, a).WhatIf {
			if w.Change == PuttingAsTarget {
				return w, true
			}
		}
		return w, false
	}
	near, _ := putting(86)
	target, _ := putting(0)
	best, _ := putting(72)
	if best.Strokes >= target.Strokes || target.Strokes >= near.Strokes || near.Strokes >= 0 {
		t.Errorf("as a 72 %+.2f, as the target's 79 %+.2f, as an 86 %+.2f", best.Strokes, target.Strokes, near.Strokes)
	}
	if _, there := putting(95); there {
		t.Error("putting of 90 is tried at 95")
	}
}

func TestWhatItTakes(t *testing.T) {
	a := asked(3000)
	a.Target = 95
	if c := find(t, a); !c.Takes.Already || c.Takes.Known {
		t.Errorf("95: %+v of %.3f", c.Takes, c.Chance)
	}
	a.Target = 66
	if c := find(t, a); c.Takes.Already || c.Takes.Known {
		t.Errorf("66: %+v of %.3f", c.Takes, c.Chance)
	}
}

func TestIntervalHoldsTheChance(t *testing.T) {
	a := asked(4000)
	a.Only = true
	a.Lost = []Lost{{4, 18}, {-4, 18}, {1, 18}, {-1, 18}, {2, 18}, {-2, 18}}
	wide := find(t, a)
	for i := range a.Lost {
		a.Lost[i].Strokes /= 4
	}
	narrow := find(t, a)
	for _, c := range []Chance{wide, narrow} {
		if !(c.Interval.Low < c.Chance && c.Chance < c.Interval.High) || c.Interval.Low < 0 || c.Interval.High > 1 {
			t.Errorf("%.3f in %v", c.Chance, c.Interval)
		}
	}
	if wide.Interval.High-wide.Interval.Low < 2*(narrow.Interval.High-narrow.Interval.Low) {
		t.Errorf("%v and %v", wide.Interval, narrow.Interval)
	}
	// A player past the end of the levels is worse than what is played.
	for i := range a.Lost {
		a.Lost[i].Strokes += 2
	}
	if c := find(t, a); math.Abs(c.Beyond-2) > 1e-9 || c.Chance >= narrow.Chance-.05 {
		t.Errorf("beyond %.3f, %.3f after %.3f", c.Beyond, c.Chance, narrow.Chance)
	}
}

// alike is of scores that spread alike wherever their mean is.
func alike(float64) float64 { return 1 }

// Where worse scores spread wider, a target below the mean changes less.
func TestCurveOfScoresThatWiden(t *testing.T) {
	scores := map[int]int{}
	for s := 60; s < 110; s++ {
		scores[s] = int(1e6 * (stat.NormalCDF((float64(s)-83.5)/4) - stat.NormalCDF((float64(s)-84.5)/4)))
	}
	c := newCurve(scores, 79, func(s float64) float64 { return 1 + .03*s })
	for _, shift := range []float64{-3, -1, 0, 1, 3} {
		if want := stat.NormalCDF((79.5 - 84 - shift) / (4 * (1 + .03*shift))); math.Abs(c.at(shift)-want) > .01 {
			t.Errorf("shift %g: %.4f, want %.4f", shift, c.at(shift), want)
		}
	}
}

// Of normal scores the curve is a normal's own, and it falls as rounds get worse.
func TestCurveOfNormalScores(t *testing.T) {
	const mean, sd, rounds = 84.3, 4.1, 1e6
	scores := map[int]int{}
	for s := 50; s < 120; s++ {
		share := stat.NormalCDF((float64(s)+.5-mean)/sd) - stat.NormalCDF((float64(s)-.5-mean)/sd)
		scores[s] = int(math.Round(rounds * share))
	}
	for _, target := range []float64{75, 79, 84, 90} {
		c := newCurve(scores, target, alike)
		last := 1.0
		for shift := -30.0; shift <= 30; shift += .5 {
			p := c.at(shift)
			if want := stat.NormalCDF((target + .5 - mean - shift) / sd); math.Abs(p-want) > .01 {
				t.Errorf("target %g, shift %g: %.4f, want %.4f", target, shift, p, want)
			}
			if p > last {
				t.Errorf("target %g, shift %g: %.6f after %.6f", target, shift, p, last)
			}
			last = p
		}
	}
	if c := newCurve(map[int]int{80: 10}, 70, alike); math.IsNaN(c.at(0)) || c.at(0) > .5 {
		t.Errorf("a target out of reach: %g", c.at(0))
	}
}

func TestAsksThatCannotBePlayed(t *testing.T) {
	for name, change := range map[string]func(*Ask){
		"no rounds": func(a *Ask) { a.Rounds = 0 }, "no holes": func(a *Ask) { a.Card = nil },
		"level 67": func(a *Ask) { a.Level = 67 }, "putting 111": func(a *Ask) { a.Levels.Putting = 111 },
	} {
		a := asked(100)
		change(&a)
		if _, err := Find(a); err == nil {
			t.Errorf("%s: played", name)
		}
	}
}
