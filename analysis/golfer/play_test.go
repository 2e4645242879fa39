package golfer

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/stat"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/parallel"
)

func player(t testing.TB, levels Levels) *Player {
	p := Committed()
	player, err := NewPlayer(&p, levels, expect.ReferenceCourse(), golf.StandardBoundary)
	if err != nil {
		t.Fatal(err)
	}
	return player
}

// scores plays rounds on all cores.
func scores(p *Player, seed uint64, rounds int) []float64 {
	all := make([]float64, rounds)
	const batch = 250
	parallel.Do((rounds+batch-1)/batch, func(b int) {
		for i := b * batch; i < min((b+1)*batch, rounds); i++ {
			for _, h := range p.Play(seed, uint64(i)) {
				all[i] += float64(h.Strokes())
			}
		}
	})
	return all
}

// Two computations of one number: the mean of many simulated rounds and the
// dynamic programme's expectation, at every level. The seed is fixed, so the
// test is the same each time.
func TestSimulatedMeanIsTheExpectation(t *testing.T) {
	for s := expect.MinLevel; s <= expect.MaxLevel; s += 3 {
		all := scores(player(t, Even(s)), 7, 20000)
		mean, sd := stat.MeanStdDev(all, nil)
		skill, err := expect.SkillOf(s)
		if err != nil {
			t.Fatal(err)
		}
		model := expect.ModelStrokes(expect.ReferenceCourse(), skill)
		allowed := 3*sd/math.Sqrt(float64(len(all))) + .02
		t.Logf("level %g: mean %.3f, model %.3f, spread %.2f", s, mean, model, sd)
		if math.Abs(mean-model) > allowed {
			t.Errorf("level %g: mean %.3f, model %.3f, allowed %.3f", s, mean, model, allowed)
		}
	}
}

// The residual of the published table, which simulation does not know, is
// small from about level 79 on.
func TestModelIsNearTheLevel(t *testing.T) {
	for s := 79.0; s <= expect.MaxLevel; s++ {
		skill, err := expect.SkillOf(s)
		if err != nil {
			t.Fatal(err)
		}
		if model := expect.ModelStrokes(expect.ReferenceCourse(), skill); math.Abs(model-s) > .1 {
			t.Errorf("level %g: the model takes %.3f", s, model)
		}
	}
}

// Common knowledge (no published source): the scores of an 80 golfer spread by
// 3.5 to 4.5 strokes.
func TestRoundSpread(t *testing.T) {
	if sd := stat.StdDev(scores(player(t, Even(80)), 1, 10000), nil); sd < 3.5 || sd > 4.5 {
		t.Errorf("spread %.2f", sd)
	}
}

func TestPlayIsTheSameForASeed(t *testing.T) {
	p := player(t, Levels{79, 85, 90, 75})
	if diff := cmp.Diff(p.Play(3, 17), p.Play(3, 17)); diff != "" {
		t.Error(diff)
	}
	if cmp.Equal(p.Play(3, 17), p.Play(3, 18)) || cmp.Equal(p.Play(3, 17), p.Play(4, 17)) {
		t.Error("another round or seed gave the same round")
	}
}

func TestPlayedHolesAreLegal(t *testing.T) {
	for _, s := range []float64{68, 79, 110} {
		p := player(t, Even(s))
		for i := range uint64(300) {
			for _, h := range p.Play(1, i) {
				if problems := h.Check(); problems != nil {
					t.Fatalf("level %g, round %d: %v", s, i, problems)
				}
			}
		}
	}
}

func TestLevelsOutOfRangeAreRefused(t *testing.T) {
	p := Committed()
	if _, err := NewPlayer(&p, Levels{79, 79, 67, 79}, expect.ReferenceCourse(), golf.StandardBoundary); err == nil {
		t.Error("a short game of level 67 was made")
	}
}

func BenchmarkPlay(b *testing.B) {
	p := player(b, Even(79))
	b.ReportAllocs()
	for i := uint64(0); b.Loop(); i++ {
		p.Play(1, i)
	}
}
