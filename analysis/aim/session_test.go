package aim

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"

	"github.com/google/go-cmp/cmp"
)

func TestBallsAreReadAsPeopleTypeThem(t *testing.T) {
	got, faults := ParseBalls("-8 3\n\n8 left, 3 long\n12 Right 5 short\n0, −4")
	want := []Ball{{-8, 3}, {-8, 3}, {12, -5}, {0, -4}}
	if diff := cmp.Diff(want, got); diff != "" || faults != nil {
		t.Error(diff, faults)
	}
	for text, says := range map[string]string{
		"8": "line 1: a number is missing", "x 3": `line 1: "x" is not a number`, "-8 left 3": "line 1: -8 left",
		"8 long": `line 1: "long" is not a number`, "8 3 3": `line 1: "3" is too much`, "400 3": "line 1: 400 yd from the aim; allowed: at most 300",
		strings.Repeat("1 1\n", MaxBalls+1): "line 201: more than 200 balls", strings.Repeat(" ", MaxBytes+1): "the session has",
	} {
		if _, faults := ParseBalls(text); len(faults) != 1 || !strings.HasPrefix(faults[0].String(), says) {
			t.Errorf("%.20s: %v, want %s", text, faults, says)
		}
	}
}

// planted is a golfer whose spreads are drawn from what is thought of them before a
// session, with a bias in spreads.
type planted struct{ bias, wide, deep float64 }

func plant(rng *rand.Rand, bias float64) planted {
	spread := func() float64 {
		sum := 0.0
		for range spreadWeight {
			z := rng.NormFloat64()
			sum += z * z
		}
		return math.Sqrt(spreadWeight / sum)
	}
	p := planted{wide: spread(), deep: spread()}
	p.bias = bias * p.wide
	return p
}

// hit hits balls as the golfer of the package hits them: some are struck badly.
func (p planted) hit(rng *rand.Rand, sw swing, l Level, n int) []Ball {
	balls := make([]Ball, n)
	for i := range balls {
		k := sw.well[0]
		u := rng.Float64()
		for _, bad := range sw.bad {
			if u < bad.share {
				k = bad
				break
			}
			u -= bad.share
		}
		sin, cos := math.Sincos(rng.NormFloat64() * k.angle * p.wide)
		length := k.mean + rng.NormFloat64()*k.sd*p.deep
		balls[i] = Ball{p.bias*l.sideSD + length*sin, length*cos - sw.target}
	}
	return balls
}

// What a session says of bias and spread holds the truth as often as it says: the
// target is 95 % in each cell, and the tolerance 92 to 98.
func TestSessionsHoldTheTruth(t *testing.T) {
	s, err := committed.Striker(84)
	if err != nil {
		t.Fatal(err)
	}
	for _, club := range []struct {
		lie golf.Lie
		yd  float64
	}{{golf.Tee, s.Reach(golf.Tee)}, {golf.Fairway, 150}} {
		level, sw := LevelOf(s, club.lie, club.yd), newSwing(s, club.lie, club.yd, Pattern{})
		for _, bias := range []float64{0, .4, .9} {
			for _, balls := range []int{10, 20, 40} {
				const golfers = 1000
				rng := rand.New(rand.NewPCG(7, uint64(balls)))
				held := [3]int{}
				for range golfers {
					p := plant(rng, bias)
					got := level.After(p.hit(rng, sw, level, balls))
					for i, c := range []struct {
						in    stat.Interval
						truth float64
					}{{got.SideIn, p.bias * level.sideSD}, {got.WideIn, p.wide}, {got.DeepIn, p.deep}} {
						if c.truth >= c.in.Low && c.truth <= c.in.High {
							held[i]++
						}
					}
				}
				for i, what := range []string{"bias", "spread across", "spread along"} {
					share := float64(held[i]) / golfers
					if testing.Verbose() {
						t.Logf("%v %.0f yd, bias %.1f, %d balls: %s %.3f", club.lie, club.yd, bias, balls, what, share)
					}
					if share < .92 || share > .98 {
						t.Errorf("%v %.0f yd, bias %.1f, %d balls: %s held in %.3f", club.lie, club.yd, bias, balls, what, share)
					}
				}
			}
		}
	}
}

// Words of misses: a golfer who misses right is found to, and the interval holds the
// bias.
func TestMissesHoldTheBias(t *testing.T) {
	level := Level{sideSD: 20, longSD: 10}
	for _, bias := range []float64{0, .4, .9} {
		for _, shots := range []int{10, 40, 100} {
			const golfers = 400
			rng := rand.New(rand.NewPCG(3, uint64(shots)))
			held, sum := 0, 0.0
			for range golfers {
				from := missFrom * math.Exp(missFromSpread*rng.NormFloat64())
				var m Misses
				for range shots {
					switch x := bias + rng.NormFloat64(); {
					case x < -from:
						m.Left++
					case x > from:
						m.Right++
					default:
						m.Middle++
					}
				}
				p := level.AfterMisses(Pattern{}, m)
				sum += p.Side
				if bias*level.sideSD >= p.SideIn.Low && bias*level.sideSD <= p.SideIn.High {
					held++
				}
			}
			if share := float64(held) / golfers; share < .91 || share > .99 {
				t.Errorf("bias %.1f, %d shots: held in %.3f", bias, shots, share)
			}
			if got := sum / golfers / level.sideSD; math.Abs(got-bias) > .25 {
				t.Errorf("bias %.1f, %d shots: %.2f on average", bias, shots, got)
			}
		}
	}
	session := Pattern{Side: 10, Wide: 1, Balls: 20, SideIn: stat.Interval{Low: 1, High: 19}}
	if p := level.AfterMisses(session, Misses{Left: 30, Middle: 10}); p.Side >= 5 || p.Balls != 20 || p.Shots != 40 {
		t.Errorf("thirty of forty to the left leave %+v", p)
	}
	if p := level.AfterMisses(session, Misses{}); p != session {
		t.Errorf("no word changed %+v", p)
	}
}

func TestFewBallsSayNothing(t *testing.T) {
	if p := (Level{sideSD: 20, longSD: 10, bad: []strike{{.1, -50, 30, 25}}}).After(make([]Ball, MinBalls-1)); p.Known() {
		t.Errorf("%+v", p)
	}
}

// Tops and shanks count as bad strikes and do not widen the pattern.
func TestFarBallsAreBadStrikes(t *testing.T) {
	level := Level{sideSD: 10, longSD: 10, bad: []strike{{.1, -50, 30, 25}}}
	var balls []Ball
	for i := range 20 {
		balls = append(balls, Ball{float64(i%5-2) * 6, float64(i%4-2) * 6})
	}
	clean := level.After(balls)
	topped := level.After(append(balls, Ball{5, -120}, Ball{70, -40}, Ball{0, -140}, Ball{3, -150}))
	if topped.Bad <= clean.Bad || clean.Bad >= 1 || topped.Wide > clean.Wide*1.02 {
		t.Errorf("clean %+v, topped %+v", clean, topped)
	}
}
