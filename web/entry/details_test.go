package entry

import (
	"slices"
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
)

// The problems are summed up in the order of the fields, each with a link.
func TestProblemsOfDetails(t *testing.T) {
	f := form.RoundDetails{Target: form.ParseTarget("200"), Holes: []form.HoleCard{{Number: 10}, {Number: 11, Par: form.ParseWhole("9", golf.MinPar, golf.MaxPar)}}}
	d := NewDetailsPage(layout.Page{}, 3, f, nil, golf.Metres)
	want := []components.SummaryLink{{At: "#target", Text: "Target score: Allowed: 68 to 110."}, {At: "#par-11", Text: "Par of hole 11: Allowed: 3 to 6."}}
	if !slices.Equal(d.Wrong.Links, want) {
		t.Errorf("%+v", d.Wrong.Links)
	}
	if len(d.Holes) != 2 || d.Holes[1].Par.Value != "9" || d.Holes[1].Par.Problem == "" || d.Holes[0].Par.Problem != "" || d.Unit != "m" {
		t.Errorf("%+v", d.Holes)
	}
}
