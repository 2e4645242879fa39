package expect

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"strokeledger/analysis/golf"
)

func level(t testing.TB, s float64) *Baseline {
	b, err := Level(s)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func TestReferenceCourse(t *testing.T) {
	par, length := 0, 0.0
	for _, h := range ReferenceCourse() {
		par += h.Par
		length += h.Length.Yards()
	}
	if par != 72 || math.Abs(length-6500) > 1e-9 {
		t.Errorf("par %d, %.6f yd", par, length)
	}
}

func TestLevelIsItsMeanOnTheReferenceCourse(t *testing.T) {
	for s := MinLevel; s <= MaxLevel; s += .37 {
		if sum := level(t, s).Course(ReferenceCourse()); math.Abs(sum-s) > 1e-9 {
			t.Errorf("level %g takes %.12f", s, sum)
		}
	}
}

func TestLevelRange(t *testing.T) {
	for _, s := range []float64{67.99, 110.01, math.NaN(), math.Inf(1), -79} {
		if _, err := Level(s); err == nil {
			t.Errorf("level %g was made", s)
		}
		if _, err := SkillOf(s); err == nil {
			t.Errorf("level %g has a skill", s)
		}
	}
}

func randomCard(t *rapid.T) []golf.CardHole {
	card := make([]golf.CardHole, rapid.IntRange(1, 18).Draw(t, "holes"))
	for i := range card {
		card[i] = golf.CardHole{Number: i + 1, Par: 4,
			Length: golf.Distance(rapid.Float64Range(1, 700).Draw(t, "yards")) * golf.Yard}
	}
	return card
}

func TestForTargetTakesExactlyTheTarget(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		card := randomCard(t)
		target := rapid.Float64Range(float64(len(card)), 8*float64(len(card))).Draw(t, "target")
		b, course := ForTarget(card, target)
		if got := b.Course(card) - course; math.Abs(got-target) > 1e-9 {
			t.Fatalf("takes %.12f, %.12f by the course, target %.12f", got+course, course, target)
		}
		if course != 0 && math.Abs(b.Level()-MinLevel) > 1e-9 && math.Abs(b.Level()-MaxLevel) > 1e-9 {
			t.Fatalf("%.3f beyond every level, but level %.3f", course, b.Level())
		}
	})
}

func TestForTargetBeyondEveryLevel(t *testing.T) {
	card := ReferenceCourse()
	if b, course := ForTarget(card, 60); math.Abs(b.Level()-MinLevel) > 1e-9 || math.Abs(course-(MinLevel-60)) > 1e-9 {
		t.Errorf("target 60: level %.6f, course %.6f", b.Level(), course)
	}
	if b, course := ForTarget(card, 120); math.Abs(b.Level()-MaxLevel) > 1e-9 || math.Abs(course-(MaxLevel-120)) > 1e-9 {
		t.Errorf("target 120: level %.6f, course %.6f", b.Level(), course)
	}
}

// A golfer's order of things, exact on a fine grid of distances and levels.
func TestFamilyIsInOrder(t *testing.T) {
	var last *Baseline
	for s := MinLevel; s <= MaxLevel; s += .7 {
		b := level(t, s)
		for yd := 2.0; yd <= 600; yd += .25 {
			d := golf.Distance(yd) * golf.Yard
			e := func(lie golf.Lie) float64 { return b.Strokes(lie, d) }
			green, fairway, rough, bunker, recovery := e(golf.Green), e(golf.Fairway), e(golf.Rough), e(golf.Bunker), e(golf.Recovery)
			if yd > golf.MaxPutt.Yards() {
				green = 0 // no putt is so long
			}
			if !(green < fairway && fairway < rough && fairway < bunker && rough < recovery && bunker < recovery) {
				t.Fatalf("level %.1f, %g yd: green %.4f fairway %.4f rough %.4f bunker %.4f recovery %.4f", s, yd, green, fairway, rough, bunker, recovery)
			}
			for _, lie := range golf.Lies {
				if lie == golf.Green && d > golf.MaxPutt {
					continue
				}
				if e(lie) < b.Strokes(lie, d-golf.Yard/4) {
					t.Fatalf("level %.1f, %s: falls at %g yd", s, lie, yd)
				}
				if last != nil && e(lie) < last.Strokes(lie, d) {
					t.Fatalf("%s %g yd: better at level %.1f than below", lie, yd, s)
				}
			}
		}
		last = b
	}
}

// Common practice (no published source): for a golfer of 76 or worse a bunker
// inside 40 yd is never cheaper than rough.
func TestSandIsNeverCheaperThanRough(t *testing.T) {
	for s := 76.0; s <= MaxLevel; s += .5 {
		b := level(t, s)
		for yd := 2.0; yd <= 40; yd += .5 {
			d := golf.Yards.Of(yd)
			if bunker, rough := b.Strokes(golf.Bunker, d), b.Strokes(golf.Rough, d); bunker < rough {
				t.Errorf("level %.1f, %g yd: bunker %.4f, rough %.4f", s, yd, bunker, rough)
			}
		}
	}
}

