package entry

import (
	"slices"
	"strings"
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/layout"
	"strokeledger/web/site"
	"strokeledger/web/words"
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

// What is removed is named so that it can be told from others, and quoted in
// brief.
func TestWhatWasRemovedIsNamed(t *testing.T) {
	day := golf.Date{Year: 2026, Month: 5, Day: 2}
	long := strings.Repeat("é", 80)
	for _, c := range []struct {
		r    site.RemovedThing
		want string
	}{
		{site.RemovedThing{Kind: "round", Day: day, Text: "Harrow Fen"}, "Removed: round of 2 May 2026, Harrow Fen."},
		{site.RemovedThing{Kind: "note", Day: day, Text: long, Of: "Robin"}, "Removed: note of 2 May 2026, “" + strings.Repeat("é", words.ExcerptMost) + "…”, for Robin."},
		{site.RemovedThing{Kind: "assignment", Day: day, Text: "Start line"}, "Removed: practice “Start line”."},
	} {
		if u := site.NewUndo(c.r); u == nil || u.Text != c.want {
			t.Errorf("%+v, want %s", u, c.want)
		}
	}
	if site.NewUndo(site.RemovedThing{Kind: "none"}) != nil {
		t.Error("a way back from nothing")
	}
	p := site.NewRemovedPage(layout.Page{}, []site.RemovedThing{{Kind: "result", Name: "a"}, {Kind: "round", Name: "b"}, {Kind: "round", Name: "c"}})
	if len(p.Sections) != 2 || p.Sections[0].ID != "round" || len(p.Sections[0].Rows) != 2 || p.Sections[0].Rows[0].What != "b" {
		t.Errorf("%+v", p.Sections)
	}
	if empty := site.NewRemovedPage(layout.Page{}, nil); len(empty.Sections) != 0 || !strings.Contains(empty.Lede, "Nothing") {
		t.Errorf("%+v", empty)
	}
}

// The first visit offers what is kept, and says beside each field what is wrong.
func TestTheFirstVisitIsAsked(t *testing.T) {
	w := site.NewWelcomePage(layout.Page{}, site.WelcomeInput{Target: "79", Far: "m", Green: "ft"})
	if w.Target.Value != "79" || !w.Far.All[1].Chosen || w.Far.All[0].Chosen || !w.Green.All[0].Chosen || w.Far.Problem != "" {
		t.Errorf("%+v", w)
	}
	w = site.NewWelcomePage(layout.Page{}, site.WelcomeInput{Target: "60", Problems: map[string]string{"target": "Allowed: 68 to 110.", "green": "Choose feet or metres."}})
	if w.Target.Problem == "" || w.Green.Problem == "" || w.Far.Problem != "" {
		t.Errorf("%+v", w)
	}
}
