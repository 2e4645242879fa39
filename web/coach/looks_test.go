package coach

import (
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
	"strokeledger/web/layout"
	"strokeledger/web/notes"
)

func TestLooks(t *testing.T) {
	last := time.Date(2026, 5, 3, 14, 30, 0, 0, time.UTC)
	played := golf.Date{Year: 2026, Month: time.May, Day: 2}
	l := NewLooksPage(layout.Page{}, []Look{
		{Name: "Ines", Kind: "lessons", Times: 1, Last: last},
		{Name: "Ines", Kind: "statement", Times: 2, Last: last, Rounds: []LookedRound{{ID: 7, Day: played, Course: "Harrow Fen", Times: 2}}},
		{Name: "Tam", Kind: "statement", Times: 5, Last: last, Rounds: []LookedRound{{ID: 7, Day: played, Times: 2}, {ID: 8, Day: played, Course: "Harrow Fen", Times: 2, Removed: true}, {ID: 9, Times: 1}}},
	}, 1, true)
	const when = "3 May 2026, 14:30 UTC"
	want := []LookRow{
		{Who: "Ines", What: "Lessons and practice", When: when, Times: "1 time"},
		{Who: "Ines", What: "Statement of 2 May 2026, Harrow Fen", At: "/rounds/7", When: when, Times: "2 times"},
		{Who: "Tam", What: "3 statements", When: when, Times: "5 times", Statements: []LookedAt{{"2 May 2026", "/rounds/7", "2 times"}, {"2 May 2026, Harrow Fen (removed)", "", "2 times"}, {"a round since removed", "", "1 time"}}},
	}
	if diff := cmp.Diff(want, l.Rows); diff != "" {
		t.Error(diff)
	}
	if l.Lede != "Ines looked last, on Sunday 3 May 2026, 14:30 UTC." || l.Later != "" || l.Earlier != "/coaching/looks?page=2" {
		t.Errorf("%q %q %q", l.Lede, l.Later, l.Earlier)
	}
	if second := NewLooksPage(layout.Page{}, nil, 2, false); second.Later != "/coaching/looks" || second.Earlier != "" || second.Lede != "Page 2 of what your coaches opened." {
		t.Errorf("%+v", second)
	}
	if none := NewLooksPage(layout.Page{}, nil, 1, false); none.Lede != "No coach has opened any of your pages." || none.Later+none.Earlier != "" {
		t.Errorf("%+v", none)
	}
}

// Every kind of page that is stored has words.
func TestLookNames(t *testing.T) {
	for kind, want := range map[string]string{"months": "Months side by side", "months_file": "Months, downloaded", "behind": "Shots behind a figure", "handicap": "The handicap estimate (unofficial)",
		"rounds": "The list of rounds", "report": "A report", "roster": "The roster of pupils", "squad": "The pupils side by side"} {
		if got := newLookRow(Look{Kind: kind}).What; got != want {
			t.Errorf("%s is %q, want %q", kind, got, want)
		}
	}
}

func TestFormerNotes(t *testing.T) {
	note := NewFormerNote("7", "3", "Bea", time.Date(2026, 5, 3, 0, 0, 0, 0, time.UTC), "One.\n\nTwo.")
	if diff := cmp.Diff(FormerNote{Player: "7", ID: "3", Pupil: "Bea", When: "3 May 2026", Body: notes.Paragraphs("One.\n\nTwo.")}, note); diff != "" {
		t.Error(diff)
	}
	for want, all := range map[string][]FormerNote{
		"None. When your access to a pupil ends, your private notes on that pupil are kept here.": nil,
		"One private note on a pupil whose pages you can no longer see. Only you can read it.":    {note},
		"Two private notes on pupils whose pages you can no longer see. Only you can read them.":  {note, note},
	} {
		if p := NewFormerNotesPage(layout.Page{}, all); p.Lede != want || p.Title != "Private notes on former pupils" || len(p.Notes) != len(all) {
			t.Errorf("%q, want %q", p.Lede, want)
		}
	}
}
