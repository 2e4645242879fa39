package entry

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
	"strokeledger/web/layout"
)

func TestWhatAFileHoldsIsSaid(t *testing.T) {
	round := golf.Round{Date: golf.Date{Year: 2026, Month: 5, Day: 2}, Course: "Harrow Fen"}
	settings := &SettingsInput{Name: "Robin", Far: "m", Green: "ft", Target: 84.5}
	for _, c := range []struct {
		there          []There
		settings       *SettingsInput
		skip, replaced string
		said           int
	}{
		{[]There{ThereNot, ThereNot}, nil, "Import them", "", 0},
		{[]There{ThereNot, ThereSame}, nil, "Import the 1 new", "", 1},
		{[]There{ThereNot, ThereSame, ThereOther}, settings, "Import the 1 new", "Import all, and replace 1", 2},
		{[]There{ThereOther}, nil, "", "Import all, and replace 1", 1},
		{[]There{ThereSame}, nil, "", "", 1},
		{[]There{ThereSame}, settings, "Import the settings, if ticked", "", 1},
	} {
		f := PreviewInput{Settings: c.settings}
		for _, there := range c.there {
			f.Add("a round", round, there)
		}
		p := NewPreviewPage(layout.Page{}, f)
		if p.Skip != c.skip || p.Replace != c.replaced || len(p.There) != c.said || len(p.Rows) != len(c.there) {
			t.Errorf("%v: %+v", c.there, p)
		}
		want := ""
		if c.settings != nil {
			want = "Take over its settings too: the name Robin, target 84.5, metres and feet on the green"
		}
		if diff := cmp.Diff(want, p.Settings); diff != "" {
			t.Error(diff)
		}
	}
}
