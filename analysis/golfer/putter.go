package golfer

import "strokeledger/analysis/stat"

// StartLineSpread returns the spread in radians (one standard deviation) of the
// line on which a putt of ft feet starts, reading it included.
func (p Putter) StartLineSpread(ft float64) float64 { return p.skills.putt(ft).angle }

// Pace returns the shares of putts of ft feet that are struck too softly to
// reach the hole, with a speed at which the hole holds them, and too hard. They
// add up to 1.
func (p Putter) Pace(ft float64) (short, holding, long float64) {
	q := p.skills.putt(ft)
	short, fits := stat.NormalCDF(-puttPast/q.sd), stat.NormalCDF((puttCapture-puttPast)/q.sd)
	return short, fits - short, 1 - fits
}
