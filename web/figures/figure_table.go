package figures

import (
	"fmt"
	"strings"

	"strokeledger/analysis/account"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/words"
)

// FigureTable is figures with a column for each span and no pictures.
type FigureTable struct {
	Caption string
	Kind    string     // heads the column of names: Count, Shots
	Heads   []SpanHead // one a span
	Moved   string     // heads the change between the two spans; empty when there are no two
	Rows    []FigureRow
}

// FigureRow is one figure in every span.
type FigureRow struct {
	Name   string
	Detail bool         // it splits up the row above it
	Cells  []FigureCell // one a span
	Moved  string       // the change, signed; empty when not known
	Word   string       // clear or leaning; empty when it could be chance
	adds   string       // names what the change is added to
	sums   string       // names what the change is the sum of
}

// FigureCell is a figure in one span.
type FigureCell struct {
	Figure string // or why there is none
	None   bool   // there is no figure
	Voucher
	Note string // its 95% interval and how many chances it has; empty when neither is known
	adds string // names what the figure is added to
	sums string // names what it is the sum of
}

// Vouchers are those of its figures, and whether there is any.
func (r FigureRow) Vouchers() (all []Voucher, any bool) {
	for _, c := range r.Cells {
		all, any = append(all, c.Voucher), any || c.Working != ""
	}
	return all, any
}

// Adds marks a row as one that is added, column by column, to the sum of a name.
func (r *FigureRow) Adds(name string) {
	for i := range r.Cells {
		r.Cells[i].adds += fmt.Sprintf(" %s-%d", name, i)
	}
	r.adds += " " + name + "-moved"
}

// Sums marks a row as the sum of a name.
func (r *FigureRow) Sums(name string) {
	for i := range r.Cells {
		r.Cells[i].sums += fmt.Sprintf(" %s-%d", name, i)
	}
	r.sums += " " + name + "-moved"
}

// NewFigureTable makes a table without rows.
func NewFigureTable(in ComparisonInput, caption, kind string) FigureTable {
	t := FigureTable{Caption: caption, Kind: kind}
	for i, c := range in.Sheet.Columns {
		t.Heads = append(t.Heads, SpanHead{Name: words.Capital(ShortSpanName(in, i)), Rounds: words.Plural(len(c.Rounds), "round", "rounds")})
	}
	if p := NewPair(in); p.Known {
		t.Moved = words.Capital(ShortSpanName(in, p.Now)) + " against " + ShortSpanName(in, p.Before)
	}
	return t
}

// NewBandTable splits up what each part of the game lost by distance; bands from
// which no shot was played are left out.
func NewBandTable(in ComparisonInput) FigureTable {
	t := NewFigureTable(in, "Strokes lost for 18 holes against "+Against(in)+", by distance", "Shots")
	printed := make([][]float64, len(in.Sheet.Columns))
	for i := range printed {
		printed[i] = PrintedLosses(in.Sheet, i)
	}
	for _, part := range golf.Categories {
		for k, row := range in.Sheet.Rows {
			if row.Category != part {
				continue
			}
			name := words.Capital(part.String())
			if row.Band != (account.Band{}) {
				name = words.Band(row.Band, in.Units)
			}
			if r := newLossRow(in, k, printed); anyShots(in.Sheet, k) {
				r.Name, r.Detail = name, row.Band != (account.Band{})
				if sum := "bands-" + strings.ReplaceAll(part.String(), " ", "-"); r.Detail {
					r.Adds(sum)
				} else {
					r.Sums(sum)
				}
				t.Rows = append(t.Rows, r)
			}
		}
	}
	return t
}

func newLossRow(in ComparisonInput, k int, printed [][]float64) FigureRow {
	var r FigureRow
	for i, c := range in.Sheet.Columns {
		cell := FigureCell{Figure: "–", None: true}
		if c.Cells[k].Known && c.Cells[k].Shots > 0 {
			cell = FigureCell{Figure: words.Signed(printed[i][k], 1), Voucher: LossVoucher(in, i, k, printed[i][k]).InRow(in, i), Note: words.Plural(c.Cells[k].Shots, "shot", "shots")}
		}
		r.Cells = append(r.Cells, cell)
	}
	if p := NewPair(in); p.Known && in.Sheet.Columns[p.Now].Cells[k].Shots+in.Sheet.Columns[p.Before].Cells[k].Shots > 0 {
		r.Moved, r.Word = words.Signed(p.Moved[k], 1), Sure(p.change(in, k).Word)
	}
	return r
}

// anyShots reports whether any span has a shot in a row.
func anyShots(s compare.Sheet, row int) bool {
	for _, c := range s.Columns {
		if c.Cells[row].Shots > 0 {
			return true
		}
	}
	return false
}

// BandsSaid says how many bands are clear or leaning.
func (t FigureTable) BandsSaid() string {
	bands, sure := 0, 0
	for _, r := range t.Rows {
		if r.Detail {
			bands, sure = bands+1, sure+words.Tally(r.Word != "")
		}
	}
	text := words.SpelledPlural(bands, "group of shots", "groups of shots")
	if t.Moved == "" {
		return text
	}
	if sure == 0 {
		return text + ", none clear or leaning"
	}
	return text + ", " + words.Spelled(sure) + " clear or leaning"
}
