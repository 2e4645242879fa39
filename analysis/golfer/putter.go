package golfer

import (
	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
)

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

// Putting is how many putts a putter takes on average, from every distance.
type Putting struct{ g *Golfer }

// WithSpread is the putter with the spread of the start line times a factor, at every
// distance, and nothing else changed.
func (p Putter) WithSpread(factor float64) Putter {
	s := *p.skills
	s.puttAngle *= factor
	return Putter{&s}
}

// Solve works out the putts that the putter takes from every distance.
func (p Putter) Solve() Putting {
	n := standard.states()
	g := &Golfer{skills: p.skills, grid: standard, steps: make([]step, n), e: make([]float64, n)}
	tally := newTally(standard)
	for _, i := range standard.greenOrder {
		g.e[i] = 2
		g.steps[i] = p.skills.puttStep(tally, standard.place(i).Distance.Feet())
	}
	g.settle(standard.greenOrder)
	return Putting{g}
}

// Strokes are the putts taken on average from ft feet.
func (p Putting) Strokes(ft float64) float64 {
	return p.g.Strokes(golf.Green, golf.Distance(ft)*golf.Foot)
}