// putInOrder may only take out what is left of disorder, not remake the
// golfer: next to nothing where the family stands on published figures, little
// in the extrapolation below skill 0, from tees nearer than a hole is long and
// at putts of more than 90 ft. Putts beyond 100 ft are limited by the fairway.
func TestPuttingInOrderChangesLittle(t *testing.T) {
	f := levels()
	rest := residual(&f.model[f.zero()])
	for k := range f.level {
		raw := withResidual(&f.model[k], &rest, f.t[k])
		for _, lie := range golf.Lies {
			for x := 2.0; x <= 600; x++ {
				d := golf.Yards.Of(x)
				if lie == golf.Green && d > 100*golf.Foot {
					break
				}
				allowed := .0007
				if f.t[k] < 0 || lie == golf.Tee && x < 100 || lie == golf.Green && x > 30 {
					allowed = .02
				}
				if change := math.Abs(raw.At(lie, d) - f.level[k].At(lie, d)); change > allowed {
					t.Errorf("skill %.2f, %s %g yd: changed by %.5f", f.t[k], lie, x, change)
				}
			}
		}
	}
}

// Source: USGA Course Rating System (cited copy). A scratch golfer's rating is
// yd/220 + 40.9 and a bogey golfer's yd/160 + 50.7 without obstacles; the mean
// score is the rating and 0.8 of the round spread, 2.9 and 4.2 (from memory:
// the formulas rate the better half of scores).
func TestRatingFormulas(t *testing.T) {
	for _, g := range []struct {
		name                       string
		perStroke, at0, spread     float64
		slopeWithin, strokesWithin float64
	}{
		{"scratch", 220, 40.9, 2.9, .20, .5},
		{"bogey", 160, 50.7, 4.2, .05, .3},
	} {
		mean := func(yards float64) float64 { return yards/g.perStroke + g.at0 + .8*g.spread }
		b := level(t, mean(6500))
		takes := func(yards float64) float64 { return b.Course(ScaledCourse(yards)) }
		for yards := 6000.0; yards <= 7000; yards += 250 {
			if miss := takes(yards) - mean(yards); math.Abs(miss) > g.strokesWithin {
				t.Errorf("%s golfer, %g yd: takes %.2f, formula %.2f", g.name, yards, takes(yards), mean(yards))
			}
		}
		slope := (takes(7000) - takes(6000)) / 1000
		t.Logf("%s golfer: level %.1f, a stroke for %.0f yd, formula %g", g.name, mean(6500), 1/slope, g.perStroke)
		if math.Abs(slope*g.perStroke-1) > g.slopeWithin {
			t.Errorf("%s golfer: a stroke for %.0f yd, formula %g", g.name, 1/slope, g.perStroke)
		}
	}
}

// Source: M. Broadie, author reply 2014 (cited copy): an 80 golfer is about
// midway between a 70 and a 90 golfer at each distance and lie.
func TestEightyIsMidwayBetweenSeventyAndNinety(t *testing.T) {
	seventy, eighty, ninety := level(t, 70), level(t, 80), level(t, 90)
	for _, lie := range golf.Lies {
		for _, x := range []float64{5, 10, 20, 40, 60, 100, 150, 200, 300, 400} {
			if lie == golf.Green && x > 100 {
				continue
			}
			d := lie.Unit().Of(x)
			mid := (seventy.Strokes(lie, d) + ninety.Strokes(lie, d)) / 2
			if miss := eighty.Strokes(lie, d) - mid; math.Abs(miss) > .1 {
				t.Errorf("%s %g: 80 takes %.3f, midway %.3f", lie, x, eighty.Strokes(lie, d), mid)
			}
		}
	}
}

func TestLadderFollowsEveryLevel(t *testing.T) {
	ladder := Ladder()
	if first, last := ladder[0].Level(), ladder[len(ladder)-1].Level(); math.Abs(first-MinLevel) > 1e-9 || math.Abs(last-MaxLevel) > 1e-9 {
		t.Fatalf("from %.6f to %.6f", first, last)
	}
	for i, low := range ladder[:len(ladder)-1] {
		high := ladder[i+1]
		s := (low.Level() + high.Level()) / 2
		between := level(t, s)
		for _, lie := range golf.Lies {
			d := lie.Unit().Of(33)
			want := (low.Strokes(lie, d) + high.Strokes(lie, d)) / 2
			if math.Abs(between.Strokes(lie, d)-want) > 1e-9 {
				t.Fatalf("level %.3f, %s: not linear between rungs", s, lie)
			}
		}
	}
}
