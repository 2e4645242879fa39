package form

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golf/golftest"
)

// tell writes a hole for comparison: lie letter and distance in its unit, + for
// penalties, s for short side.
func tell(h golf.Hole) string {
	if h.ScoreOnly > 0 {
		return fmt.Sprintf("score %d", h.ScoreOnly)
	}
	var words []string
	for _, s := range h.Shots {
		w := fmt.Sprintf("%s %g%s", s.Lie, s.WrittenUnit().In(s.Distance), s.WrittenUnit())
		if s.ShortSided {
			w += " short-sided"
		}
		if s.GreenKnown {
			w += fmt.Sprintf(" %g of green", s.GreenToWork.Yards())
		}
		if s.About {
			w += " about"
		}
		if s.Club != "" {
			w += " with " + s.Club
		}
		if s.Penalty > 0 {
			w += fmt.Sprintf(" + %d", s.Penalty)
		}
		words = append(words, w)
	}
	end := fmt.Sprintf(": %d", h.Strokes())
	if h.PickedUp {
		end += " and picked up"
	}
	return strings.Join(words, ", ") + end
}

func par(n int, yards float64) golf.CardHole {
	return golf.CardHole{Number: 7, Par: n, Length: golf.Yards.Of(yards)}
}

// The examples of the design, and what each reads as.
func TestLinesReadAs(t *testing.T) {
	for _, c := range []struct {
		par        int
		line, want string
	}{
		{4, "r165 g24 3", "tee 392yd, rough 165yd, green 24ft, green 3ft: 4"},
		{4, "x f150 g20 2", "tee 392yd + 1, tee 392yd, fairway 150yd, green 20ft, green 2ft: 6"},
		{4, "f180x g30 2", "tee 392yd, fairway 180yd + 1, fairway 180yd, green 30ft, green 2ft: 6"},
		{4, "f180w r120 g18 1", "tee 392yd, fairway 180yd + 1, rough 120yd, green 18ft, green 1ft: 6"},
		{4, "u2 r142 g30 3", "tee 392yd + 2, rough 142yd, green 30ft, green 3ft: 6"},
		{4, "d f190 r20s4 g6", "tee 392yd + 2, fairway 190yd, rough 20yd short-sided 4 of green, green 6ft: 6"},
		{4, "f95 r12", "tee 392yd, fairway 95yd, rough 12yd: 3"},
		{3, "h", "tee 392yd: 1"},
		{4, "f260/3w r110/pw g40 5", "tee 392yd, fairway 260yd with 3w, rough 110yd with pw, green 40ft, green 5ft: 5"},
		{3, "b20 18 g4", "tee 392yd, bunker 20yd, bunker 18yd, green 4ft: 4"},
		{4, "r150 f8 g3-", "tee 392yd, rough 150yd, fairway 8yd, green 3ft: 3 and picked up"},
		{4, "r150 f8 g3 -", "tee 392yd, rough 150yd, fairway 8yd, green 3ft: 3 and picked up"},
		{4, "t385/d xx f140 g25 =7", "tee 385yd with d + 1, tee 385yd with d + 1, tee 385yd with d, fairway 140yd, green 25ft: 7"},
		{4, "=7", "score 7"},
		{4, "  R165   G24 3  =4 ", "tee 392yd, rough 165yd, green 24ft, green 3ft: 4"},
		{4, "t/Driver r165 g24", "tee 392yd with Driver, rough 165yd, green 24ft: 3"},
		{4, "r150m g8m 3ft", "tee 392yd, rough 150m, green 8m, green 3ft: 4"},
		{4, "r20p g4", "tee 392yd, rough 20yd, green 4ft: 3"},
		{4, "r~165 g2.5", "tee 392yd, rough 165yd about, green 2.5ft: 3"},
		{4, "r165s g24", "tee 392yd, rough 165yd short-sided, green 24ft: 3"},
		{4, "f100+2 f90 g3", "tee 392yd, fairway 100yd + 2, fairway 90yd, green 3ft: 6"},
		{4, "w -", "tee 392yd + 1: 0 and picked up"},
		{4, "r14s b12x g3", "tee 392yd, rough 14yd short-sided, bunker 12yd + 1, bunker 12yd, green 3ft: 6"},
	} {
		l := ParseLine(c.line, par(c.par, 392), StandardUnits)
		if got := tell(l.Hole); got != c.want {
			t.Errorf("%q reads as\n%s, want\n%s", c.line, got, c.want)
		}
	}
}

