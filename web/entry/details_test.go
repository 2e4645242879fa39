package entry

import (
	"slices"
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/layout"
)

// The problems are summed up in the order of the fields, each with a link.
func TestProblemsOfDetails(t *testing.T) {
	d := NewDetailsPage(layout.Page{}, DetailsInput{ID: 3, Holes: []int{10, 11}, Unit: golf.Metres, Values: map[string]string{"par-11": "9", "target": "200"},
		Problems: map[string]string{"par-11": "Allowed: 3 to 6.", "target": "Allowed: 68 to 110."}})
	want := []components.SummaryLink{{At: "#target", Text: "Target score: Allowed: 68 to 110."}, {At: "#par-11", Text: "Par of hole 11: Allowed: 3 to 6."}}
	if !slices.Equal(d.Wrong.Links, want) {
		t.Errorf("%+v", d.Wrong.Links)
	}
	if len(d.Holes) != 2 || d.Holes[1].Par.Value != "9" || d.Holes[1].Par.Problem == "" || d.Holes[0].Par.Problem != "" || d.Unit != "m" {
		t.Errorf("%+v", d.Holes)
	}
}
