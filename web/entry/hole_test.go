package entry

import (
	"bytes"
	"context"
	"strings"
	"testing"

	"strokeledger/analysis/account"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/web/form"
	"strokeledger/web/layout"
)

var holeSix = golf.CardHole{Number: 6, Par: 4, Length: golf.Yards.Of(417), Index: 3}

// readingOf reads a line of hole 6 as the page does.
func readingOf(t *testing.T, line string, all bool) Reading {
	t.Helper()
	q := ReadingInput{Line: form.ParseLine(line, holeSix, form.StandardUnits), Hole: holeSix, Units: form.StandardUnits, AskAll: all}
	h := q.Line.Hole
	if len(h.Shots) == 0 {
		h = golf.Hole{Number: 6, Par: 4, Shots: []golf.Shot{{Lie: golf.Tee, Distance: holeSix.Length}}}
	}
	level, err := expect.Level(79)
	if err != nil {
		t.Fatal(err)
	}
	if q.Line.Empty() || q.Line.Sound() || q.Line.Unfinished {
		q.Account = account.Of(golf.Round{Holes: []golf.Hole{h}}, account.Terms{Lens: level, Fixed: level, Boundary: golf.StandardBoundary})
	}
	return NewReading(q)
}

// How a hole stands is said at every moment of its typing.
func TestReadingsOfALine(t *testing.T) {
	for _, c := range []struct {
		line         string
		say, note    string
		rows         int
		ready, holed bool
		last         string // what the last row is played from
	}{
		{"", "Tee, 417 yd: to play", "no shot yet", 1, false, false, "Tee 417 yd"},
		{"f202 b", "Bunker: how far is it?", "so far", 3, false, false, "Bunker"},
		{"f202 b25 g30", "Green, 30 ft: to play", "so far", 4, false, true, "Green 30 ft"},
		{"f202 b25 g30 1h", "Holed in 5, one over par", "", 5, true, false, "Green 1 ft"},
		{"f202 b25 g30 1", "Green, 1 ft: to play", "so far", 5, false, true, "Green 1 ft"},
		{"x", "Tee, 417 yd: play again from there", "so far", 2, false, false, "Tee 417 yd"},
		{"f180w", "Dropped: where does the next one lie?", "so far", 2, false, false, "Fairway 180 yd"},
		{"f180 g9 2 1-", "Picked up after 4 strokes", "", 5, true, false, "Green 1 ft"},
		{"=7", "A score of 7 alone", "", 0, true, false, ""},
		{"r165 q", "Not understood yet", "", 2, false, false, "Rough 165 yd"},
	} {
		r := readingOf(t, c.line, false)
		last := ""
		if len(r.Rows) > 0 {
			last = r.Rows[len(r.Rows)-1].From
		}
		if r.Say != c.say || r.SumNote != c.note || len(r.Rows) != c.rows || r.Ready != c.ready || r.Holed != c.holed || last != c.last {
			t.Errorf("%q: %q %q, %d rows, ready %v, holed %v, last %q", c.line, r.Say, r.SumNote, len(r.Rows), r.Ready, r.Holed, last)
		}
		if (r.Problem != "") != (c.say == "Not understood yet") {
			t.Errorf("%q: the problem is %q", c.line, r.Problem)
		}
	}
}

// What the shots lost so far adds up to the hole's when it has ended.
func TestTheSumOfAReading(t *testing.T) {
	open, done := readingOf(t, "f202 b25 g30 1", false), readingOf(t, "f202 b25 g30 1h", false)
	if open.Sum == "" || done.Sum == "" || done.Score != "5" || open.Score != "" {
		t.Errorf("%q of %q, %q of %q", open.Sum, open.Score, done.Sum, done.Score)
	}
	for i, r := range open.Rows {
		if last := i == len(open.Rows)-1; r.ToPlay != last || (r.Lost == "") != last {
			t.Errorf("row %d: %+v", i+1, r)
		}
	}
	if r := readingOf(t, "x f202", false); r.Rows[0].Penalty != "out, 1 penalty" || r.Rows[1].Typed != "x" || r.Rows[1].Start != "0" || r.Rows[1].End != "1" {
		t.Errorf("%+v", r.Rows[:2])
	}
	if r := readingOf(t, "f202/Pö7 g30", false); r.Rows[2].Start != "9" || r.Rows[2].End != "12" {
		t.Errorf("a browser counts letters, not bytes: %+v", r.Rows[2])
	}
}

