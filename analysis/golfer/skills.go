package golfer

import (
	"math"

	"strokeledger/analysis/golf"
)

// skills are the parameters of one golfer, at one skill coordinate, made ready
// for reading.
type skills struct {
	reach  [golf.Green]float64 // yd, by lie
	angle  ladder              // rad, from the fairway
	length ladder              // share of the length, from the fairway

	longMishit, shortMishit float64    // before saturation
	badLength               float64    // share of the target's length, of a bad full shot
	thinShare               float64    // of the bad strikes near the green; the rest are fat
	fatLength, thinLength   float64    // shares of the target's length
	fluff, sandFails        float64    // chances that a ball hardly moves: from grass, from sand
	sandMishit              float64    // bad strikes from sand for each from the fairway
	recoveryFails           float64    // chance that a ball in trouble stays there
	recoveryAim             float64    // share of the distance that is tried for
	roughShort, roughLong   float64    // factors of the spread from the fairway, as are the next three
	bunker                  [3]float64 // short, middle, long
	recoverySpread          float64
	teeShort                float64
	puttAngle               float64 // rad
	puttLength              float64 // share of the length
	puttReading, puttClose  float64 // ft and a factor, see putt
	ground                  ground
}

// The most that a chance which grows with t may come to.
const (
	mishitCap        = .45
	recoveryFailsCap = .5
	fluffCap         = .3
	sandFailsCap     = .5
	recoveryShareCap = .75
)

// at works out the golfer at skill coordinate t.
func (p *Parameters) at(t float64) *skills {
	v := func(k key) float64 { return p[k].At(t) }
	drive := v(drive)
	s := &skills{
		reach: [...]float64{golf.Tee: drive, golf.Fairway: drive * v(reachFairway), golf.Rough: drive * v(reachRough),
			golf.Bunker: drive * v(reachBunker), golf.Recovery: drive * v(reachRecovery)},
		longMishit: v(longMishit), shortMishit: v(shortMishit),
		badLength: v(badLength),
		thinShare: v(thinOdds) / (1 + v(thinOdds)), fatLength: v(fatLength), thinLength: v(thinLength),
		fluff: saturate(v(fluff), fluffCap), sandFails: saturate(v(sandFails), sandFailsCap), sandMishit: v(sandMishit),
		recoveryFails: saturate(v(recoveryFails), recoveryFailsCap),
		recoveryAim:   v(recoveryAim),
		roughShort:    v(roughShort), roughLong: v(roughLong),
		bunker:         [3]float64{v(bunkerShort), v(bunkerMiddle), v(bunkerLong)},
		recoverySpread: v(recoverySpread), teeShort: v(teeShort),
		puttAngle: radians(v(puttAngle)), puttLength: v(puttLength), puttReading: v(puttReading), puttClose: v(puttClose),
		ground: ground{
			greenRadius: v(greenRadius), greenEdge: v(greenEdge),
			apron: v(nearApron), bunker: v(nearBunker), recovery: v(nearRecovery),
			penalty:     v(nearPenalty) * v(penaltyGrowth),
			fairwayHalf: v(fairwayHalf), fairwayEdge: v(fairwayEdge), fairwayBunker: v(fairwayBunker),
			recoveryFrom: v(recoveryFrom), recoveryShare: saturate(v(recoveryShare), recoveryShareCap),
			penaltyFrom: v(penaltyFrom), penaltyShare: v(penaltyShare) * v(penaltyGrowth),
		},
	}
	short, long := v(shortAngle), v(longAngle)
	s.angle = newLadder(radians(v(angle10))*short, radians(v(angle40))*short, radians(v(angle110))*long,
		radians(v(angle180))*long, radians(v(angle260))*v(driverAngle))
	short, long = v(shortLength), v(longLength)
	s.length = newLadder(v(length10)*short, v(length40)*short, v(length110)*long, v(length180)*long, v(length260)*long)
	return s
}

// ladder reads a spread that is log-linear in log distance between knots at
// 10, 40, 110, 180 and 260 yd and constant outside them.
type ladder struct {
	height, rise [rungs]float64 // log of the value at a knot; its rise to the next
}

// rungs is how many knots a ladder has, and rungLogs the log of their yards.
const rungs = 5

var rungLogs = [rungs]float64{math.Log(10), math.Log(40), math.Log(110), math.Log(180), math.Log(260)}

// newLadder makes a ladder of the values at the knots, all above 0.
func newLadder(values ...float64) ladder {
	var l ladder
	for i, v := range values {
		l.height[i] = math.Log(v)
	}
	for i := range rungs - 1 {
		l.rise[i] = (l.height[i+1] - l.height[i]) / (rungLogs[i+1] - rungLogs[i])
	}
	return l
}

// at returns the value at a distance whose logarithm is given.
func (l *ladder) at(logYards float64) float64 {
	if logYards <= rungLogs[0] {
		return math.Exp(l.height[0])
	}
	i := 0
	for i < rungs-1 && logYards > rungLogs[i+1] {
		i++
	}
	return math.Exp(l.height[i] + l.rise[i]*(logYards-rungLogs[i]))
}

// radians turns degrees into radians.
func radians(deg float64) float64 { return deg * math.Pi / 180 }

// saturate lets a chance grow without ever passing most; a hard cap would put
// a kink into expected strokes.
func saturate(x, most float64) float64 { return most * (1 - math.Exp(-x/most)) }

// softMin is the smaller of a and b with the corner rounded over about width.
func softMin(a, b, width float64) float64 {
	return min(a, b) - width*math.Log1p(math.Exp(-math.Abs(a-b)/width))
}

// smooth rises from 0 at log distance from to 1 at to, without a kink.
func smooth(logYards, from, to float64) float64 {
	u := min(max((logYards-from)/(to-from), 0), 1)
	return u * u * (3 - 2*u)
}

// logistic rises from 0 to 1, through a half at 0.
func logistic(x float64) float64 { return 1 / (1 + math.Exp(-x)) }
