package entry

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
)

// entering is the input of hole 6 in round 7, which has the holes of numbers. No
// hole is entered.
func entering(numbers ...int) HoleInput {
	in := HoleInput{ID: 7, Course: "Harrow Fen", Hole: holeSix, Version: 2, Target: 79, Units: form.StandardUnits, Order: numbers,
		Reading: ReadingInput{Line: form.ParseLine("", holeSix, form.StandardUnits), Hole: holeSix, Units: form.StandardUnits}}
	for _, n := range numbers {
		in.Round = append(in.Round, RoundHole{Number: n, Par: 4, Length: golf.Yards.Of(380)})
	}
	return in
}

var (
	frontNine = []int{1, 2, 3, 4, 5, 6, 7, 8, 9}
	eighteen  = []int{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18}
)

func TestHolePage(t *testing.T) {
	in := entering(eighteen...)
	in.Stored = "f202 g30 2"
	page := NewHolePage(layout.Page{}, in)
	for what, got := range map[string][2]string{
		"title":   {page.Title, "Hole 6, Harrow Fen"},
		"name":    {page.Name, "Hole 6, Harrow Fen"},
		"heading": {page.Heading, "Hole 6"},
		"facts":   {page.Facts, "par 4, 417 yd, index 3"},
		"foot":    {page.Foot, "To play: the strokes that a golfer who averages your target of 79 would still need from there, on this course."},
		"save":    {page.Save, "/rounds/7/holes/6"},
		"stored":  {page.Stored, "f202 g30 2"},
		"version": {page.Version, "2"},
		"order":   {page.Order, "1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17 18"},
		"state":   {page.State, "No holes are saved yet."},
		"so far":  {page.SoFar, ""},
		"asked":   {page.Asked, ""},
	} {
		if got[0] != got[1] {
			t.Errorf("%s: %q, want %q", what, got[0], got[1])
		}
	}
	menu := []MenuLink{{"/rounds/7", "The statement so far"}, {"/rounds/7/details", "Date, course and target"}, {"/rounds/new", "Enter another round"}, {"/help#line-said", "How to read this"}}
	if diff := cmp.Diff(menu, page.Menu); diff != "" {
		t.Error(diff)
	}
	if n := len(strings.Fields(page.Needed)); n < 4 {
		t.Errorf("%d files needed: %q", n, page.Needed)
	}
}

// A line that raises a question is the one whose questions are answered.
func TestHolePageAsks(t *testing.T) {
	in := entering(eighteen...)
	in.Reading.Line = form.ParseLine("f420 g30 1h", holeSix, form.StandardUnits)
	if page := NewHolePage(layout.Page{}, in); page.Asked != "f420 g30 1h" || page.Line != "f420 g30 1h" || page.Reading.Ask == nil {
		t.Errorf("%q of %q, %+v", page.Asked, page.Line, page.Reading.Ask)
	}
}

// What is saved is summed up; strokes lost only if they are known for all of it.
func TestHolePageSumsUp(t *testing.T) {
	for name, c := range map[string]struct {
		scores       []int
		unknown      int // how many of them have no known loss
		state, soFar string
	}{
		"none":        {nil, 0, "No holes are saved yet.", ""},
		"one":         {[]int{4}, 0, "Saved: hole 1, 4 strokes.", "So far: one hole, 4 strokes, +1.1 against your target of 2.9 for it."},
		"three":       {[]int{6, 5, 3}, 0, "Saved: holes 1 to 3, 14 strokes.", "So far: three holes, 14 strokes, +3.3 against your target of 10.7 for them."},
		"one skipped": {[]int{6, 0, 3}, 0, "Saved: holes 1 and 3, 9 strokes.", "So far: two holes, 9 strokes, +2.2 against your target of 6.8 for them."},
		"one unknown": {[]int{6, 5}, 1, "Saved: holes 1 and 2, 11 strokes.", ""},
	} {
		in := entering(frontNine...)
		for i, score := range c.scores {
			in.Round[i].Score, in.Round[i].Lost, in.Round[i].Known = score, 1.1, i >= c.unknown
		}
		if page := NewHolePage(layout.Page{}, in); page.State != c.state || page.SoFar != c.soFar {
			t.Errorf("%s: %q, %q", name, page.State, page.SoFar)
		}
	}
}

