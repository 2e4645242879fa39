package golfer

import (
	"math"
	"math/rand/v2"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
)

// FormSpread is how much a golfer's skill coordinate differs from round to
// round. Independent shots alone give an 80 golfer a round spread of about 3;
// real rounds show 3.5 to 4.5 (common knowledge, no published source).
const FormSpread = .12

// Levels are the levels at which the four parts of the game are played, each
// from 68 to 110.
type Levels struct{ Tee, Approach, ShortGame, Putting float64 }

// Even returns a golfer who plays every part at one level.
func Even(level float64) Levels { return Levels{level, level, level, level} }

// Player is a golfer who can be sent out to play rounds. It never changes and
// may be shared between goroutines.
type Player struct {
	parameters *Parameters
	skill      [golf.Putting + 1]float64 // skill coordinate by category
	boundary   golf.Distance
	card       []golf.CardHole
	style      Style
	shortPutts float64 // skill coordinate of the style's short putts
}

// NewPlayer makes a player for the holes of a card. The mean over many rounds
// is that of the levels: since a bad day costs more than a good one wins, the
// skill is moved by what the form of the day would add.
func NewPlayer(p *Parameters, levels Levels, card []golf.CardHole, boundary golf.Distance) (*Player, error) {
	player := &Player{parameters: p, boundary: boundary, card: card}
	for c, s := range map[golf.Category]float64{golf.TeeShots: levels.Tee, golf.Approach: levels.Approach,
		golf.ShortGame: levels.ShortGame, golf.Putting: levels.Putting} {
		t, err := expect.SkillOf(s)
		if err != nil {
			return nil, err
		}
		player.skill[c] = t + recentre(card, t)
	}
	return player, nil
}

// recentre is the change of skill that takes out what form adds to the mean:
// expected strokes are convex in t, and a form of one spread up or down stands
// for the whole normal.
func recentre(card []golf.CardHole, t float64) float64 {
	low, high := expect.SkillRange()
	at := min(max(t, low+FormSpread), high-FormSpread)
	less, here, more := expect.ModelStrokes(card, at-FormSpread), expect.ModelStrokes(card, at), expect.ModelStrokes(card, at+FormSpread)
	if more == less {
		return 0
	}
	return -FormSpread * (less - 2*here + more) / (more - less)
}

// Play plays one round and returns its holes. The same seed and number give
// the same round, whatever else was played. Distances are exact; a caller that
// writes them down rounds them.
func (p *Player) Play(seed, number uint64) []golf.Hole {
	source := rand.NewPCG(seed, number)
	r := roundInPlay{player: p, source: source, rng: rand.New(source), shots: make([]golf.Shot, 0, usualShots)}
	form := r.rng.NormFloat64() * FormSpread
	for _, c := range golf.Categories {
		r.skills[c] = r.day(c, p.skill[c]+form)
	}
	r.dress(form)
	holes := make([]golf.Hole, len(p.card))
	for i, h := range p.card {
		start := len(r.shots)
		p.reseed(&r, seed, number, h.Number)
		if drawn, ok := p.style.Drawn[h.Number]; ok {
			r.drawnHole(h, drawn)
		} else {
			r.hole(h)
		}
		holes[i] = golf.Hole{Number: h.Number, Par: h.Par, Shots: r.shots[start:len(r.shots):len(r.shots)]}
	}
	return holes
}

// usualShots is room for the shots of a round.
const usualShots = 110

// roundInPlay is one round as it is played.
type roundInPlay struct {
	player *Player
	source *rand.PCG
	rng    *rand.Rand
	skills [golf.Putting + 1]*skills // of the day, by category
	shots  []golf.Shot               // so far, of all holes

	shortPutts *skills // for putts of ShortPutt and less; nil where they are as the others
}

// day returns the skills of a category, shared with an earlier one that has
// the same coordinate.
func (r *roundInPlay) day(c golf.Category, t float64) *skills {
	for _, other := range golf.Categories {
		if other < c && r.player.skill[other] == r.player.skill[c] {
			return r.skills[other]
		}
	}
	return r.player.parameters.at(t)
}

// ball is where the ball lies: feet on the green, yards elsewhere.
type ball struct {
	lie golf.Lie
	far float64
}

// hole plays a hole from its tee until the ball is in.
func (r *roundInPlay) hole(h golf.CardHole) {
	b := ball{golf.Tee, h.Length.Yards()}
	for holed := false; !holed; {
		shot := golf.Shot{Lie: b.lie, Distance: b.lie.Unit().Of(b.far)}
		s := r.skills[golf.CategoryOf(shot.Lie, shot.Distance, h.Par, r.player.boundary)]
		if b.lie == golf.Green {
			holed = r.putt(s, &b)
		} else {
			holed = r.strike(s, &b, &shot)
		}
		r.shots = append(r.shots, shot)
	}
}

// putt plays a putt and moves the ball when it misses.
func (r *roundInPlay) putt(s *skills, b *ball) (holed bool) {
	if r.shortPutts != nil && b.far <= ShortPutt.Feet() {
		s = r.shortPutts
	}
	p := s.putt(b.far)
	angle, over := r.rng.NormFloat64()*p.angle, puttPast+r.rng.NormFloat64()*p.sd
	if math.Abs(angle) < p.window && over >= 0 && over <= puttCapture {
		return true
	}
	b.far = p.left(angle, over)
	return false
}

// strike plays a stroke off the green by the same rules as strokeStep.
func (r *roundInPlay) strike(s *skills, b *ball, shot *golf.Shot) (holed bool) {
	f := s.flight(b.lie, b.far, 0)
	if f.stays > 0 && r.rng.Float64() < f.stays {
		b.far = max(b.far*f.left, 1)
		return false
	}
	if r.rng.Float64() < f.holed {
		return true
	}
	k := f.pick(r.rng.Float64())
	sin, cos := math.Sincos(r.rng.NormFloat64() * k.angle)
	length := k.mean + r.rng.NormFloat64()*k.sd
	short, y := b.far-length*cos, length*sin
	rest := math.Hypot(short, y)
	var l landing
	s.ground.at(short, y, rest, &l)
	lie, penalty := l.pick(r.rng.Float64())
	if penalty {
		shot.Penalty = 1
		if r.rng.Float64() < StrokeAndDistance {
			return false
		}
	}
	b.lie, b.far = lie, max(rest, 1)
	if lie == golf.Green {
		b.far = rest * 3
	}
	return false
}

// pick returns the strike at place u, 0 to 1, of the mixture.
func (f *flight) pick(u float64) strike {
	for _, k := range f.parts[1:] {
		if u < k.share {
			return k
		}
		u -= k.share
	}
	return f.parts[0]
}

// pick returns the lie at place u, 0 to 1, of the landing; a penalty is
// dropped in the rough.
func (l *landing) pick(u float64) (lie golf.Lie, penalty bool) {
	for _, lie := range []golf.Lie{golf.Green, golf.Fairway, golf.Bunker, golf.Recovery} {
		if u < l.lie[lie] {
			return lie, false
		}
		u -= l.lie[lie]
	}
	return golf.Rough, u < l.penalty
}
