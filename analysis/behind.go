package analysis

import (
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
)

// Figure names a figure of a comparison: the loss of a row or the count of a
// measure in one of its columns, or the putts of a length in all of them. One of
// the three is set.
type Figure struct {
	Column  int    // counted from 1; for a row or a measure
	Row     string // as compare.Row is written
	Measure string // of compare.Measures, or ShortPutts
	Putts   string // as compare.Holed is written
}

// ShortPutts is the measure of putts of 6 ft and less.
const ShortPutts = "six feet"

// Behind answers "what is this figure made of?": shots or holes, the costliest
// first.
type Behind struct {
	Of      Figure
	All     []compare.Behind
	Span    *compare.Column  // nil for putts, which are those of all columns
	Row     compare.Row      // of a loss
	Measure *compare.Measure // nil for a loss, putts and ShortPutts
	Length  compare.Holed    // of putts

	loss bool
}

// Behind finds what a figure is made of; golf.ErrNotFound when there is no such
// figure.
func (m *Months) Behind(f Figure) (Behind, error) {
	b := Behind{Of: f}
	if f.Putts != "" {
		return m.behindPutts(b)
	}
	if f.Column < 1 || f.Column > len(m.Sheet.Columns) {
		return b, golf.ErrNotFound
	}
	b.Span = &m.Sheet.Columns[f.Column-1]
	if row, ok := compare.RowAt(m.boundary, f.Row); ok {
		b.loss, b.Row, b.All = true, row, b.Span.ShotsOf(row)
		return b, nil
	}
	if f.Measure == ShortPutts {
		b.All = b.Span.ShortPutts()
		return b, nil
	}
	k := compare.MeasureAt(f.Measure)
	if k < 0 {
		return b, golf.ErrNotFound
	}
	b.Measure = &compare.Measures[k]
	b.All = b.Span.HolesOf(*b.Measure, m.boundary)
	return b, nil
}

func (m *Months) behindPutts(b Behind) (Behind, error) {
	for _, h := range m.Curve {
		if h.String() == b.Of.Putts {
			b.Length, b.All = h, compare.PuttsBehind(m.Sheet.Columns, h)
			return b, nil
		}
	}
	return b, golf.ErrNotFound
}

// IsLoss reports whether the figure is what shots of a row lost.
func (b *Behind) IsLoss() bool { return b.loss }

// Holes reports whether whole holes are listed, not shots.
func (b *Behind) Holes() bool { return b.Measure != nil }

// Share reports whether some of what is listed counts as a success.
func (b *Behind) Share() bool { return !b.loss && (b.Measure == nil || b.Measure.Share) }

// Hits counts the successes.
func (b *Behind) Hits() int {
	n := 0
	for _, one := range b.All {
		if one.Hit {
			n++
		}
	}
	return n
}
