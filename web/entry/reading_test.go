package entry

import (
	"strings"
	"testing"

	"strokeledger/analysis/account"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/web/form"
)

var holeSix = golf.CardHole{Number: 6, Par: 4, Length: golf.Yards.Of(417), Index: 3}

// readingOf reads a line of hole 6 as its page does; all asks every question.
func readingOf(t *testing.T, line string, all bool) Reading {
	t.Helper()
	in := ReadingInput{Line: form.ParseLine(line, holeSix, form.StandardUnits), Hole: holeSix, Units: form.StandardUnits, AskAll: all}
	h := in.Line.Hole
	if len(h.Shots) == 0 {
		h = golf.Hole{Number: 6, Par: 4, Shots: []golf.Shot{{Lie: golf.Tee, Distance: holeSix.Length}}}
	}
	level, err := expect.Level(79)
	if err != nil {
		t.Fatal(err)
	}
	if in.Line.Empty() || in.Line.Sound() || in.Line.Unfinished {
		in.Account = account.Of(golf.Round{Holes: []golf.Hole{h}}, account.Terms{Lens: level, Fixed: level, Boundary: golf.StandardBoundary})
	}
	return NewReading(in)
}

// Each line that a player may have typed so far says where the hole stands.
func TestReading(t *testing.T) {
	for _, c := range []struct {
		line         string
		say, note    string
		rows         int
		ready, holed bool
		last         string // what the last row is played from
	}{
		{"", "Tee, 417 yd: to play", "no shots yet", 1, false, false, "Tee 417 yd"},
		{"f202 b", "Bunker: how far is it?", "so far", 3, false, false, "Bunker"},
		{"f202 b25 g30", "Green, 30 ft: to play", "so far", 4, false, true, "Green 30 ft"},
		{"f202 b25 g30 1h", "Holed in 5, one over par", "", 5, true, false, "Green 1 ft"},
		{"f202 b25 g30 1", "Green, 1 ft: to play", "so far", 5, false, true, "Green 1 ft"},
		{"x", "Tee, 417 yd: play again from there", "so far", 2, false, false, "Tee 417 yd"},
		{"f180w", "Dropped: what is the new lie?", "so far", 2, false, false, "Fairway 180 yd"},
		{"f180 g9 2 1-", "Picked up after 4 strokes; counts as 5", "", 5, true, false, "Green 1 ft"},
		{"=7", "Score only: 7", "", 0, true, false, ""},
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

// The strokes lost are summed while the hole is open and once it has ended.
func TestReadingSums(t *testing.T) {
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

// A question about a shot is asked once the hole has ended, a question about its
// end when it is saved.
func TestReadingAsks(t *testing.T) {
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

// Two versions of a hole are shown with their differences marked.
func TestReadingConflict(t *testing.T) {
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

// A line that cannot be read says which word is wrong and what is allowed.
func TestReadingProblem(t *testing.T) {
	for line, want := range map[string]string{"r165 q": "“q”: ", "f202 b25 g30 3 1h =9": "“=9”: "} {
		r := readingOf(t, line, false)
		if !strings.HasPrefix(r.Problem, want) || !strings.Contains(r.Problem, ". Allowed: ") || !strings.HasSuffix(r.Problem, ".") {
			t.Errorf("%s: %q", line, r.Problem)
		}
		if r.Say != "Not understood yet" || r.Ready || r.Ask != nil || r.Sum != "" {
			t.Errorf("%s: %+v", line, r)
		}
	}
}

func TestAgainstPar(t *testing.T) {
	for over, want := range map[int]string{-2: "two under par", -1: "one under par", 0: "par", 1: "one over par", 5: "five over par"} {
		if got := against(over); got != want {
			t.Errorf("%d: %q, want %q", over, got, want)
		}
	}
}
