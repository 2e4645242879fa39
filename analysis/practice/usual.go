package practice

import (
	"math"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
)

// Sums are what is kept of a round when many players are looked over.
type Sums struct {
	Holes float64   // with their strokes known, 0 to 18
	Bands []float64 // lost to the golfer of the target, by the list of Bands
}

// Sum works out a game of what is kept of rounds, as Look does of the rounds
// themselves, without what cuts across the parts. ErrNothing without a hole.
func (f *Family) Sum(rounds []Sums, target float64) (Game, error) {
	var holes []float64
	var lost [][]float64
	for _, r := range rounds {
		if r.Holes == 0 {
			continue
		}
		row := make([]float64, rowCount())
		for i, x := range r.Bands {
			row[0] += x
			row[bands[i].Category] += x
			row[bandRow+i] = x
		}
		holes, lost = append(holes, r.Holes), append(lost, row)
	}
	return f.game(numbersOf(holes, lost), target)
}

// BandUsual is what is believed of a band, by the list of Bands, beside what a golfer
// of the family with the same score loses there. Estimates of Bands stand beside a
// golfer who loses as much in the part.
func (f *Family) BandUsual(g *Game, i int) Estimate {
	e := g.Bands[i]
	e.Usual = f.Lost(g.Level, g.Target, bandRow+i)
	return e
}

// Excess is how much more than usual is lost, in strokes for 18 holes.
func (e Estimate) Excess() float64 { return e.Mean - e.Usual }

// leastExcess is how much more than usual is worth a word, in strokes for 18 holes.
const leastExcess = .1

// Named reports whether so much more than usual is lost, and so surely, that it is
// worth a word.
func (e Estimate) Named() bool { return e.Excess() >= leastExcess && e.Certainty() != Usual }

// Under says how sure it is that less than usual is lost.
func (e Estimate) Under() Certainty {
	e.Mean, e.Usual = -e.Mean, -e.Usual
	return e.Certainty()
}

// Measured is what was lost for 18 holes, on average over rounds, without anything
// believed before.
type Measured struct{ Mean, SD float64 }

// Interval is where the average lies, 95 %.
func (m Measured) Interval() stat.Interval { return Estimate{Mean: m.Mean, SD: m.SD}.Interval() }

// measure keeps what was measured, with the spread that estimates stand on.
func (g *Game) measure(f *Family, n numbers) {
	g.lost = make([]Measured, rowCount())
	for row := range g.lost {
		g.lost[row] = Measured{n.mean[row], math.Sqrt(n.variance(row, f.Spread(g.Level, row)))}
	}
}

// PartLost is what was measured of a part of the game; of everything at 0.
func (g *Game) PartLost(c golf.Category) Measured { return g.lost[c] }

// BandLost is the same of a band, by the list of Bands.
func (g *Game) BandLost(i int) Measured { return g.lost[bandRow+i] }

// Serving is the drill of the house that serves a band, by the list of Bands.
func Serving(i int) (Drill, error) { return Find(areaOf(bands[i])) }
