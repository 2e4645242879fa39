package form

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"strokeledger/analysis/golf"
)

// Every spelling on the left is the hole that the plain one on the right is.
func TestNaturalSpellings(t *testing.T) {
	for _, c := range []struct{ typed, plain string }{
		{"f 140 g 30", "f140 g30"},
		{"f140,g30,3", "f140 g30 3"},
		{"f140, g30, 3", "f140 g30 3"},
		{" ,f 140 ,, g,30, ", "f140 g30"},
		{"f140, g2,5", "f140 g2.5"},
		{"f140 g2,5", "f140 g2.5"},
		{"f140,5 g2", "f140.5 g2"},
		{"f140,g2,5", "f140 g2 5"},
		{"f140 g30,3,2", "f140 g30 3 2"},
		{"f140 g12.5,3", "f140 g12.5 3"},
		{"140f 30g 3", "f140 g30 3"},
		{"140F 30FTG", "f140 g30"},
		{"140mf 8mg", "f140m g8m"},
		{"F 140 M, G 8 M", "f140m g8m"},
		{"f140 ~30g ~3", "f140 g~30 ~3"},
		{"f140~ g30", "f~140 g30"},
		{"~f140 g30", "f~140 g30"},
		{"f ~140 g ~ 30", "f~140 g~30"},
		{"f140m~ g30ft~", "f~140m g~30"},
		{"140~f g30", "f~140 g30"},
		{"t ~f140 30g", "t f~140 g30"},
		{"t 140f 30g", "t f140 g30"},
		{"t 385 f140 g3", "t385 f140 g3"},
		{"385t/D f140 g3", "t385/D f140 g3"},
		{"140fw 120r g3", "f140w r120 g3"},
		{"20rs4 g3", "r20s4 g3"},
		{"f140 + 2 f90 = 5", "f140+2 f90 =5"},
		{"= 7", "=7"},
		{"f180X G30 H", "f180x g30 h"},
		{"f140/7i, g30", "f140/7i, g30"},
	} {
		typed, plain := ParseLine(c.typed, par(4, 392), StandardUnits), ParseLine(c.plain, par(4, 392), StandardUnits)
		if !typed.Sound() || !plain.Sound() {
			t.Errorf("%q: %v; %q: %v", c.typed, typed.Problems, c.plain, plain.Problems)
		}
		if diff := cmp.Diff(plain.Hole, typed.Hole); diff != "" {
			t.Errorf("%q reads as %s, want as %q\n%s", c.typed, tell(typed.Hole), c.plain, diff)
		}
	}
	for _, line := range []string{"140 f 30 g", "~140 g3", "f140g30", "f140f g3", "f140 g 30 g", "f140 30 f", ", ,", "f140 ~ g3"} {
		if l := ParseLine(line, par(4, 392), StandardUnits); l.Sound() {
			t.Errorf("%q reads as %s", line, tell(l.Hole))
		}
	}
}

func TestItemsPointAtWhatWasTyped(t *testing.T) {
	l := ParseLine("f 140 m,g30,3 x", par(4, 392), StandardUnits)
	want := []Item{{"f 140 m", 0, 1, 1}, {"g30", 8, 2, 1}, {"3", 12, 3, 1}, {"x", 14, 4, 1}}
	if diff := cmp.Diff(want, l.Items); diff != "" {
		t.Error(diff)
	}
}

// pieces are what the lines of the property tests are made of.
var pieces = []string{"r165", "g24", "3", "x", "w", "u2", "d", "+2", "f180w", "b20s", "v90", "t385", "t", "-", "h", "=5", "r20s4", "f~80", "g3-", "r150m",
	"/7i", "f90/pw", "xx", "q", "", "g", "f", "140", "140f", "30g", "~", "m", "g2,5", "=", "+", "F90~", "/a,b", "é", "s", "u"}

// typing draws a line, sensible or not.
func typing() *rapid.Generator[string] {
	return rapid.Custom(func(t *rapid.T) string {
		var b strings.Builder
		for range rapid.IntRange(0, 8).Draw(t, "pieces") {
			b.WriteString(rapid.SampledFrom(pieces).Draw(t, "piece"))
			b.WriteString(rapid.SampledFrom([]string{" ", " ", " ", " ", ",", ", ", "  ", ""}).Draw(t, "between"))
		}
		return b.String()
	})
}

// pointsRight fails when the items of a line are not the pieces of the text they
// say they are, in order, or do not share out the shots.
func pointsRight(t interface{ Fatalf(string, ...any) }, l Line) {
	at, shot := 0, 1
	for i, item := range l.Items {
		if item.From < at || item.Text == "" || !strings.HasPrefix(l.Text[item.From:], item.Text) {
			t.Fatalf("%q: item %d is %+v", l.Text, i, item)
		}
		if first := item.First; first != shot && !(i == 0 && first == 0) {
			t.Fatalf("%q: item %d begins with shot %d, not %d", l.Text, i, first, shot)
		}
		at, shot = item.From+len(item.Text), item.First+item.Shots
	}
	for _, q := range l.Questions {
		if !l.Sound() || q.Item < 0 || q.Item >= len(l.Items) || !strings.HasSuffix(q.Text, "?") && !strings.HasSuffix(q.Text, ".") {
			t.Fatalf("%q: %+v", l.Text, q)
		}
	}
	if l.Unfinished && len(l.Problems) != 1 {
		t.Fatalf("%q is unfinished: %v", l.Text, l.Problems)
	}
	if shot, open := l.ToPlay(); open && (l.Ended || shot.Lie < golf.Tee) {
		t.Fatalf("%q: %+v is to play", l.Text, shot)
	}
}
