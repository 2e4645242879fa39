package months

import (
	"strings"
	"testing"

	"strokeledger/analysis"
	"strokeledger/analysis/account"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/figures"
	"strokeledger/web/layout"
)

// A page with rounds has every table and picture; with a single span nothing
// changed.
func TestComparisonPageWithRounds(t *testing.T) {
	in := twoHoles(t)
	in.Name = "Robin"
	m := NewComparisonPage(layout.Page{}, in)
	if m.Empty || m.Enter != "" || m.At != "1 round on one course, Robin." || m.Changes.Known || !strings.HasPrefix(m.Lede, "June: ") {
		t.Errorf("%+v", m)
	}
	if len(m.Parts) != len(golf.Categories)+1 || len(m.Levels) != len(golf.Categories) || len(m.Counts) != len(figures.CountGroups) || len(m.Season.Table) != 1 || len(m.Putts.Table) == 0 || len(m.Bands.Rows) == 0 || m.Foot == "" {
		t.Errorf("%+v", m)
	}
	counts := m.Counts[len(m.Counts)-1].Table.Rows
	if short := counts[len(counts)-1]; short.Name != shortPuttsName || short.Cells[0].Figure != "no putts" || short.Cells[1].Figure != "67%" {
		t.Errorf("%+v", short)
	}
}

// A choice that leaves no round is not a player without rounds.
func TestNoRoundsLeftToCompare(t *testing.T) {
	for _, c := range []struct {
		name    string
		course  string
		without []golf.RoundID
		want    string
	}{
		{"no rounds", "", nil, "No rounds to compare yet."},
		{"a course", "Harrow Fen", nil, "No rounds left to compare."},
		{"rounds left out", "", []golf.RoundID{3}, "No rounds left to compare."},
	} {
		in := noRounds()
		in.At.Course, in.At.Without = c.course, c.without
		if m := NewComparisonPage(layout.Page{}, in); !m.Empty || !strings.HasPrefix(m.Lede, c.want) {
			t.Errorf("%s: %q", c.name, m.Lede)
		}
	}
}

// A row of the table and the page behind it have one name.
func TestNamesOfFigures(t *testing.T) {
	in := twoHoles(t)
	for row, want := range map[string]string{"all": "All shots", "tee": "Tee", "tee par 4": "Tee: Par 4", "putting 3-6": "Putting: 3 to 6 ft"} {
		b, err := in.Behind(analysis.Figure{Column: 2, Row: row})
		if err != nil {
			t.Errorf("%s: %v", row, err)
			continue
		}
		if got := figureName(in, b); got != want {
			t.Errorf("%s: %q, want %q", row, got, want)
		}
	}
}

func TestLedeOfALoss(t *testing.T) {
	for lost, want := range map[float64]string{1.25: "1 shot in 2 rounds lost 1.25 strokes.", -1: "1 shot in 2 rounds won back 1.00 strokes.", -.004: "1 shot in 2 rounds lost 0.00 strokes."} {
		round := &compare.Judged{Account: account.Account{Holes: []account.Hole{{Shots: []account.Shot{{Expected: 2, After: 1 + lost, Lost: lost}}}}}}
		b := analysis.Behind{Span: &compare.Column{Rounds: []*compare.Judged{round, round}}, All: []compare.Behind{{Round: round, Lost: lost}}}
		if got := lossLede(b); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
