package months

import (
	"strings"
	"testing"

	"strokeledger/analysis"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/figures"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// twoHoles is June with one round of two holes: a plain four, and a double.
func twoHoles(t *testing.T) figures.ComparisonInput {
	four := golf.Hole{Number: 1, Par: 4, Shots: []golf.Shot{{Lie: golf.Tee, Distance: 390 * golf.Yard}, {Lie: golf.Fairway, Distance: 150 * golf.Yard}, {Lie: golf.Green, Distance: 20 * golf.Foot}, {Lie: golf.Green, Distance: 2 * golf.Foot}}}
	six := golf.Hole{Number: 3, Par: 4, Shots: []golf.Shot{{Lie: golf.Tee, Distance: 410 * golf.Yard}, {Lie: golf.Recovery, Distance: 210 * golf.Yard}, {Lie: golf.Recovery, Distance: 195 * golf.Yard},
		{Lie: golf.Fairway, Distance: 60 * golf.Yard}, {Lie: golf.Green, Distance: 5 * golf.Foot}, {Lie: golf.Green, Distance: 1 * golf.Foot}}}
	in := figures.ComparisonInput{At: paths.Comparison{Whose: paths.Whose{Player: 1, Own: true}}, Target: 79, Units: form.StandardUnits}
	in.At.Spans = []golf.Span{golf.Month(2026, 5), golf.Month(2026, 6)}
	var err error
	in.Months, err = analysis.NewEngine().Months(analysis.MonthsInput{Choice: in.At.Comparison, Target: 79, Boundary: golf.StandardBoundary,
		History: []golf.Played{{ID: 7, Target: 79, Round: golf.Round{Date: golf.Date{Year: 2026, Month: 6, Day: 2}, Course: "Harrow Fen", Holes: []golf.Hole{four, six}}}}})
	if err != nil {
		t.Fatal(err)
	}
	return in
}

func TestBehindPage(t *testing.T) {
	for _, c := range []struct {
		name          string
		figure        analysis.Figure
		heading, lede string
		holes, share  bool
		first         BehindRow // but for what was lost
		rows          int
	}{
		{"a part", analysis.Figure{Column: 2, Row: "putting"}, "Putting, June", "4 shots in 1 round lost", false, false, BehindRow{At: "/rounds/7#h3-5", Place: "hole 3, shot 5", From: "Green 5 ft", Hit: "no"}, 4},
		{"a part without rounds", analysis.Figure{Column: 1, Row: "putting"}, "Putting, May", "0 shots in 0 rounds lost 0.00 strokes.", false, false, BehindRow{}, 0},
		{"doubles", analysis.Figure{Column: 2, Measure: "doubles"}, "Doubles, June", "1 hole in 1 round.", true, false, BehindRow{At: "/rounds/7#h3-1", Place: "hole 3", From: "6 on a par 4", Hit: "yes"}, 1},
		{"short putts", analysis.Figure{Column: 2, Measure: analysis.ShortPutts}, "Holed from six feet or less, June", "2 of 3 putts holed. Strokes ", false, true, BehindRow{At: "/rounds/7#h3-5", Place: "hole 3, shot 5", From: "Green 5 ft", Hit: "no"}, 3},
		{"putts of a length", analysis.Figure{Putts: "4-5"}, "Putts, 4 to 5 ft, all these spans", "0 of 1 putt holed. Strokes lost: 0.6", false, true, BehindRow{At: "/rounds/7#h3-5", Place: "hole 3, shot 5", From: "Green 5 ft", Hit: "no"}, 1},
	} {
		in := twoHoles(t)
		b, err := in.Behind(c.figure)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		p := NewBehindPage(layout.Page{}, in, b)
		if p.Heading != c.heading || p.Title != c.heading || !strings.HasPrefix(p.Lede, c.lede) || p.Holes != c.holes || p.Share != c.share || len(p.Rows) != c.rows || p.Cut != "" || p.Back != in.At.Months() {
			t.Errorf("%s: %+v", c.name, p)
			continue
		}
		if c.rows > 0 {
			c.first.Day, c.first.Course, c.first.Lost = "2 Jun 2026", "Harrow Fen", p.Rows[0].Lost
			c.first.Of = figures.Voucher{Name: c.first.Place, Working: p.Rows[0].Of.Working}
			if p.Rows[0] != c.first || p.Rows[0].Lost[0] != '+' {
				t.Errorf("%s: %+v\nwant %+v", c.name, p.Rows[0], c.first)
			}
		}
	}
}

func TestPuttsLost(t *testing.T) {
	for lost, want := range map[float64]string{1.25: "Strokes lost: 1.25.", -.5: "Strokes won back: 0.50.", -.004: "Strokes lost: 0.00."} {
		if got := puttsLost(lost); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

func TestLongListsAreCut(t *testing.T) {
	in := twoHoles(t)
	all := in.Sheet.Columns[1].ShotsOf(compare.Row{})
	for len(all) <= behindMost {
		all = append(all, all...)
	}
	if p := newBehind(layout.Page{}, in, "All shots, June", all[:behindMost+1]); p.Cut != "The costliest 300 of 301." || len(p.Rows) != behindMost {
		t.Errorf("%q, %d rows", p.Cut, len(p.Rows))
	}
}
