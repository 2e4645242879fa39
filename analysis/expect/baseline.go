package expect

import (
	"fmt"

	"strokeledger/analysis/golf"
)

// Baseline is a golfer to compare with: how many strokes he takes on average
// from anywhere. It never changes and may be shared between goroutines.
type Baseline struct {
	kind  Kind
	level float64
	table Table
	short ShortTable
}

// Kind is what a baseline stands for. The zero value is invalid.
type Kind uint8

// The two kinds of baseline.
const (
	KindTour  Kind = iota + 1 // the published tour table
	KindLevel                 // a golfer of one level
)

// Kind returns what the baseline stands for.
func (b *Baseline) Kind() Kind { return b.kind }

// Level returns the baseline's level, 68 to 110, and 0 for the tour table.
func (b *Baseline) Level() float64 { return b.level }

// Strokes returns the mean number of strokes to hole out from a lie at a
// distance straight to the hole (from the tee, the card's length). Under 1 yd
// off the green it is that of 1 yd; beyond 700 yd and 300 ft it goes on with
// the last slope.
func (b *Baseline) Strokes(lie golf.Lie, d golf.Distance) float64 {
	return b.table.At(lie, d)
}

// Shot returns the mean number of strokes to hole out from where a shot was
// played, with what missing green adds when it was short-sided.
func (b *Baseline) Shot(s golf.Shot) float64 {
	strokes := b.table.At(s.Lie, s.Distance)
	if fall := s.Shortfall(); fall > 0 {
		strokes += b.short.at(s.Lie, s.Distance.Yards(), fall.Yards())
	}
	return strokes
}

// Course returns the mean number of strokes over the holes of a card.
func (b *Baseline) Course(card []golf.CardHole) float64 { return courseSum(&b.table, card) }

// Tour returns the published tour table as a baseline. Outside the table it
// follows the shape of the family at its skill, and so does short-side cost.
func Tour() *Baseline {
	f := levels()
	return &Baseline{kind: KindTour, table: f.tour, short: f.short[f.zero()]}
}

// Level returns a golfer of level s, from 68 to 110.
func Level(s float64) (*Baseline, error) {
	if !(s >= MinLevel && s <= MaxLevel) {
		return nil, fmt.Errorf("level %g; allowed: %g to %g", s, MinLevel, MaxLevel)
	}
	f := levels()
	i, w := place(f.sum, s)
	b := f.blend(i, w)
	b.level = s // the blend's own may be off in the last digit
	return b, nil
}

// ForTarget returns the golfer whose mean over the holes of a card is exactly
// target strokes. Where no level from 68 to 110 reaches that, it is the nearest
// level, and course is what the course itself costs: what that golfer takes
// less the target, positive where no golfer is good enough.
func ForTarget(card []golf.CardHole, target float64) (b *Baseline, course float64) {
	f := levels()
	i, w, rest := f.solve(card, target)
	b = f.blend(i, w)
	if rest {
		course = b.Course(card) - target
	}
	return b, course
}

// solve inverts the sum over a card, which is linear between stored levels.
func (f *family) solve(card []golf.CardHole, target float64) (i int, w float64, beyond bool) {
	sums := make([]float64, len(f.level))
	for k := range f.level {
		sums[k] = courseSum(&f.level[k], card)
	}
	for _, end := range []float64{MinLevel, MaxLevel} {
		k, v := place(f.sum, end)
		reach := sums[k] + v*(sums[k+1]-sums[k])
		if end == MinLevel && target < reach || end == MaxLevel && target > reach {
			return k, v, true
		}
	}
	i, w = place(sums, target)
	return i, w, false
}

// blend is the golfer between two stored levels.
func (f *family) blend(i int, w float64) *Baseline {
	b := &Baseline{kind: KindLevel, level: f.sum[i] + w*(f.sum[i+1]-f.sum[i])}
	lo, hi := &f.level[i], &f.level[i+1]
	for l := range b.table.Yards {
		for k := range b.table.Yards[l] {
			b.table.Yards[l][k] = lo.Yards[l][k] + w*(hi.Yards[l][k]-lo.Yards[l][k])
		}
	}
	for k := range b.table.Feet {
		b.table.Feet[k] = lo.Feet[k] + w*(hi.Feet[k]-lo.Feet[k])
	}
	for l := range b.short {
		for d := range b.short[l] {
			for k := range b.short[l][d] {
				b.short[l][d][k] = f.short[i][l][d][k] + w*(f.short[i+1][l][d][k]-f.short[i][l][d][k])
			}
		}
	}
	return b
}

// Ladder returns every stored level from 68 to 110 and the two ends, in
// ascending order. Expected strokes are linear in the level between two rungs,
// so that a sum of them can be followed from 68 to 110 exactly.
func Ladder() []*Baseline {
	f := levels()
	first, w := place(f.sum, MinLevel)
	ladder := []*Baseline{f.blend(first, w)}
	for i := first + 1; i < len(f.sum) && f.sum[i] < MaxLevel; i++ {
		ladder = append(ladder, f.blend(i-1, 1))
	}
	last, w := place(f.sum, MaxLevel)
	return append(ladder, f.blend(last, w))
}
