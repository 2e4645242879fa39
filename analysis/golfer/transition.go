package golfer

import (
	"math"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
)

// step is the outcome of one stroke from a state: how many strokes it costs on
// average, penalties included, and where it leads with what chance.
type step struct {
	cost  float64 // 1 and the penalties
	to    []move  // each state once
	holed float64 // chance: what the others leave of 1
}

// move is a state that a stroke may lead to.
type move struct {
	state  int32   // numbered as in a grid
	chance float64 // more than 0
}

// tally gathers the outcome of a stroke state by state.
type tally struct {
	*grid
	chance  []float64 // by state
	penalty float64   // strokes, on average
}

// newTally makes an empty tally, to be used for one stroke after the other.
func newTally(g *grid) *tally { return &tally{grid: g, chance: make([]float64, g.states())} }

// add puts a chance on a place: yards off the green, feet on it.
func (t *tally) add(lie golf.Lie, far, chance float64) {
	i, w := t.locate(lie, far)
	t.chance[i] += chance * (1 - w)
	t.chance[i+1] += chance * w
}

// addOffGreen puts the chances of the lies off the green, times w, on a place r yards from
// the hole.
func (t *tally) addOffGreen(r, w float64, l *landing) {
	node, share := expect.LocateYards(r)
	part := 0
	if t.density > 1 {
		share *= float64(t.density)
		part = min(int(share), t.density-1)
		share -= float64(part)
	}
	near, far := w*(1-share), w*share
	for _, lie := range landingLies {
		i := t.state(lie, node*t.density+part)
		t.chance[i] += near * l.lie[lie]
		t.chance[i+1] += far * l.lie[lie]
	}
}

// landingLies are the lies off the green in which a ball may come to rest.
var landingLies = [...]golf.Lie{golf.Fairway, golf.Rough, golf.Bunker, golf.Recovery}

// step empties the tally into a step.
func (t *tally) step() step {
	n := 0
	for _, c := range t.chance {
		if c != 0 {
			n++
		}
	}
	s := step{1 + t.penalty, make([]move, 0, n), 1}
	for i, c := range t.chance {
		if c != 0 {
			s.to = append(s.to, move{int32(i), c})
			s.holed -= c
		}
	}
	s.holed = max(s.holed, 0)
	clear(t.chance)
	t.penalty = 0
	return s
}

// StrokeAndDistance is the share of the penalties after which the shot is played
// again from where it was; after the rest the ball is dropped in the rough. From
// the prototype; there is no published source.
const StrokeAndDistance = .35

// strokeStep works out a stroke from lie at yd yards, the well-struck ball
// moved past the hole by past yards.
func (s *skills) strokeStep(t *tally, lie golf.Lie, yd, past float64) step {
	f := s.flight(lie, yd, past)
	if f.stays > 0 {
		t.add(lie, yd*f.left, f.stays)
	}
	clean := (1 - f.stays) * (1 - f.holed)
	for i, k := range f.parts {
		lengths := t.mishits
		if i == 0 {
			lengths = t.lengths
		}
		if k.share > 0 {
			k.share *= clean
			s.land(t, lie, yd, k, lengths)
		}
	}
	return t.step()
}

// land spreads one strike from lie at yd yards over the country, its lengths
// over the nodes of a rule.
func (s *skills) land(t *tally, lie golf.Lie, yd float64, k strike, lengths rule) {
	var l landing
	for i, za := range t.angles.z {
		sin, cos := math.Sincos(za * k.angle)
		for j, zl := range lengths.z {
			length := k.mean + k.sd*zl
			short, y := yd-length*cos, length*sin
			r := math.Sqrt(short*short + y*y)
			s.ground.at(short, y, r, &l)
			w := k.share * t.angles.w[i] * lengths.w[j]
			again := l.penalty * StrokeAndDistance
			t.penalty += w * l.penalty
			t.add(lie, yd, w*again)
			if l.lie[golf.Green] > 0 {
				t.add(golf.Green, 3*r, w*l.lie[golf.Green])
			}
			l.lie[golf.Rough] += l.penalty - again
			t.addOffGreen(r, w, &l)
		}
	}
}

// puttReach is how many spreads a missed putt is followed to each side.
const puttReach = 4.5

// puttStep works out a putt of ft feet. The made part is exact; the misses are
// spread separately over the stretches so that no node sits on the hole's edge.
func (s *skills) puttStep(t *tally, ft float64) step {
	p := s.putt(ft)
	short, long := -puttPast/p.sd, (puttCapture-puttPast)/p.sd
	edge := min(p.window/p.angle, puttReach)
	whole := truncated(0, puttReach, t.putts)
	wide := truncated(edge, puttReach+edge, t.putts)
	at := truncated(max(short, -puttReach), min(long, puttReach), t.putts)
	p.miss(t, truncated(min(short, -puttReach)-1, short, t.putts), whole, stat.NormalCDF(short))
	p.miss(t, at, wide, (stat.NormalCDF(long)-stat.NormalCDF(short))*2*stat.NormalCDF(-p.window/p.angle))
	p.miss(t, truncated(long, max(long, puttReach)+1, t.putts), whole, stat.NormalCDF(-long))
	return t.step()
}

// miss spreads the misses of some lengths and angles, in spreads, over the states.
func (p putt) miss(t *tally, lengths, angles rule, share float64) {
	for i, za := range angles.z {
		for j, zl := range lengths.z {
			t.add(golf.Green, p.left(za*p.angle, puttPast+zl*p.sd), share*angles.w[i]*lengths.w[j])
		}
	}
}