// The strip marks scores, the hole of the page, and holes without a card.
func TestHolePageStrip(t *testing.T) {
	in := entering(5, 6, 7, 8)
	in.Round[0].Score, in.Round[0].Lost, in.Round[0].Known = 4, -0.24, true
	in.Round[2].Score = 7
	in.Round[3].Length = 0
	want := []HoleLink{
		{At: "/rounds/7/holes/5", Number: "5", Par: "par 4", Far: "380 yd", Lost: "−0.2", Mark: components.Mark{Text: "4", Said: "par"}},
		{At: "/rounds/7/holes/6", Number: "6", Par: "par 4", Far: "380 yd", Here: true, Mark: components.Mark{Class: "open-mark", Text: "?", Said: "being entered"}},
		{At: "/rounds/7/holes/7", Number: "7", Par: "par 4", Far: "380 yd", Mark: components.Mark{Class: "double-mark", Text: "7", Said: "double bogey or worse"}},
		{At: "/rounds/7/holes/8", Number: "8", Par: "par 4", Mark: components.Mark{Class: "no-mark", Said: "not entered"}},
	}
	if diff := cmp.Diff(want, NewHolePage(layout.Page{}, in).Holes); diff != "" {
		t.Error(diff)
	}
}

// A phone shows one nine, and leads to the other if there is one.
func TestHolePageTurn(t *testing.T) {
	for name, c := range map[string]struct {
		hole             int
		round            []int
		back             bool
		turn, said, over string
	}{
		"front of 18":     {6, eighteen, false, "/rounds/7/holes/10", "Holes 10 to 18", "in"},
		"back of 18":      {10, eighteen, true, "/rounds/7/holes/1", "Holes 1 to 9", "out"},
		"front nine only": {6, frontNine, false, "", "", "in"},
		"back nine only":  {11, []int{10, 11, 12}, true, "", "", "out"},
		"ten holes":       {6, []int{1, 6, 10}, false, "/rounds/7/holes/10", "Hole 10", "in"},
	} {
		in := entering(c.round...)
		in.Hole.Number = c.hole
		page := NewHolePage(layout.Page{}, in)
		if page.Back != c.back || page.Turn != c.turn || page.TurnSaid != c.said || page.TurnName != c.over {
			t.Errorf("%s: %v, %q, %q, %q", name, page.Back, page.Turn, page.TurnSaid, page.TurnName)
		}
	}
}

// A hole whose length is unknown asks for its card.
func TestHolePageWithoutACard(t *testing.T) {
	in := entering(10, 11)
	in.Hole = golf.CardHole{Number: 11, Par: 4}
	in.Units = form.Units{Far: golf.Metres, Green: golf.Metres}
	page := NewHolePage(layout.Page{}, in)
	var labels []string
	for _, f := range page.Card {
		labels = append(labels, f.Label)
	}
	if diff := cmp.Diff([]string{"Par", "Metres on the card", "Stroke index (optional)"}, labels); diff != "" {
		t.Error(diff)
	}
	if page.Facts != "" {
		t.Errorf("the card is %q", page.Facts)
	}
	var html strings.Builder
	if err := page.View().Render(t.Context(), &html); err != nil || !strings.Contains(html.String(), `name="par"`) {
		t.Errorf("%v: no field for the par", err)
	}
}

func TestCardFacts(t *testing.T) {
	for want, hole := range map[string]golf.CardHole{
		"par 4, 417 yd, index 3": holeSix,
		"par 3, 158 yd":          {Number: 2, Par: 3, Length: golf.Yards.Of(158)},
	} {
		if got := cardFacts(hole, form.StandardUnits); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

func TestHolesSaid(t *testing.T) {
	for want, numbers := range map[string][]int{"hole 3": {3}, "holes 1 and 2": {1, 2}, "holes 1 to 5": {1, 2, 3, 4, 5}, "holes 1, 3 and 5 to 7": {1, 3, 5, 6, 7}} {
		if got := holesSaid(numbers); got != want {
			t.Errorf("%v: %q, want %q", numbers, got, want)
		}
	}
}
