package golfer

import (
	"math"

	"strokeledger/analysis/stat"
)

// Putting: the ball starts on a line with normal spread and is struck to stop
// 1 ft past the hole with normal spread. It is holed when its start line is
// inside the window the hole leaves and it would stop 0 to 3 ft past (the
// angle-and-length model of A. Gelman's case study, 2019, after M. Broadie).
const (
	holeRadius   = 2.125 / 12 // ft; Rules of Golf
	ballRadius   = 0.84 / 12  // ft; Rules of Golf, Equipment Rules
	puttPast     = 1.0        // ft beyond the hole that a putt is struck
	puttCapture  = 3.0        // ft past at which the hole no longer holds it
	puttNear     = 3.0        // ft over which the shortest putts differ
	puttLengthAt = .95        // ft added to a putt before its length spread is taken
)

// StartLineWindow returns how far from the middle a putt of ft feet may start
// and still go in, in radians: asin((R - r)/x) with the radii of hole and ball.
// Nearer than the difference of the radii any line is good.
func StartLineWindow(ft float64) float64 {
	if ft <= holeRadius-ballRadius {
		return math.Pi / 2
	}
	return math.Asin((holeRadius - ballRadius) / ft)
}

// putt is the distribution of one putt.
type putt struct {
	ft     float64
	angle  float64 // rad
	sd     float64 // ft, of where it stops
	window float64 // rad
}

// putt works out the putt of ft feet, more than 0.
func (s *skills) putt(ft float64) putt {
	return putt{
		ft:     ft,
		angle:  s.puttAngle * math.Sqrt(1+ft*ft/(s.puttReading*s.puttReading)) * (1 + (s.puttClose-1)*math.Exp(-ft/puttNear)),
		sd:     s.puttLength * (ft + puttLengthAt),
		window: StartLineWindow(ft),
	}
}

// made is the chance that the putt is holed.
func (p putt) made() float64 {
	onLine := 2*stat.NormalCDF(p.window/p.angle) - 1
	onPace := stat.NormalCDF((puttCapture-puttPast)/p.sd) - stat.NormalCDF(-puttPast/p.sd)
	return onLine * onPace
}

// left is the distance in feet from which the next putt is played when this
// one starts angle radians off the line and stops over feet past the hole.
func (p putt) left(angle, over float64) float64 {
	along := (p.ft+over)*math.Cos(angle) - p.ft
	return math.Hypot(along, (p.ft+over)*math.Sin(angle))
}

// Putter is the putting of a golfer, without solving the other strokes.
type Putter struct{ skills *skills }

// Putter returns the putting at a skill coordinate; 0 is about a tour player.
func (p *Parameters) Putter(skill float64) Putter { return Putter{p.at(skill)} }

// MakeRate returns the chance that a putt of ft feet is holed.
func (p Putter) MakeRate(ft float64) float64 { return p.skills.putt(ft).made() }
