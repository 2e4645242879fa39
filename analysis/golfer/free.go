package golfer

import "math"

// free is one number that a calibration moves.
type free struct {
	key    key
	number moves // one of base, slope and curve
}

// freeNumbers lists them: bases, slopes and curves that the specs leave free.
func freeNumbers() []free {
	var all []free
	for k, s := range specs {
		for _, m := range []moves{base, slope, curve} {
			if s.free&m != 0 {
				all = append(all, free{key(k), m})
			}
		}
	}
	return all
}

// Name says which number it is.
func (f free) String() string {
	return specs[f.key].name + map[moves]string{base: "", slope: ", slope", curve: ", curve"}[f.number]
}

// moved returns the parameters with one number moved by a share of the skill:
// a base by that share of itself, a slope or a curve by the addition that moves
// the skill at t = 1 by that share.
func (p Parameters) moved(f free, share float64) Parameters {
	switch f.number {
	case base:
		p[f.key].Base *= math.Exp(share)
	case slope:
		p[f.key].Slope += share
	case curve:
		p[f.key].Curve += share
	}
	return p
}

// away is how far a number stands from where calibrations start, as a share.
func (p *Parameters) away(f free) float64 {
	k, s := p[f.key], specs[f.key].start
	switch f.number {
	case base:
		return math.Log(k.Base / s.Base)
	case slope:
		return k.Slope - s.Slope
	default:
		return k.Curve - s.Curve
	}
}

// priorSpread is how far the prior lets a number wander before it counts as much as one
// target missed by its spread, unless the spec says otherwise.
var priorSpread = map[moves]float64{base: .3, slope: .3, curve: .15}

// prior is priorSpread of one number.
func (f free) prior() float64 {
	if own := specs[f.key].prior; own != 0 {
		return own * priorSpread[f.number] / priorSpread[base]
	}
	return priorSpread[f.number]
}
