package compare

import (
	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
)

// Measure is a plain number of a round other than strokes lost: a count for 18
// holes, or a share of chances.
type Measure struct {
	Name  string                                 // for addresses; MeasureAt reads it
	Share bool                                   // a share of chances, 0 to 1
	of    func(*Judged) (value, chances float64) // of a round; the chances of a count are its holes
	kind  eventKind
}

// Measures lists them in the order of a page: doubles and their kinds, where
// their roots lie, what compounding lost, and the counts of a round.
var Measures = measures()

// measures makes the list.
func measures() []Measure {
	count := func(name string, of func(*account.Counts) int) Measure {
		return Measure{name, false, func(j *Judged) (float64, float64) { return float64(of(&j.Account.Counts)), j.Holes }, ofRate}
	}
	share := func(name string, of func(*account.Counts) (int, int)) Measure {
		return Measure{name, true, func(j *Judged) (float64, float64) {
			hit, chances := of(&j.Account.Counts)
			return float64(hit), float64(chances)
		}, ofShare}
	}
	all := []Measure{
		count("doubles", func(c *account.Counts) int { return c.Doubles - c.Unknown }),
		count("compound", func(c *account.Counts) int { return c.Compound }),
		count("single", func(c *account.Counts) int { return c.Single }),
		count("separate", func(c *account.Counts) int { return c.Separate }),
		count("leak", func(c *account.Counts) int { return c.Leak }),
	}
	for _, part := range golf.Categories {
		all = append(all, Measure{"root " + part.String(), false, func(j *Judged) (float64, float64) { return float64(j.roots(part)), j.Holes }, ofRate})
	}
	return append(all,
		Measure{"compounding", false, func(j *Judged) (float64, float64) { return j.compounding(), j.Holes }, ofCost},
		share("fairways", func(c *account.Counts) (int, int) { return c.Fairways, c.FairwayChances }),
		share("greens", func(c *account.Counts) (int, int) { return c.Greens, c.GreenChances }),
		share("up and down", func(c *account.Counts) (int, int) { return c.UpAndDowns, c.UpAndDownChances }),
		Measure{"putts", false, func(j *Judged) (float64, float64) { return float64(j.Account.Counts.Putts), j.Holes }, ofPutts},
		count("three-putts", func(c *account.Counts) int { return c.ThreePutts }),
		count("penalties", func(c *account.Counts) int { return c.Penalties }),
	)
}

// MeasureAt returns the place of a measure in the list, -1 for none.
func MeasureAt(name string) int {
	for i, m := range Measures {
		if m.Name == name {
			return i
		}
	}
	return -1
}

// roots counts the doubles that began in a part of the game.
func (j *Judged) roots(part golf.Category) int {
	n := 0
	for _, d := range j.Account.Doubles {
		if d.RootCategory == part {
			n++
		}
	}
	return n
}

// compounding is what errors after the first lost on doubles.
func (j *Judged) compounding() float64 {
	sum := 0.0
	for _, d := range j.Account.Doubles {
		sum += d.Compounding
	}
	return sum
}

// measure fills in the measures of the column.
func (c *Column) measure(drawn resampled, holes []float64) {
	values, chances := make([]float64, len(c.Rounds)), make([]float64, len(c.Rounds))
	for _, m := range Measures {
		for i, r := range c.Rounds {
			values[i], chances[i] = m.of(r)
		}
		hits, tries := sums(values, chances)
		f := Figure{}
		if m.Share {
			f = ratio(values, chances, 1, drawn)
		} else {
			f = perRound(values, holes, drawn)
		}
		switch f.events = (events{kind: m.kind, hits: int(hits), chances: int(tries)}); m.kind {
		case ofPutts:
			f.events.byHole = puttsByHole(c.Rounds)
		case ofCost:
			f.events = compoundDoubles(c.Rounds)
		}
		c.Measures = append(c.Measures, drawn.cell(f, int(tries)))
	}
}
