package golfer

import (
	"math"
	"math/rand/v2"
	"testing"

	"strokeledger/analysis/golf"
)

// The chances of single strokes against as many strokes as it takes, played by
// the simulating player: another path through the code.
func TestStrikerAgreesWithPlay(t *testing.T) {
	p := Committed()
	const n = 200000
	for _, level := range []float64{72, 79, 90} {
		s, err := p.Striker(level)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range []struct {
			name   string
			exact  float64
			counts func(r *rand.Rand) bool
		}{
			{"rough 15 within 4 yd", s.Within(golf.Rough, 15, 4), func(r *rand.Rand) bool { return ends(s, r, golf.Rough, 15).far <= 4 }},
			{"bunker 12 on the green within 4 yd", s.OnGreenWithin(golf.Bunker, 12, 4), func(r *rand.Rand) bool {
				b := ends(s, r, golf.Bunker, 12)
				return b.far <= 4 && b.lie == golf.Green
			}},
			{"bunker 14 in two", s.InTwo(golf.Bunker, 14), func(r *rand.Rand) bool { return holesInTwo(s, r, golf.Bunker, 14) }},
			{"rough 8 in two", s.InTwo(golf.Rough, 8), func(r *rand.Rand) bool { return holesInTwo(s, r, golf.Rough, 8) }},
			{"a putt of 40 ft within 4", s.Putter().LagWithin(40, 4), func(r *rand.Rand) bool {
				b := ball{golf.Green, 40}
				return (&roundInPlay{rng: r}).putt(s.skills, &b) || b.far <= 4
			}},
			{"a drive in a corridor of 40 yd", s.Corridor(40, .85), func(r *rand.Rand) bool {
				f := s.skills.flight(golf.Tee, longHole, 0)
				k := f.pick(r.Float64())
				sin, cos := math.Sincos(r.NormFloat64() * k.angle)
				length := k.mean + r.NormFloat64()*k.sd
				return math.Abs(length*sin) <= 20 && length*cos >= .85*s.skills.reach[golf.Tee]
			}},
			{"approach 150 within 15 yd", s.Within(golf.Fairway, 150, 15), func(r *rand.Rand) bool { return ends(s, r, golf.Fairway, 150).far <= 15 }},
		} {
			rng, got := rand.New(rand.NewPCG(7, uint64(level))), 0
			for range n {
				if c.counts(rng) {
					got++
				}
			}
			if share := float64(got) / n; math.Abs(share-c.exact) > .005 {
				t.Errorf("%g, %s: %.4f exactly, %.4f played", level, c.name, c.exact, share)
			}
		}
	}
}

// ends is where a shot ends, in yards from the hole; on the green at 0 when holed.
func ends(s Striker, rng *rand.Rand, lie golf.Lie, yd float64) ball {
	b, shot := ball{lie, yd}, golf.Shot{}
	if (&roundInPlay{rng: rng}).strike(s.skills, &b, &shot) {
		return ball{lie: golf.Green}
	}
	if b.lie == golf.Green {
		b.far /= 3
	}
	return b
}

func holesInTwo(s Striker, rng *rand.Rand, lie golf.Lie, yd float64) bool {
	b, shot := ball{lie, yd}, golf.Shot{}
	r := &roundInPlay{rng: rng}
	if r.strike(s.skills, &b, &shot) {
		return true
	}
	if b.lie == golf.Green {
		return r.putt(s.skills, &b)
	}
	return r.strike(s.skills, &b, &shot)
}

func BenchmarkStrikerInTwo(b *testing.B) {
	p := Committed()
	s, err := p.Striker(85)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		s.InTwo(golf.Rough, 14)
	}
}
