package coach

import (
	"strings"
	"testing"

	"strokeledger/analysis"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/practice"
	"strokeledger/analysis/stat"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// beside84 is a pupil of 84.2 who putts worse than is usual.
func beside84() BesideInput {
	in := BesideInput{Whose: paths.Whose{Player: 7}, Name: "Bea", Target: 79, Units: form.StandardUnits}
	in.Beside = analysis.Beside{Rounds: 10, First: today.AddDays(-60), Level: 84.24}
	for _, c := range golf.Categories {
		for _, r := range compare.Rows(golf.StandardBoundary) {
			row := analysis.BesideRow{Row: r, Interval: stat.Interval{Low: -1, High: 2}}
			switch r.String() {
			case "putting":
				row.Lost, row.Usual, row.Sure, row.More = 2.04, 1.2, practice.Leaning, true
			case "putting 3-6":
				row.Lost, row.Usual, row.Sure, row.More = 1.46, .5, practice.Clear, true
			case "putting 6-10":
				row.Lost, row.Usual = .58, .7
			case "tee", "tee par 4":
				row.Lost, row.Usual, row.Sure = .1, .9, practice.Clear
			}
			if r.Category == c {
				in.Beside.Rows = append(in.Beside.Rows, row)
			}
		}
	}
	return in
}

// Plain words come first; what others lose is told of five or more, or not at all.
func TestBesidePage(t *testing.T) {
	in := beside84()
	in.Peers.From, in.Peers.Below = analysis.PeersAt(84.24)
	b := NewBesidePage(layout.Page{}, in)
	if b.Lede != "Bea loses more than a golfer who scores 84 here: putting, 3 to 6 ft, 1 stroke a round more, which is clear." {
		t.Errorf("%q", b.Lede)
	}
	if b.At != "The last ten rounds, from 2 Jul 2026: a score of 84.2." || b.Others != "Of other players here, fewer than five have ten rounds or more and score 80 to 86, so their figures are not shown." || len(b.Heads) != 2 {
		t.Errorf("%q, %q", b.At, b.Others)
	}
	putting := b.Parts[len(b.Parts)-1]
	if len(putting.Rows) != 3 || putting.Rows[0].Name != "Putting" || putting.Rows[1].Name != "3 to 6 ft" || strings.Join(putting.Rows[1].Figures, " ") != "+1.4 +0.5" || putting.Rows[1].Sure != "more, clear" || !putting.Rows[1].Clear {
		t.Errorf("%+v", putting.Rows)
	}
	if tee := b.Parts[0].Rows[0]; tee.Sure != "less, clear" {
		t.Errorf("%+v", tee)
	}
	own := in
	own.Whose.Own = true
	if b := NewBesidePage(layout.Page{}, own); !strings.HasPrefix(b.Lede, "You lose more than ") || b.Heads[0] != "You" || b.Back.Name != "Practice plan" {
		t.Errorf("%q", b.Lede)
	}
	own.Beside.Rows = own.Beside.Rows[:4] // all off the tee
	if b := NewBesidePage(layout.Page{}, own); b.Lede != "Nothing costs you clearly more than a golfer who scores 84." {
		t.Errorf("%q", b.Lede)
	}
	own.Whose.Own = false
	if b := NewBesidePage(layout.Page{}, own); b.Lede != "Nothing costs Bea clearly more than a golfer who scores 84." {
		t.Errorf("%q", b.Lede)
	}
	few := BesideInput{Beside: analysis.Beside{Rounds: 1, Thin: golf.Enough(golf.ThinPlan, 1, practice.MinRounds)}}
	if b := NewBesidePage(layout.Page{}, few); b.Lede != "It takes five rounds to say what is usual. There is one." || len(b.Parts) != 0 {
		t.Errorf("%q", b.Lede)
	}
	few.Beside.Thin.Have = 0
	if b := NewBesidePage(layout.Page{}, few); b.Lede != "It takes five rounds to say what is usual. There are none yet." {
		t.Errorf("%q", b.Lede)
	}
	var others []analysis.Peer
	for range 6 {
		others = append(others, analysis.Peer{Level: 82, Beyond: make([]float64, len(practice.Bands()))})
	}
	in.Peers = analysis.PeersOf(84.24, others)
	if b := NewBesidePage(layout.Page{}, in); !strings.HasPrefix(b.Others, "Others here are six players who score 80 to 86, Bea not among them: ") || len(b.Heads) != 3 || len(b.Parts[0].Rows[0].Figures) != 3 {
		t.Errorf("%q", b.Others)
	}
}
