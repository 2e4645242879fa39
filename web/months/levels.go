package months

import (
	"fmt"

	"strokeledger/analysis/account"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/chart"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/words"
)

func (m *ComparisonPage) heads(q figures.ComparisonInput) []figures.SpanHead {
	var heads []figures.SpanHead
	for i, c := range q.Sheet.Columns {
		heads = append(heads, figures.SpanHead{Name: words.Capital(figures.SpanName(q, i)), Rounds: words.Plural(len(c.Rounds), "round", "rounds")})
	}
	return heads
}

// parts is the table of strokes lost.
func (m *ComparisonPage) parts(q figures.ComparisonInput) figures.SpanTable {
	scale := figures.SpanScale(q.Sheet)
	t := figures.SpanTable{Caption: "Strokes lost for 18 holes against " + m.Against + ", with the interval of 95 %; every column on the same scale",
		Kind: "Part", Heads: m.heads(q), Since: m.Since, Axis: components.NewAxis(scale, words.Tick)}
	for k, row := range q.Sheet.Rows {
		name := ""
		switch {
		case row.Category == 0:
			t.Foot = []figures.SpanRow{m.lossRow(q, k, "All", scale)}
			continue
		case row.Band == (account.Band{}):
			name = words.Capital(row.Category.String())
		default:
			name = words.Band(row.Band, q.Units)
			if !anyShots(q.Sheet, k) {
				continue
			}
		}
		made := m.lossRow(q, k, name, scale)
		if row.Band == (account.Band{}) {
			t.Rows = append(t.Rows, made)
			continue
		}
		part := &t.Rows[row.Category-golf.TeeShots]
		part.Bands = append(part.Bands, made)
	}
	return t
}

func anyShots(s compare.Sheet, row int) bool {
	for _, c := range s.Columns {
		if c.Cells[row].Shots > 0 {
			return true
		}
	}
	return false
}

func (m *ComparisonPage) lossRow(q figures.ComparisonInput, k int, name string, scale chart.Scale) figures.SpanRow {
	r := figures.SpanRow{Name: name}
	for i, c := range q.Sheet.Columns {
		cell := c.Cells[k]
		made := figures.SpanCell{Head: words.Capital(figures.SpanName(q, i)), Bar: figures.EmptyBar, Figure: "no round", None: true}
		if cell.Known {
			made.Figure, made.Bar, made.None = words.Signed(cell.Mean, 1), scale.Bar(cell.Mean), false
			made.Behind = words.Plural(cell.Shots, "shot", "shots")
			if cell.Shots > 0 {
				made.At = q.At.BehindRow(i+1, q.Sheet.Rows[k].String())
			}
			made.Change = figures.NewChangeWords(cell.Change, words.OneDecimal)
		}
		if cell.HasInterval() {
			made.Interval = words.Signed(cell.Interval.Low, 1) + " to " + words.Signed(cell.Interval.High, 1)
			made.Whisker = scale.Whisker(cell.Mean, cell.Interval.Low, cell.Interval.High)
		}
		r.Cells = append(r.Cells, made)
		r.Since = figures.NewChangeWords(cell.Since, words.OneDecimal)
	}
	return r
}

// plays is the table of levels that each part plays to.
func (m *ComparisonPage) plays(q figures.ComparisonInput) figures.SpanTable {
	t := figures.SpanTable{Caption: fmt.Sprintf("The level at which a part of the game loses nothing on average, with the interval of 95 %%; from %d rounds on", compare.MinRounds),
		Kind: "Part", Heads: m.heads(q)}
	for _, part := range golf.Categories {
		r := figures.SpanRow{Name: words.Capital(part.String())}
		for i, c := range q.Sheet.Columns {
			p := c.PlaysTo[part]
			cell := figures.SpanCell{Head: words.Capital(figures.SpanName(q, i)), Figure: words.Thin(p.Thin()), None: true}
			if p.Known() {
				cell.Figure, cell.Interval, cell.None = words.Level(p.Level), words.LevelRange(p), false
				cell.Reach, cell.At = figures.NewReach(p, q.Target), q.At.BehindRow(i+1, part.String())
			}
			r.Cells = append(r.Cells, cell)
		}
		t.Rows = append(t.Rows, r)
	}
	return t
}
