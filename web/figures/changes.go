package figures

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/a-h/templ"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/words"
)

// Changes is what changed between the two spans of a comparison: a row for each
// part of the game, what is clear first, and one for each count that changed
// clearly or probably.
type Changes struct {
	Known       bool   // two spans have rounds; nothing is shown otherwise
	Aside       string // which spans, with their rounds
	Caption     string
	Before, Now string // head the columns of figures
	Parts       []ChangeRow
	All         ChangeRow
	Counts      []ChangeRow // those that are clear or leaning
	Rest        string      // how many other counts were compared; empty when none were
}

// ChangeRow is one figure in both spans.
type ChangeRow struct {
	Name        string
	Note        string // what it counts: strokes a round, 1 of 27
	Before, Now string
	BeforeOf    Voucher // of the figure before
	NowOf       Voucher // of the figure now
	Moved       string  // the change, with its sign
	Word        string  // clear or leaning; empty when it could be chance
	up          bool    // it rose
	place       int     // 0 for clear, 1 for leaning, 2 for the rest
}

// mark says what the figure of a row is added to, or what it is the sum of. In
// every row what moved is the figure now less the figure before.
func (r ChangeRow) mark(role, column string) templ.Attributes {
	row := strings.ReplaceAll(r.Name, " ", "-")
	part, sum := "", ""
	switch column {
	case "before":
		part = "-" + row
	case "now":
		part = row
	default:
		sum = row
	}
	switch role {
	case "part":
		part += " all-" + column
	case "sum":
		sum += " all-" + column
	}
	return templ.Attributes{"data-part": part, "data-sum": sum}
}

// NewChanges sets the two spans side by side.
func NewChanges(in ComparisonInput) Changes {
	p := NewPair(in)
	if !p.Known {
		return Changes{}
	}
	c := Changes{Known: true, Before: words.Capital(p.BeforeName), Now: words.Capital(p.NowName),
		Aside:   fmt.Sprintf("%s (%s) against %s (%s).", words.Capital(p.NowName), p.NowRounds, p.BeforeName, p.BeforeRounds),
		Caption: "Strokes lost for 18 holes against " + Against(in)}
	before, now := PrintedLosses(in.Sheet, p.Before), PrintedLosses(in.Sheet, p.Now)
	row := func(k int, name string) ChangeRow {
		word := in.Sheet.Columns[p.Now].Cells[k].Change.Word
		r := ChangeRow{Name: name, Before: words.Signed(before[k], 1), Now: words.Signed(now[k], 1), Moved: words.Signed(p.Moved[k], 1), Word: Sure(word), place: placeOf(word)}
		r.BeforeOf, r.NowOf = LossVoucher(in, p.Before, k, before[k]).InRow(in, p.Before), LossVoucher(in, p.Now, k, now[k]).InRow(in, p.Now)
		return r
	}
	for _, part := range golf.Categories {
		c.Parts = append(c.Parts, row(int(part), words.Capital(part.String())))
	}
	slices.SortStableFunc(c.Parts, func(a, b ChangeRow) int { return cmp.Compare(a.place, b.place) })
	c.All = row(0, "All")
	c.Counts = p.counts(in)
	if n := p.compared(in) - len(c.Counts); n > 0 {
		c.Rest = fmt.Sprintf("%s other %s compared; %s clear or leaning.", words.Capital(words.Spelled(n)), words.OneOrMany(n, "count was", "counts were"), words.OneOrMany(n, "it is not", "none is"))
	}
	return c
}

// placeOf sorts changes: clear, leaning, all others.
func placeOf(w compare.Word) int {
	switch w {
	case compare.Clear:
		return 0
	case compare.Leaning:
		return 1
	default:
		return 2
	}
}

// behindRow is the address of the shots behind row k in a column; empty when it
// has none.
func behindRow(in ComparisonInput, column, k int) string {
	if k >= len(in.Sheet.Rows) || in.Sheet.Columns[column].Cells[k].Shots == 0 {
		return ""
	}
	return in.At.BehindRow(column+1, in.Sheet.Rows[k].String())
}

// compared is how many counts have a figure in both spans.
func (p Pair) compared(in ComparisonInput) int {
	n := 0
	p.eachCount(in, func(_ Count, _ CountWriter, now compare.Cell) { n += words.Tally(now.Change.Known) })
	return n
}

// eachCount calls for each count that splits up no other, with its figure now.
func (p Pair) eachCount(in ComparisonInput, call func(Count, CountWriter, compare.Cell)) {
	column := in.Sheet.Columns[p.Now]
	for _, group := range CountGroups {
		for _, count := range group.Counts {
			if w := WriterOf(count.Measure); !count.Detail && w.K < len(column.Measures) {
				call(count, w, column.Measures[w.K])
			}
		}
	}
}

// counts are the counts that changed clearly, then those that did probably.
func (p Pair) counts(in ComparisonInput) []ChangeRow {
	var all []ChangeRow
	written := [2][]float64{PrintedMeasures(in.Sheet, p.Before), PrintedMeasures(in.Sheet, p.Now)}
	p.eachCount(in, func(count Count, w CountWriter, now compare.Cell) {
		word := Sure(now.Change.Word)
		if word == "" {
			return
		}
		before := in.Sheet.Columns[p.Before].Measures[w.K]
		r := ChangeRow{Name: count.Name, Note: "for 18 holes", Word: word, up: now.Change.Mean > 0, place: placeOf(now.Change.Word),
			Before: w.Write(written[0][w.K]), Now: w.Write(written[1][w.K]), Moved: w.Change(written[0][w.K], written[1][w.K]),
			BeforeOf: CountVoucher(in, p.Before, count, written[0][w.K]).InRow(in, p.Before), NowOf: CountVoucher(in, p.Now, count, written[1][w.K]).InRow(in, p.Now)}
		if w.Share {
			r.Note = fmt.Sprintf("%s, was %s", hits(now), hits(before))
		}
		all = append(all, r)
	})
	slices.SortStableFunc(all, func(a, b ChangeRow) int { return cmp.Compare(a.place, b.place) })
	return all
}

// hits writes a share as it was counted: 1 of 27.
func hits(c compare.Cell) string {
	return fmt.Sprintf("%.0f of %d", math.Round(c.Mean*float64(c.Shots)), c.Shots)
}

// BehindCount is the address of the holes behind a measure in a column; empty when
// there are none.
func BehindCount(in ComparisonInput, column int, measure string) string {
	cell := in.Sheet.Columns[column].Measures[compare.MeasureAt(measure)]
	if !cell.Known || cell.Mean == 0 {
		return ""
	}
	return in.At.BehindMeasure(column+1, measure)
}
