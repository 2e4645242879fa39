package golfer

import (
	"math"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
)

// flight is where one stroke off the green may go: a mixture of ways to strike
// it, and the chance that it is holed.
type flight struct {
	stays float64   // chance that the ball hardly moves and stays in its lie
	left  float64   // share of the distance that is then left
	holed float64   // chance, if it does not stay
	parts [4]strike // struck well, badly (full shot), fat and thin
}

// strike is one way to strike the ball: its share of all strokes, its length
// and the spread of its length in yards, and of its direction in radians.
type strike struct{ share, mean, sd, angle float64 }

// The shape of a badly struck shot: its length against the target's, the
// spread of that, and how much wider its direction spreads. From the
// prototype; there is no published source.
const (
	longMishitSD    = .13 // share of the target's length, as are the next two
	fatSD, thinSD   = .13, .25
	mishitAngle     = 1.6 // times the direction's spread of a well-struck ball
	recoveryMishits = 1.3 // times as many as from the fairway
	reachWidth      = 14  // yd over which the reach sets in
	lengthFloor     = .3  // yd of spread that no chip is without
)

// A chip with too little green is a harder stroke, as well as one that runs
// past: it is played higher, so that it runs a little less far past, and spreads by
// up to a third more. Common practice; there is no published source.
const (
	tightRun  = .85 // of the missing green that the ball runs past the hole
	tightMost = .3  // share that is added to the spread in the end
	tightOver = 2   // yd of missing green
)

// The distances between which short-game numbers blend into full-shot numbers.
var (
	log18, log70   = math.Log(18), math.Log(70)   // factors of the lie
	log100, log180 = math.Log(100), math.Log(180) // bunker, middle to long
	log30, log110  = math.Log(30), math.Log(110)  // kind of mishit
	log150, log260 = math.Log(150), math.Log(260) // tee factor
)

// flight works out a stroke from lie at yd yards. For want of past yards of
// green to land it on, the well-struck ball finishes beyond the hole.
func (s *skills) flight(lie golf.Lie, yd, past float64) flight {
	f := s.flightOf(lie, s.target(lie, yd), past)
	for _, p := range f.parts {
		f.holed += p.share * p.holes(yd, 0)
	}
	return f
}

// flightOf is a stroke from lie that tries to go target yards, apart from the chance
// that it is holed.
func (s *skills) flightOf(lie golf.Lie, target, past float64) flight {
	logTarget := math.Log(target)
	factor := s.lieFactor(lie, logTarget)
	angle := s.angle.at(logTarget) * factor
	sd := math.Hypot(target*s.length.at(logTarget)*factor, lengthFloor)
	full := smooth(logTarget, log30, log110)
	often := s.mishitFactor(lie)
	long := full * saturate(s.longMishit*often, mishitCap)
	short := (1 - full) * saturate(s.shortMishit*often, mishitCap)
	thin := short * s.thinShare * (1 - full)
	tight := 1 + tightMost*(1-math.Exp(-past/tightOver))
	f := flight{parts: [4]strike{
		{1 - long - short, target + tightRun*past, sd * tight, angle * tight},
		{long, target * s.badLength, target * longMishitSD, angle * mishitAngle},
		{short - thin, target * s.fatLength, target * fatSD, angle * mishitAngle},
		{thin, target * s.thinLength, target * thinSD, angle * mishitAngle},
	}}
	f.stays, f.left = s.stays(lie, logTarget, 1-full)
	return f
}

// What is left of the distance after a shot that hardly moves the ball. Common
// practice; there is no published source.
const (
	stuckLeft = .93 // in trouble and in sand
	fluffLeft = .8  // on grass
)

// stays is the chance that a shot leaves the ball where it was, and the share of
// the distance that is then left. On grass that happens near the green only, and in
// sand it becomes rare on the way to a full shot; near falls from 1 to 0 on the way
// to one. A blocked ball stays as often as one in sand, and in trouble besides.
func (s *skills) stays(lie golf.Lie, logTarget, near float64) (chance, left float64) {
	sand := s.sandFails * (1 - smooth(logTarget, log30, log180))
	switch lie {
	case golf.Recovery:
		return 1 - (1-s.recoveryFails)*(1-sand), stuckLeft
	case golf.Bunker:
		return sand, stuckLeft
	case golf.Fairway, golf.Rough:
		return s.fluff * near, fluffLeft
	default:
		return 0, 1
	}
}

// target is how far the golfer tries to hit the ball.
func (s *skills) target(lie golf.Lie, yd float64) float64 {
	if lie == golf.Recovery {
		yd *= s.recoveryAim
	}
	return softMin(yd, s.reach[lie], reachWidth)
}

// lieFactor is how much wider shots spread from a lie than from the fairway.
func (s *skills) lieFactor(lie golf.Lie, logTarget float64) float64 {
	w := smooth(logTarget, log18, log70)
	switch lie {
	case golf.Tee:
		return s.teeShort + (1-s.teeShort)*smooth(logTarget, log150, log260)
	case golf.Rough:
		return s.roughShort + (s.roughLong-s.roughShort)*w
	case golf.Bunker:
		middle := s.bunker[0] + (s.bunker[1]-s.bunker[0])*w
		return middle + (s.bunker[2]-s.bunker[1])*smooth(logTarget, log100, log180)
	case golf.Recovery:
		return s.recoverySpread
	default:
		return 1
	}
}

// mishitFactor is how much more often a ball is struck badly from a lie than from
// the fairway.
func (s *skills) mishitFactor(lie golf.Lie) float64 {
	switch lie {
	case golf.Recovery:
		return recoveryMishits
	case golf.Bunker:
		return s.sandMishit
	default:
		return 1
	}
}

// The window in which a ball from off the green falls: inside the hole's width
// when it would stop from .15 yd short to .5 yd past. From the prototype.
const (
	holeHalf  = 2.125 / 36 // yd; Rules of Golf, the hole is 4.25 in wide
	holeShort = .15        // yd
	holePast  = .5         // yd
)

// holes is the chance that this strike goes into a hole yd yards away and off
// radians to the side of the aim.
func (k strike) holes(yd, off float64) float64 {
	past, short := (yd+holePast-k.mean)/k.sd, (yd-holeShort-k.mean)/k.sd
	if past < -neverHoled || short > neverHoled {
		return 0
	}
	half := holeHalf / yd
	side := stat.NormalCDF((off+half)/k.angle) - stat.NormalCDF((off-half)/k.angle)
	return side * (stat.NormalCDF(past) - stat.NormalCDF(short))
}

// neverHoled is from how many spreads on a ball is never so long or short: the chance
// is below 1e-15.
const neverHoled = 8