func TestLinesThatAreNotUnderstood(t *testing.T) {
	for _, c := range []struct {
		line string
		item int
		what string
	}{
		{"165 g24", 0, "no lie"},
		{"r g24", 0, "a lie without a distance"},
		{"r165 q24", 1, "not understood: q24"},
		{"r165 g24 3 =5", 3, "the shots come to 4"},
		{"r165 g24 =x", 2, "no score"},
		{"=0", 0, "no score"},
		{"=+1", 0, "no score"},
		{"r165 g24 =-1", 2, "no score"},
		{"r165w", -1, "the ball was dropped, but not played on"},
		{"t385", -1, "the hole has no shot after the tee"},
		{"r165 h g3", 2, "the hole was over"},
		{"r165 =3 g3", 2, "the score was the end"},
		{"r900 g3", 0, "900 yd cannot be the distance of a shot"},
		{"r165 g301", 1, "301 ft cannot be the distance of a shot"},
		{"r165+0 g3", 0, "no penalty strokes"},
		{"r165 g24s 3", 1, "a putt has no short side"},
		{"r20s20 g3", 0, "20 yd of green do not fit"},
		{"r165xh", -1, "a shot"},
		{"r1650000000000000000000000000000000000 g3", 0, "such a number cannot be"},
	} {
		l := ParseLine(c.line, par(4, 392), StandardUnits)
		if len(l.Problems) == 0 {
			if c.what == "a shot" {
				continue // out of bounds, and the next one holed: it may be so
			}
			t.Errorf("%q reads as %s", c.line, tell(l.Hole))
			continue
		}
		if p := l.Problems[0]; p.Item != c.item || !strings.HasPrefix(p.What, c.what) || p.Allowed == "" {
			t.Errorf("%q: %+v", c.line, p)
		}
	}
	if l := ParseLine("  ", par(4, 392), StandardUnits); !l.Empty() || l.Sound() || len(l.Problems) > 0 {
		t.Errorf("nothing typed: %+v", l)
	}
}

func TestMetrePlayers(t *testing.T) {
	units := Units{golf.Metres, golf.Metres}
	l := ParseLine("r150 g7 1", par(4, 392), units)
	if got := tell(l.Hole); got != "tee 392yd, rough 150m, green 7m, green 1m: 4" {
		t.Error(got)
	}
}

func TestItemsPointAtTheirShots(t *testing.T) {
	l := ParseLine("x  f150 g20 2", par(4, 392), StandardUnits)
	want := []Item{{"x", 0, 1, 1}, {"f150", 3, 2, 1}, {"g20", 8, 3, 1}, {"2", 12, 4, 1}}
	if diff := cmp.Diff(want, l.Items); diff != "" {
		t.Error(diff)
	}
}

// Whatever is typed, reading it ends, its items point at what was typed, and a
// sound line is a legal hole that comes back from the line written anew.
func TestAnythingTyped(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		readable(t, typing().Draw(t, "line"), rapid.SampledFrom(allUnits).Draw(t, "units"))
	})
}

var allUnits = []Units{StandardUnits, {golf.Metres, golf.Metres}, {golf.Yards, golf.Metres}, {golf.Metres, golf.Feet}}

func readable(t interface{ Fatalf(string, ...any) }, text string, units Units) {
	card := par(4, 392)
	l := ParseLine(text, card, units)
	pointsRight(t, l)
	if !l.Sound() {
		return
	}
	if problems := l.Hole.Check(); problems != nil {
		t.Fatalf("%q: %v", text, problems)
	}
	written := WriteLine(l.Hole, card, units)
	again := ParseLine(written, card, units)
	if diff := cmp.Diff(l.Hole, again.Hole); diff != "" || !again.Sound() {
		t.Fatalf("%q written as %q: %v\n%s", text, written, again.Problems, diff)
	}
	for _, reader := range allUnits {
		shown := Shown(text, card, units, reader)
		if read := ParseLine(shown, card, reader); !read.Sound() || cmp.Diff(l.Hole, read.Hole) != "" {
			t.Fatalf("%q in %v is shown in %v as %q: %v\n%s", text, units, reader, shown, read.Problems, cmp.Diff(l.Hole, read.Hole))
		}
	}
}

func FuzzLine(f *testing.F) {
	for _, line := range []string{"r165 g24 3", "t385/d xx f140 g25 =7", "f 140,g30,3", "140mf~ + 2 u2 g2,5 h = 5", "r20s 4/a,b g30,3,2 -", "x//7i", "b0.0000000001 r20.123456789012m g3"} {
		f.Add(line)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, units := range allUnits {
			readable(t, text, units)
		}
	})
}

// Every legal hole can be written as a line, wherever it came from. A club with
// a space is written with hyphens.
func TestEveryHoleHasALine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		units := rapid.SampledFrom(allUnits).Draw(t, "units")
		for _, h := range golftest.Rounds().Draw(t, "round").Holes {
			card := golf.CardHole{Number: h.Number, Par: h.Par, Length: h.Length()}
			line := WriteLine(h, card, units)
			l := ParseLine(line, card, units)
			if !l.Sound() {
				t.Fatalf("%s\nis written as %q: %v", tell(h), line, l.Problems)
			}
			if diff := cmp.Diff(sayable(h), l.Hole); diff != "" {
				t.Fatalf("%q: %s", line, diff)
			}
		}
	})
}

// sayable is a hole without what a line cannot say.
func sayable(h golf.Hole) golf.Hole {
	said := h
	said.Shots = nil
	for _, s := range h.Shots {
		s.Club, s.Miss = writtenClub(s.Club), golf.Miss{}
		s.ShortSided = s.ShortSided || s.GreenKnown // the line has one letter for both, and the green decides
		said.Shots = append(said.Shots, s)
	}
	return said
}
