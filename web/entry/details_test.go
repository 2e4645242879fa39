package entry

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
)

func TestDetailsPage(t *testing.T) {
	others := []components.Choice{{Value: "2", Name: "Quarry Hill"}}
	kept := form.RoundDetails{Day: form.ParseDay("2026-05-02"), Course: form.TextOf("Harrow Fen"), Target: form.NumberOf(79), Holes: []form.HoleCard{
		form.HoleCardOf(golf.CardHole{Number: 10, Par: 4, Length: golf.Metres.Of(351)}, golf.Metres), {Number: 11}}}
	page := NewDetailsPage(layout.Page{}, 3, kept, others, golf.Metres)
	if page.Title != "Date, course and target" || page.At != "/rounds/3/details" || page.Back != "/rounds/3" || page.Unit != "m" || page.Wrong.Heading != "" {
		t.Errorf("%+v", page)
	}
	want := []components.Choice{{Name: "keep what is entered here", Chosen: true}, {Value: "2", Name: "Quarry Hill"}}
	if diff := cmp.Diff(want, page.Take); diff != "" {
		t.Error(diff)
	}
	for _, c := range []struct{ got, want components.Field }{
		{page.Day, components.Field{Name: "day", Label: "Date played", Type: "date", Value: "2026-05-02"}},
		{page.Target, components.Field{Name: "target", Label: "Target score", Value: "79", Mode: "decimal", Hint: "For 18 holes, 68 to 110."}},
		{page.Par18, components.Field{Name: "par18", Label: "Par of 18 holes", Mode: "numeric", Hint: "Of all 18 holes, even if you played nine."}},
		{page.First, components.Field{Name: "first_hole", Label: "First hole", Mode: "numeric", Hint: "Where the round started. The other holes follow in order."}},
		{page.Conditions, components.Field{Name: "conditions", Label: "Conditions", Hint: "Weather and greens, in one line. Optional."}},
	} {
		if diff := cmp.Diff(c.want, c.got); diff != "" {
			t.Error(diff)
		}
	}
	hole := HoleFields{Number: "10",
		Par:    components.Field{Name: "par-10", Label: "Par of hole 10", Value: "4", Mode: "numeric"},
		Length: components.Field{Name: "length-10", Label: "Length of hole 10", Value: "351", Mode: "decimal"},
		Index:  components.Field{Name: "index-10", Label: "Stroke index of hole 10", Mode: "numeric"}}
	if diff := cmp.Diff(hole, page.Holes[0]); diff != "" || len(page.Holes) != 2 {
		t.Errorf("%d holes: %s", len(page.Holes), diff)
	}
}

// Problems are summed up in the order of the fields, and stand in their fields.
func TestDetailsPageProblems(t *testing.T) {
	typed := form.RoundDetails{Target: form.ParseTarget("200"), Take: form.ParseCourse("2"), Holes: []form.HoleCard{{Number: 10}, {Number: 11, Par: form.ParseWhole("9", golf.MinPar, golf.MaxPar)}}}
	page := NewDetailsPage(layout.Page{}, 3, typed, nil, golf.Metres)
	want := components.Summary{Heading: "Not saved yet: 2 things to fix.", Links: []components.SummaryLink{
		{At: "#target", Text: "Target score: Allowed: 68 to 110."}, {At: "#par-11", Text: "Par of hole 11: Allowed: 3 to 6."}}}
	if diff := cmp.Diff(want, page.Wrong); diff != "" {
		t.Error(diff)
	}
	if page.Holes[1].Par.Value != "9" || page.Holes[1].Par.Problem != "Allowed: 3 to 6." || page.Holes[0].Par.Problem != "" {
		t.Errorf("%+v", page.Holes)
	}
	if page.Take[0].Chosen {
		t.Error("another course was chosen, and the page keeps what is entered")
	}
}
