package site

import (
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
	"strokeledger/web/layout"
	"strokeledger/web/words"
)

var may2 = golf.Date{Year: 2026, Month: 5, Day: 2}

// The page after a removal names what was removed, quotes a long text in brief,
// and restores it by its name.
func TestUndo(t *testing.T) {
	long := strings.Repeat("é", 80)
	for _, c := range []struct {
		removed RemovedThing
		want    string
	}{
		{RemovedThing{Kind: "round", Day: may2, Text: "Harrow Fen"}, "Removed: round of 2 May 2026, Harrow Fen."},
		{RemovedThing{Kind: "advice", Text: "hole 6, Harrow Fen, white", Of: "Robin"}, "Removed: what you said of hole 6, Harrow Fen, white, for Robin."},
		{RemovedThing{Kind: "course", Text: "Harrow Fen, white"}, "Removed: course Harrow Fen, white."},
		{RemovedThing{Kind: "note", Day: may2, Text: "Hold the finish."}, "Removed: note of 2 May 2026, “Hold the finish.”."},
		{RemovedThing{Kind: "note", Day: may2, Text: long, Of: "Robin"}, "Removed: note of 2 May 2026, “" + strings.Repeat("é", words.ExcerptMost) + "…”, for Robin."},
		{RemovedThing{Kind: "assignment", Day: may2, Text: "Start line"}, "Removed: practice “Start line”."},
		{RemovedThing{Kind: "result", Day: may2, Text: "14 of 20", Of: "Robin"}, "Removed: result of 2 May 2026, “14 of 20”, for Robin."},
	} {
		c.removed.Name = "thing.1"
		u := NewUndo(c.removed)
		if u == nil {
			t.Errorf("no undo for %+v", c.removed)
		} else if u.Text != c.want || u.What != "thing.1" {
			t.Errorf("%+v, want %s", *u, c.want)
		}
	}
	if u := NewUndo(RemovedThing{Kind: "hole"}); u != nil {
		t.Errorf("an undo for nothing that can be removed: %+v", *u)
	}
}

func TestRemovedPage(t *testing.T) {
	at := time.Date(2026, 5, 4, 18, 5, 0, 0, time.UTC)
	page := NewRemovedPage(layout.Page{}, []RemovedThing{
		{Name: "result.3", Kind: "result", Day: may2, Text: "14 of 20", Removed: at},
		{Name: "round.1", Kind: "round", Day: may2, Text: "Harrow Fen", Removed: at},
		{Name: "round.2", Kind: "round", Day: may2, Text: "Quarry Hill", Removed: at.Add(-time.Hour)},
	})
	want := []RemovedSection{
		{ID: "round", Heading: "Rounds", Rows: []RemovedRow{
			{"Round of 2 May 2026, Harrow Fen", "4 May 2026, 18:05 UTC", "round.1"},
			{"Round of 2 May 2026, Quarry Hill", "4 May 2026, 17:05 UTC", "round.2"}}},
		{ID: "result", Heading: "Results of practice", Rows: []RemovedRow{{"Result of 2 May 2026, “14 of 20”", "4 May 2026, 18:05 UTC", "result.3"}}},
	}
	if diff := cmp.Diff(want, page.Sections); diff != "" {
		t.Error(diff)
	}
	if page.Lede != "You can restore each of these for 30 days after it was removed." {
		t.Error(page.Lede)
	}
}

func TestRemovedPageWithNothing(t *testing.T) {
	page := NewRemovedPage(layout.Page{}, nil)
	if page.Lede != "Nothing has been removed in the last 30 days." || len(page.Sections) != 0 {
		t.Errorf("%+v", page)
	}
}
