package entry

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
)

// shotsOf is the input of hole 4 of round 7, a par 3 that took three.
func shotsOf(shots ...golf.Shot) ShotsInput {
	h := golf.Hole{Number: 4, Par: 3, Shots: shots}
	return ShotsInput{Round: 7, Hole: h, Version: 2, Units: form.StandardUnits, Clubs: []string{"d", "7i"}, Details: form.ShotDetailsOf(h.Played())}
}

var (
	teeShot = golf.Shot{Lie: golf.Tee, Distance: golf.Yards.Of(158), Club: "7i", Miss: golf.Miss{Side: golf.Left, Depth: golf.Short}, Word: "wind"}
	putt    = golf.Shot{Lie: golf.Green, Distance: golf.Feet.Of(24)}
)

func TestShotsPage(t *testing.T) {
	page := NewShotsPage(layout.Page{}, shotsOf(teeShot, putt))
	if page.Title != "Clubs and notes for hole 4" || page.Heading != "Hole 4: clubs and notes" || page.None != "" {
		t.Errorf("%q, %q, %q", page.Title, page.Heading, page.None)
	}
	if page.Save != "/rounds/7/holes/4/shots" || page.Back != "/rounds/7#h4" || page.Version != "2" {
		t.Errorf("%q, %q, version %q", page.Save, page.Back, page.Version)
	}
	if len(page.Rows) != 2 {
		t.Fatalf("%+v", page.Rows)
	}
	first, last := page.Rows[0], page.Rows[1]
	if first.Number != "1" || first.Lie != "tee" || first.From != "Tee 158 yd" || last.Number != "2" || last.From != "Green 24 ft" {
		t.Errorf("%+v, %+v", first, last)
	}
	want := components.Field{Name: "club", ID: "club-1", Label: "Club", Value: "7i", List: "clubs"}
	if diff := cmp.Diff(want, first.Club); diff != "" {
		t.Error(diff)
	}
	want = components.Field{Name: "word", ID: "word-2", Label: "Note"}
	if diff := cmp.Diff(want, last.Word); diff != "" {
		t.Error(diff)
	}
	if first.Word.Value != "wind" || len(page.Wrong.Links) != 0 {
		t.Errorf("%+v, %+v", first.Word, page.Wrong)
	}
}

// Where a shot finished is chosen from nine, the saved one chosen.
func TestShotsPageMisses(t *testing.T) {
	page := NewShotsPage(layout.Page{}, shotsOf(teeShot, putt))
	chosen := func(row NoteRow) (names []string) {
		for _, m := range row.Misses {
			if m.Chosen {
				names = append(names, m.Name)
			}
		}
		return names
	}
	if diff := cmp.Diff([]string{golf.Miss{Side: golf.Left, Depth: golf.Short}.String()}, chosen(page.Rows[0])); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]string{"on target, or not recorded"}, chosen(page.Rows[1])); diff != "" {
		t.Error(diff)
	}
	if len(page.Rows[0].Misses) != 9 {
		t.Errorf("%d misses", len(page.Rows[0].Misses))
	}
}

// A problem stands in its field and leads there from the top.
func TestShotsPageProblems(t *testing.T) {
	in := shotsOf(teeShot, putt)
	in.Details.Shots[1].Word = form.Text{Text: "long", Problem: "Allowed: up to 200 characters."}
	in.Details.Shots[0].Club = form.Text{Text: "7 iron", Problem: "Allowed: no spaces."}
	page := NewShotsPage(layout.Page{}, in)
	want := components.Summary{Heading: "Not saved yet: 2 things to fix.", Links: []components.SummaryLink{
		{At: "#club-1", Text: "Club of shot 1: Allowed: no spaces."},
		{At: "#word-2", Text: "Note of shot 2: Allowed: up to 200 characters."}}}
	if diff := cmp.Diff(want, page.Wrong); diff != "" {
		t.Error(diff)
	}
	if page.Rows[0].Club.Problem != "Allowed: no spaces." || page.Rows[0].Club.Value != "7 iron" || page.Rows[1].Club.Problem != "" {
		t.Errorf("%+v, %+v", page.Rows[0].Club, page.Rows[1].Club)
	}
}

// A form for other shots says so at the first of those of now.
func TestShotsPageOfOtherShots(t *testing.T) {
	in := shotsOf(teeShot, putt)
	in.Details.Stale = true
	page := NewShotsPage(layout.Page{}, in)
	if page.Rows[0].Club.Problem != staleShots || page.Rows[0].Club.Value != "7i" || page.Rows[1].Club.Problem != "" || len(page.Wrong.Links) != 1 || page.Wrong.Links[0].At != "#club-1" {
		t.Errorf("%+v, %+v", page.Rows, page.Wrong)
	}
}

func TestShotsPageWithoutShots(t *testing.T) {
	in := shotsOf()
	in.Hole.ScoreOnly = 5
	page := NewShotsPage(layout.Page{}, in)
	if page.None != "This hole was entered as a score only, so it has no shots." || len(page.Rows) != 0 {
		t.Errorf("%q, %+v", page.None, page.Rows)
	}
	in = shotsOf(teeShot, putt)
	in.Hole.PickedUp = true
	in.Details = form.ShotDetailsOf(in.Hole.Played())
	if page := NewShotsPage(layout.Page{}, in); len(page.Rows) != 1 {
		t.Errorf("a ball that was picked up has a shot: %+v", page.Rows)
	}
}