// A question about a shot is asked once the hole has ended, one about the end
// when it is saved.
func TestReadingsAsk(t *testing.T) {
	if r := readingOf(t, "f420", false); r.Ask != nil {
		t.Errorf("asked while it is typed: %+v", r.Ask)
	}
	r := readingOf(t, "f420 g30 1h", false)
	if r.Ask == nil || len(r.Ask.Questions) != 1 || !strings.Contains(r.Ask.Questions[0], "longer than the hole") || r.Ask.Change != "Change f420" || r.Ask.Start != "0" || r.Ask.End != "4" {
		t.Fatalf("%+v", r.Ask)
	}
	if r := readingOf(t, "f150 r12", false); r.Ask != nil {
		t.Errorf("%+v", r.Ask)
	}
	if r := readingOf(t, "f150 r12", true); r.Ask == nil || !strings.Contains(r.Ask.Questions[0], "hole it") {
		t.Errorf("saved without a question: %+v", r.Ask)
	}
}

// Both versions of a hole, with what differs marked.
func TestReadingsInConflict(t *testing.T) {
	other := form.ParseLine("f202 b25 g30 1h", holeSix, form.StandardUnits)
	r := NewReading(ReadingInput{Line: form.ParseLine("f202 b25 g30 3 1h", holeSix, form.StandardUnits), Hole: holeSix, Units: form.StandardUnits, Conflict: &other})
	if r.Conflict == nil || len(r.Rows) != 0 || r.Ready || r.Conflict.MineScore != "6" || r.Conflict.TheirsScore != "5" {
		t.Fatalf("%+v", r)
	}
	marked := ""
	for _, w := range r.Conflict.Mine {
		if w.Mark {
			marked += w.Word
		}
	}
	if marked != "3" {
		t.Errorf("marked %q", marked)
	}
	for _, w := range r.Conflict.Theirs {
		if w.Mark {
			t.Errorf("the other is marked at %q", w.Word)
		}
	}
}

func entering(numbers ...int) HoleInput {
	q := HoleInput{ID: 7, Course: "Harrow Fen", Hole: holeSix, Version: 2, Target: 79, Units: form.StandardUnits, Order: numbers,
		Reading: ReadingInput{Line: form.ParseLine("", holeSix, form.StandardUnits), Hole: holeSix, Units: form.StandardUnits}}
	for _, n := range numbers {
		q.Round = append(q.Round, RoundHole{Number: n, Par: 4, Length: golf.Yards.Of(380)})
	}
	return q
}

// The strip of holes, what is saved, and the way to the other nine.
func TestThePageOfAHole(t *testing.T) {
	eighteen := []int{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18}
	e := NewHolePage(layout.Page{}, entering(eighteen...))
	if e.State != "No hole is saved yet." || e.SoFar != "" || e.Facts != "par 4, 417 yd, index 3" || e.Name != "Hole 6, Harrow Fen" || e.Back || e.TurnSaid != "Holes 10 to 18" || e.TurnName != "in" {
		t.Errorf("%+v", e)
	}
	if len(strings.Fields(e.Needed)) < 4 || len(strings.Fields(e.Order)) != 18 || e.Version != "2" || len(e.Holes) != 18 || e.Holes[5].Mark.Class != "open-mark" || e.Holes[6].Mark.Class != "no-mark" {
		t.Errorf("%q %q %+v", e.Needed, e.Order, e.Holes[5])
	}
	q := entering(1, 2, 3, 4, 5, 6, 7, 8, 9)
	for i, score := range []int{6, 5, 3} {
		q.Round[i].Score, q.Round[i].Lost, q.Round[i].Known = score, 1.1, true
	}
	e = NewHolePage(layout.Page{}, q)
	if e.State != "Saved: holes 1 to 3, 14 strokes." || e.SoFar != "So far: three holes, 14 strokes, +3.3 against your 79." || e.Turn != "" || e.Holes[0].Lost != "+1.1" {
		t.Errorf("%q %q %q", e.State, e.SoFar, e.Turn)
	}
	q = entering(10, 11)
	q.Hole = golf.CardHole{Number: 11, Par: 4}
	q.Card = CardForm{Par: "7", Problems: map[string]string{"par": "Allowed: 3 to 6."}}
	e = NewHolePage(layout.Page{}, q)
	if len(e.Untold) != 3 || e.Untold[0].Problem == "" || e.Facts != "" || !e.Back || e.TurnName != "out" {
		t.Errorf("%+v", e.Untold)
	}
	var b bytes.Buffer
	if err := e.View().Render(context.Background(), &b); err != nil || !strings.Contains(b.String(), `name="par"`) {
		t.Errorf("%v", err)
	}
}

func TestHolesSaid(t *testing.T) {
	for want, numbers := range map[string][]int{"hole 3": {3}, "holes 1 and 2": {1, 2}, "holes 1 to 5": {1, 2, 3, 4, 5}, "holes 1, 3 and 5 to 7": {1, 3, 5, 6, 7}} {
		if got := holesSaid(numbers); got != want {
			t.Errorf("%v: %q", numbers, got)
		}
	}
}
