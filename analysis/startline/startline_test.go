package startline

import (
	"math"
	"math/rand/v2"
	"testing"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golfer"
)

func putterOf(t testing.TB, level float64) golfer.Putter {
	t.Helper()
	skill, err := expect.SkillOf(level)
	if err != nil {
		t.Fatal(err)
	}
	p := golfer.Committed()
	return p.Putter(skill)
}

// played are putts from feet by a player of a spread and a bias in degrees, with
// the speed of a putter.
func played(rng *rand.Rand, of golfer.Putter, feet float64, n int, spread, bias float64) Tries {
	t := Tries{Feet: feet, Of: n, Sides: true}
	short, holding, _ := of.Pace(feet)
	window := golfer.StartLineWindow(feet) * 180 / math.Pi
	for range n {
		angle, pace := bias+spread*rng.NormFloat64(), rng.Float64()
		switch {
		case angle < -window:
			t.Left++
		case angle > window:
			t.Right++
		case pace < short:
			t.Short++
		case pace < short+holding:
			t.Made++
		default:
			t.Long++
		}
	}
	return t
}

// Coverage over many blocks of 40 putts: near what an interval of 95 % promises,
// for spreads from better than the tour's to a beginner's.
func TestIntervalsOfTheSpreadCover(t *testing.T) {
	of, rng := putterOf(t, 85), rand.New(rand.NewPCG(1, 2))
	for _, c := range []struct{ feet, low, high float64 }{{6, .93, .97}, {4, .92, .99}, {10, .92, .99}} {
		model, known := NewModel(of, c.feet), map[int]Reading{} // of makes alone, by how many
		for _, spread := range []float64{.8, 1.2, 1.8} {
			for _, bias := range []float64{0, .5} {
				const blocks = 2000
				sides, alone, straight := 0, 0, 0
				for range blocks {
					tries := played(rng, of, c.feet, 40, spread, bias)
					r := model.Read(tries)
					sides += tally(r.Interval.Low <= spread && spread <= r.Interval.High)
					straight += tally(r.Bias.Interval.Low <= bias && bias <= r.Bias.Interval.High)
					if _, ok := known[tries.Made]; !ok {
						known[tries.Made] = model.Read(Tries{Feet: tries.Feet, Of: tries.Of, Made: tries.Made})
					}
					r = known[tries.Made]
					alone += tally(r.Interval.Low <= spread && spread <= r.Interval.High)
				}
				s, a, b := share(sides, blocks), share(alone, blocks), share(straight, blocks)
				t.Logf("%g ft, spread %g, bias %g: %.3f with sides, %.3f makes alone, bias %.3f", c.feet, spread, bias, s, a, b)
				if s < c.low || s > c.high || a < .93 {
					t.Errorf("%g ft, spread %g, bias %g: covered %.3f with sides, %.3f with makes alone", c.feet, spread, bias, s, a)
				}
			}
		}
	}
}

func share(n, of int) float64 { return float64(n) / float64(of) }

func tally(is bool) int {
	if is {
		return 1
	}
	return 0
}

func TestTriesThatCannotBe(t *testing.T) {
	for _, c := range []struct {
		tries Tries
		wrong string // the fields
	}{
		{Tries{Feet: 4, Made: 3, Of: 4}, ""},
		{Tries{Feet: 4, Made: 3, Of: 4, Sides: true, Left: 1}, ""},
		{Tries{Feet: 2.9, Made: 3, Of: 4}, "feet "},
		{Tries{Feet: math.NaN(), Made: 3, Of: 4}, "feet "},
		{Tries{Feet: 4, Made: 5, Of: 4}, "made "},
		{Tries{Feet: 4, Made: 0, Of: 0}, "tries "},
		{Tries{Feet: 4, Made: 3, Of: 4, Sides: true}, "left, right, short, long "},
		{Tries{Feet: 4, Made: 3, Of: 4, Sides: true, Left: 2, Right: -1}, "left, right, short, long "},
	} {
		got := ""
		for _, p := range c.tries.Check() {
			got += p.Field + " "
		}
		if got != c.wrong {
			t.Errorf("%+v: %q, want %q", c.tries, got, c.wrong)
		}
	}
}

// Holmes (1991) and Penner (2002) give the hole's radius as 2.125 in and the
// ball's as .84 in: at 72 in the window is asin(1.285/72), 1.0226°.
func TestReadingTells(t *testing.T) {
	model := NewModel(putterOf(t, 85), 6)
	straight := model.Read(Tries{Feet: 6, Of: 40, Made: 22, Sides: true, Left: 9, Right: 9})
	pulled := model.Read(Tries{Feet: 6, Of: 40, Made: 22, Sides: true, Left: 17, Right: 1})
	alone := model.Read(Tries{Feet: 6, Of: 40, Made: 22})
	better := model.Read(Tries{Feet: 6, Of: 40, Made: 34})
	if math.Abs(straight.Window-1.0226) > 5e-5 {
		t.Errorf("window %.4f°", straight.Window)
	}
	if straight.Bias.Clear() || !pulled.Bias.Clear() || pulled.Bias.Mean > -.2 || alone.Bias != nil {
		t.Errorf("bias %+v, %+v, %+v", straight.Bias, pulled.Bias, alone.Bias)
	}
	if !(better.Spread < alone.Spread && better.Interval.High < alone.Interval.High) {
		t.Errorf("%+v and %+v", better, alone)
	}
	for _, r := range []Reading{straight, pulled, alone, better} {
		if !(r.Interval.Low < r.Spread && r.Spread < r.Interval.High) {
			t.Errorf("%+v", r)
		}
	}
}
