package forecast

import (
	"math"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
)

// half is the chance of one round of two.
const half = .5

// takes finds the part of the game that must become better by the fewest levels for
// the target to come in one round of two, by one search on the curve for the strokes
// that it takes, and rounds of what the table of gains says of each part.
func (g *game) takes(c *Chance, curve curve, base *field) (Takes, error) {
	if c.Chance >= half {
		return Takes{Already: true}, nil
	}
	need := curve.shiftFor(half)
	best, fewest := golf.Category(0), math.Inf(1)
	var to float64
	for _, part := range golf.Categories {
		from := *levelOf(&g.ask.Levels, part)
		level, ok := g.levelFor(part, from, -need)
		if ok && from-level < fewest {
			best, fewest, to = part, from-level, level
		}
	}
	if best == 0 {
		return Takes{}, nil
	}
	return g.reaches(c, best, to, base)
}

// A part is played at the level of the table, and at half a level better as long as
// that is not enough.
const (
	levelStep = .5
	mostSteps = 8
)

// reaches plays a part of the game at a level, and at better ones until it is enough.
func (g *game) reaches(c *Chance, part golf.Category, level float64, base *field) (Takes, error) {
	for range mostSteps {
		s := g.now()
		*levelOf(&s.levels, part) = level
		w, err := g.compare(c, base, s)
		if err != nil {
			return Takes{}, err
		}
		if w.Chance >= half {
			return Takes{Known: true, Part: part, Level: level, Strokes: w.Strokes, Chance: w.Chance}, nil
		}
		if level -= levelStep; level < expect.MinLevel {
			break
		}
	}
	return Takes{}, nil
}

// levelFor is the level at which a part wins so many strokes over the card, in steps
// of a quarter; ok is false where the best level does not.
func (g *game) levelFor(part golf.Category, from, strokes float64) (level float64, ok bool) {
	holes := float64(len(g.ask.Card)) / 18
	for level = math.Floor(from*4) / 4; level >= expect.MinLevel; level -= .25 {
		if g.ask.Gain(part, from, level)*holes >= strokes {
			return level, true
		}
	}
	return 0, false
}

// shiftFor is the shift at which the chance is p.
func (c curve) shiftFor(p float64) float64 {
	low, high := -40., 40.
	for range 60 {
		middle := (low + high) / 2
		if c.at(middle) > p {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}
