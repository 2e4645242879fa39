package months

import (
	"strings"
	"testing"

	"strokeledger/analysis"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
	"strokeledger/web/figures"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// moved is a comparison of May and June in which everything and the four parts
// of the game changed by some strokes, each with a word.
func moved(rounds int, changes [5]float64, words [5]compare.Word) figures.ComparisonInput {
	in := figures.ComparisonInput{At: paths.Comparison{Whose: paths.Whose{Player: 1, Own: true}}, Name: "Robin", Target: 79, Units: form.StandardUnits,
		Months: analysis.Months{Level: 79, First: golf.Date{Year: 2026, Month: 5, Day: 1}, Last: golf.Date{Year: 2026, Month: 6, Day: 30}}}
	rows := []compare.Row{{}}
	for _, c := range golf.Categories {
		rows = append(rows, compare.Row{Category: c})
	}
	column := func(month golf.Span, changed bool) compare.Column {
		c := compare.Column{Span: month}
		for i := range rounds {
			c.Rounds = append(c.Rounds, &compare.Judged{Played: golf.Played{ID: golf.RoundID(i + 1)}})
		}
		for k := range rows {
			cell := compare.Cell{Figure: compare.Figure{Sample: stat.Sample{N: rounds, Mean: 1}, Known: rounds > 0}, Shots: 10}
			if k == 0 {
				cell.Mean = float64(len(golf.Categories)) // the parts add up to it
			}
			if changed {
				cell.Mean += changes[k]
				cell.Change = compare.Change{Known: true, Mean: changes[k], Word: words[k]}
			}
			c.Cells = append(c.Cells, cell)
		}
		return c
	}
	in.Sheet = compare.Sheet{Rows: rows, Columns: []compare.Column{column(golf.Month(2026, 5), false), column(golf.Month(2026, 6), true)}}
	return in
}

func TestNoRoundsIsAnEmptyPage(t *testing.T) {
	in := figures.ComparisonInput{At: paths.Comparison{Whose: paths.Whose{Player: 1, Own: true}}, Name: "Robin", Target: 79, Units: form.StandardUnits, Months: analysis.Months{Level: 79}}
	m := NewComparisonPage(layout.Page{}, in)
	if !m.Empty || !strings.HasPrefix(m.Lede, "No rounds to compare yet.") || len(m.Presets) != 0 {
		t.Errorf("%+v", m)
	}
}

// A span of rounds is as long as the days that they were played on.
func TestDaysOfASpan(t *testing.T) {
	span, err := golf.ParseSpan("last10")
	if err != nil {
		t.Fatal(err)
	}
	played := func(day int) *compare.Judged {
		return &compare.Judged{Played: golf.Played{Round: golf.Round{Date: golf.Date{Year: 2026, Month: 5, Day: day}}}}
	}
	for _, c := range []struct {
		name     string
		column   compare.Column
		from, to string
	}{
		{"a month", compare.Column{Span: golf.Month(2026, 5), Rounds: []*compare.Judged{played(9)}}, "2026-05-01", "2026-05-31"},
		{"rounds", compare.Column{Span: span, Rounds: []*compare.Judged{played(2), played(5), played(9)}}, "2026-05-02", "2026-05-09"},
		{"no rounds", compare.Column{Span: span}, "", ""},
	} {
		if from, to := days(c.column); from != c.from || to != c.to {
			t.Errorf("%s: %s to %s, want %s to %s", c.name, from, to, c.from, c.to)
		}
	}
}
