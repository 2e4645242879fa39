package forecast

import (
	"math"
	"runtime"
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

func simulate(t testing.TB, plan Plan) Outcome {
	o, err := Simulate(plan)
	if err != nil {
		t.Fatal(err)
	}
	return o
}

func plan(level float64, rounds int) Plan {
	return Plan{Level: level, Levels: golfer.Even(level), Card: expect.ReferenceCourse(), Rounds: rounds, Seed: 1}
}

// Two computations of one number: a simulation's mean and the expectation.
func TestMeanIsTheExpectation(t *testing.T) {
	for _, card := range [][]golf.CardHole{expect.ReferenceCourse(), expect.ScaledCourse(5800), expect.ReferenceCourse()[:9]} {
		p := plan(85, 20000)
		p.Card = card
		o := simulate(t, p)
		skill, err := expect.SkillOf(85)
		if err != nil {
			t.Fatal(err)
		}
		want := expect.ModelStrokes(card, skill)
		if allowed := 3*o.SD/math.Sqrt(20000) + .02; math.Abs(o.Mean-want) > allowed {
			t.Errorf("%d holes: mean %.3f, expected %.3f, allowed %.3f", len(card), o.Mean, want, allowed)
		}
	}
}

func TestSameResultOnAnyNumberOfCores(t *testing.T) {
	p := plan(79, 500)
	all := simulate(t, p)
	before := runtime.GOMAXPROCS(1)
	defer runtime.GOMAXPROCS(before)
	for _, cores := range []int{1, 3, 7} {
		runtime.GOMAXPROCS(cores)
		if diff := cmp.Diff(all, simulate(t, p)); diff != "" {
			t.Errorf("on %d cores: %s", cores, diff)
		}
	}
	p.Seed = 2
	if cmp.Equal(all, simulate(t, p)) {
		t.Error("another seed gave the same result")
	}
}

func TestOutcomeIsConsistent(t *testing.T) {
	o := simulate(t, plan(79, 3000))
	sum, mean, within := 0.0, 0.0, 0.0
	for score, share := range o.Scores {
		sum += share
		mean += share * float64(score)
		if score <= 79 {
			within += share
		}
	}
	for _, c := range []struct {
		what      string
		got, want float64
	}{{"shares", sum, 1}, {"mean", mean, o.Mean}, {"at level or better", within, o.AtLevelOrBetter}} {
		if math.Abs(c.got-c.want) > 1e-9 {
			t.Errorf("%s: %g, want %g", c.what, c.got, c.want)
		}
	}
	if o.CompoundDoubles > o.Doubles || o.Fairways <= 0 || o.Fairways >= 1 || o.Greens <= 0 || o.Greens >= 18 {
		t.Errorf("%+v", o)
	}
}

// A part of the game at another level moves what it should: a worse putter
// takes more putts and hits as many greens.
func TestPartsAtTheirOwnLevels(t *testing.T) {
	even := simulate(t, plan(79, 4000))
	p := plan(79, 4000)
	p.Levels.Putting = 95
	worse := simulate(t, p)
	if worse.Putts < even.Putts+1 || worse.ThreePutts <= even.ThreePutts || math.Abs(worse.Greens-even.Greens) > .2 {
		t.Errorf("putts %.2f and %.2f, greens %.2f and %.2f", even.Putts, worse.Putts, even.Greens, worse.Greens)
	}
	p = plan(79, 4000)
	p.Levels.Approach = 95
	if far := simulate(t, p); far.Greens > even.Greens-1 {
		t.Errorf("greens %.2f and %.2f", even.Greens, far.Greens)
	}
}

// Common knowledge (no published source): a worse golfer hits fewer greens,
// three-putts more and makes more doubles. M. Broadie 2012 (cited copy): a 90
// golfer three-putts 2.3 times a round, a tour player .55.
func TestLevelsDiffer(t *testing.T) {
	good, bad := simulate(t, plan(72, 4000)), simulate(t, plan(90, 4000))
	if bad.Greens >= good.Greens || bad.Doubles <= good.Doubles || bad.CompoundDoubles <= good.CompoundDoubles || bad.UpAndDown >= good.UpAndDown {
		t.Errorf("72: %+v\n90: %+v", good, bad)
	}
	if math.Abs(bad.ThreePutts-2.3) > .5 {
		t.Errorf("a 90 golfer three-putts %.2f times a round", bad.ThreePutts)
	}
}

func TestOneRoundHasNoSpread(t *testing.T) {
	for rounds, want := range map[int]golf.Thin{1: golf.Enough(golf.ThinSpread, 1, 2), 2: {}, 40: {}} {
		o := simulate(t, plan(85, rounds))
		if o.Thin != want || math.IsNaN(o.SD) || (rounds == 1 || rounds == 40) && (o.SD > 0) == o.Thin.Any() {
			t.Errorf("%d rounds: SD %g, %+v", rounds, o.SD, o.Thin)
		}
	}
}

func TestPlansThatCannotBePlayed(t *testing.T) {
	for name, change := range map[string]func(*Plan){
		"no rounds": func(p *Plan) { p.Rounds = 0 }, "no holes": func(p *Plan) { p.Card = nil },
		"level 67": func(p *Plan) { p.Level = 67 }, "putting 111": func(p *Plan) { p.Levels.Putting = 111 },
	} {
		p := plan(79, 10)
		change(&p)
		if _, err := Simulate(p); err == nil {
			t.Errorf("%s was played", name)
		}
	}
}

func BenchmarkSimulate20000(b *testing.B) {
	for b.Loop() {
		simulate(b, plan(79, 20000))
	}
}
