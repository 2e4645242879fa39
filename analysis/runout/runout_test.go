package runout

import (
	"math"
	"math/rand/v2"
	"testing"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

// Common practice: a wedge that lands at 12 and stops at 21, and at 13 and 23, runs
// out 9 to 10; a shot of 23 yd is then landed at 13 to 13.5.
func TestCommonPractice(t *testing.T) {
	p := NewPage([]Trial{{12, 21}, {13, 23}})
	shot := Shot{Lie: golf.Fairway, Distance: 23, Green: 18, Slope: golf.LevelGround}
	if run, land := p.Run(12), shot.Land(p); math.Abs(run-9.5) > 1e-12 || math.Abs(land-13.5) > 1e-12 || p.Line {
		t.Errorf("run-out %g, landed at %g", run, land)
	}
	if _, ok := p.Next(12, .95); ok {
		t.Error("two trials have an interval")
	}
	if l := (Shot{Lie: golf.Fairway, Distance: 23, Green: 18, Slope: golf.Downhill}).Land(p); l >= 13.5 {
		t.Errorf("downhill landed at %g", l)
	}
}

// Of the next ball, 95 of 100 fall into the interval: 4,000 books whose run-out
// grows with the carry, and whose does not.
func TestIntervalsOfTheNextBallCover(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	for _, c := range []struct {
		name         string
		start, slope float64
		reach        float64 // of the carries
		trials       int
	}{{"growing", 1, .5, 12, 8}, {"steady", 6, 0, 2, 5}, {"growing a little", 4, .2, 6, 12}, {"three balls", 5, 0, 1, 3}} {
		hits := 0
		const books = 4000
		for range books {
			ball := func() Trial {
				carry := 8 + c.reach*rng.Float64()
				return Trial{carry, carry + c.start + c.slope*carry + 1.2*rng.NormFloat64()}
			}
			trials := make([]Trial, c.trials)
			for i := range trials {
				trials[i] = ball()
			}
			next := ball()
			i, ok := NewPage(trials).Next(next.Carry, .95)
			if !ok {
				t.Fatal(c.name)
			}
			if i.Low <= next.Run() && next.Run() <= i.High {
				hits++
			}
		}
		if share := float64(hits) / books; share < .93 || share > .97 {
			t.Errorf("%s: %.3f covered", c.name, share)
		}
	}
}

func TestPage(t *testing.T) {
	straight := []Trial{{10, 15}, {12, 18}, {14, 21}, {16, 24}, {18, 27}}
	p := NewPage(straight)
	if !p.Line || math.Abs(p.Slope-.5) > 1e-9 || math.Abs(p.Start) > 1e-9 {
		t.Errorf("%+v", p)
	}
	if p := NewPage(straight[:4]); p.Line {
		t.Error("four trials have a line")
	}
	falling := NewPage([]Trial{{10, 20}, {12, 21}, {14, 22}, {16, 23}, {18, 24}})
	if falling.Line || falling.Slope != 0 || math.Abs(falling.Start-8) > 1e-9 {
		t.Errorf("a run-out that falls with the carry: %+v", falling)
	}
	far := append(make([]Trial, 0, 31), Trial{10, 40})
	for i := range 30 {
		far = append(far, Trial{10, 15 + .1*float64(i%3)})
	}
	if p := NewPage(far); len(p.FarOff) != 1 || p.FarOff[0] != 0 || p.Trials != 31 {
		t.Errorf("far off: %v of %d", p.FarOff, p.Trials)
	}
	for _, bad := range []Trial{{0, 5}, {math.NaN(), 5}, {12, 0}, {MaxCarry + 1, 70}, {12, MaxTotal + 1}} {
		if len(Check([]Trial{{12, 21}, bad})) != 1 {
			t.Errorf("%v is allowed", bad)
		}
	}
}

// With much green a club that runs is as good as any; with little, what stops
// soon is the only one that lands on the green at all.
func TestChoose(t *testing.T) {
	of := golfer.Committed()
	by, err := of.Striker(85)
	if err != nil {
		t.Fatal(err)
	}
	level, err := expect.Level(85)
	if err != nil {
		t.Fatal(err)
	}
	after := func(lie golf.Lie, yd float64) float64 { return level.Strokes(lie, golf.Distance(yd)*golf.Yard) }
	clubs := []Club{{"7i", NewPage([]Trial{{8, 20}, {9, 22}, {8, 19}})}, {"lw", NewPage([]Trial{{14, 17}, {15, 18}, {14, 18}})}}
	tight := Shot{Lie: golf.Rough, Distance: 18, Green: 7, Slope: golf.LevelGround}
	got := tight.Choose(clubs, by, after)
	if got[0].Club != "lw" || !got[0].Possible || got[1].Possible || !math.IsNaN(got[1].Strokes) {
		t.Errorf("little green: %+v", got)
	}
	wide := Shot{Lie: golf.Fairway, Distance: 24, Green: 20, Slope: golf.LevelGround}
	got = wide.Choose(clubs, by, after)
	if !got[0].Possible || !got[1].Possible || got[0].Strokes > got[1].Strokes {
		t.Errorf("much green: %+v", got)
	}
	for _, c := range got {
		if c.Strokes < 2 || c.Strokes > 3.2 || math.Abs(c.Land+c.Run-24) > 1e-9 {
			t.Errorf("%+v", c)
		}
	}
	if p := (Shot{Lie: golf.Bunker, Distance: 70, Green: 80}).Check(); len(p) != 4 {
		t.Errorf("%v", p)
	}
}
