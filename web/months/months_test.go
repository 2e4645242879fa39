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
	"strokeledger/web/words"
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
			if changed {
				cell.Change = compare.Change{Known: true, Mean: changes[k], Word: words[k], Thin: golf.Enough(golf.ThinChange, rounds, 3)}
			}
			c.Cells = append(c.Cells, cell)
		}
		return c
	}
	in.Sheet = compare.Sheet{Rows: rows, Columns: []compare.Column{column(golf.Month(2026, 5), false), column(golf.Month(2026, 6), true)}}
	return in
}

func TestMonthsAreSaidInASentence(t *testing.T) {
	const none, clear, leaning, chance = compare.Word(0), compare.Clear, compare.Leaning, compare.Chance
	for _, c := range []struct {
		rounds  int
		changes [5]float64
		words   [5]compare.Word
		want    string
	}{
		{8, [5]float64{-2.1, 0, -1.9, -.1, -.1}, [5]compare.Word{clear, chance, clear, chance, chance},
			"June against May: 2.1 strokes better a round, almost all of it on the approach, and that is clear; the rest could be chance."},
		{8, [5]float64{1.5, 0, 1, .1, .4}, [5]compare.Word{leaning, chance, leaning, chance, chance},
			"June against May: 1.5 strokes worse a round, most of it on the approach, which is leaning but not certain; the rest could be chance."},
		{8, [5]float64{-.4, -1.4, 0, 0, 1}, [5]compare.Word{chance, clear, chance, chance, leaning},
			"June against May: 0.4 strokes better a round, more than that off the tee, and that is clear; putting is 1 worse (leaning)."},
		{8, [5]float64{0, 0, 0, 0, 0}, [5]compare.Word{chance, chance, chance, chance, chance},
			"June against May: no better and no worse, which could be chance."},
		{2, [5]float64{-5, -5, 0, 0, 0}, [5]compare.Word{none, none, none, none, none},
			"June against May: 5 strokes better a round; it takes three rounds in each to say how sure that is."},
		{4, [5]float64{-5, -5, 0, 0, 0}, [5]compare.Word{none, none, none, none, none},
			"June against May: 5 strokes better a round."},
	} {
		if got := figures.ComparisonLede(moved(c.rounds, c.changes, c.words)); got != c.want {
			t.Errorf("%q\nwant %q", got, c.want)
		}
	}
}

func TestSpansHaveNames(t *testing.T) {
	for text, want := range map[string]string{
		"2026-05": "May", "2026": "2026", "last10": "the last ten", "before10": "the ten before", "..": "all rounds",
		"2026-05-03..2026-06-14": "3 May 2026 to 14 Jun 2026", "..2026-06-14": "up to 14 Jun 2026", "2026-05-03..": "from 3 May 2026",
	} {
		span, err := golf.ParseSpan(text)
		if err != nil {
			t.Fatal(err)
		}
		if got := words.Span(span, false); got != want {
			t.Errorf("%s: %q, want %q", text, got, want)
		}
	}
	if got := words.Span(golf.Month(2025, 5), true); got != "May 2025" {
		t.Errorf("%q", got)
	}
}

func TestNoRoundsIsAnEmptyPage(t *testing.T) {
	in := figures.ComparisonInput{At: paths.Comparison{Whose: paths.Whose{Player: 1, Own: true}}, Name: "Robin", Target: 79, Units: form.StandardUnits, Months: analysis.Months{Level: 79}}
	m := NewComparisonPage(layout.Page{}, in)
	if !m.Empty || !strings.HasPrefix(m.Lede, "No rounds to compare yet.") || len(m.Presets) != 0 {
		t.Errorf("%+v", m)
	}
}
