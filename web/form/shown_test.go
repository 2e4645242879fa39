package form

import (
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golf/golftest"
)

func TestLinesInTheReadersUnits(t *testing.T) {
	metres := Units{golf.Metres, golf.Metres}
	for _, c := range []struct {
		stored, reader Units
		line, want     string
	}{
		{StandardUnits, StandardUnits, " R165  g24,3", " R165  g24,3"},
		{StandardUnits, metres, "r165 g24 3 =4", "r165yd g24ft 3ft =4"},
		{metres, StandardUnits, "r165yd g24ft 3ft =4", "r165 g24 3 =4"},
		{metres, StandardUnits, "r150 g8m 2", "r150m g8m 2m"},
		{StandardUnits, metres, "t385/D xx 140fw r~20s4 g25 -", "t385yd/D xx 140ydfw r~20yds4 g25ft -"},
		{StandardUnits, metres, "F 140,g30,3", "F 140yd,g30ft,3ft"},
		{StandardUnits, Units{golf.Metres, golf.Feet}, "r20p g24 3", "r20p g24 3"},
		{StandardUnits, metres, "=7", "=7"},
		{StandardUnits, metres, "u2 r142 g30 h", "u2 r142yd g30ft h"},
		{metres, StandardUnits, "f140yd,90yd g2", "f140 90 g2m"}, // as f140,90 it would be one distance
	} {
		if got := Shown(c.line, par(4, 392), c.stored, c.reader); got != c.want {
			t.Errorf("%q: %q, want %q", c.line, got, c.want)
		}
	}
	long := "r165" + strings.Repeat(" ", 300) + strings.Repeat("1 ", 90) + "-"
	shown := Shown(long, par(4, 392), StandardUnits, metres)
	if l := ParseLine(shown, par(4, 392), metres); !l.Sound() || len(l.Hole.Shots) != 92 {
		t.Errorf("a long line gets too long with its units: %q", shown)
	}
}

// A player changes units back and forth, and opens and saves every hole of a
// round without touching it: no shot changes in any digit, and in the same units
// no letter of the line does.
func TestUnitsBackAndForth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		units := rapid.SampledFrom(allUnits)
		first, changes := units.Draw(t, "first"), rapid.SliceOfN(units, 1, 5).Draw(t, "changes")
		for _, h := range golftest.Rounds().Draw(t, "round").Holes {
			card := golf.CardHole{Number: h.Number, Par: h.Par, Length: h.Length()}
			line, stored := WriteLine(h, card, first), first
			for _, reader := range changes {
				shown := Shown(line, card, stored, reader)
				if stored == reader && shown != line {
					t.Fatalf("%q is shown as %q in the same units", line, shown)
				}
				l := ParseLine(shown, card, reader)
				if diff := cmp.Diff(sayable(h), l.Hole); diff != "" || !l.Sound() {
					t.Fatalf("%q in %v is shown in %v as %q: %v\n%s", line, stored, reader, shown, l.Problems, diff)
				}
				line, stored = shown, reader
			}
			if back := Shown(line, card, stored, first); back != WriteLine(h, card, first) {
				t.Fatalf("%q came back as %q", WriteLine(h, card, first), back)
			}
		}
	})
}

// Whatever number was typed, it is written so that it reads as the same distance.
func TestNumbersAreWrittenToTheLastDigit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		unit := rapid.SampledFrom(golf.Units).Draw(t, "unit")
		d := unit.Of(rapid.Float64Range(0, 700).Draw(t, "number"))
		x, err := strconv.ParseFloat(written(d, unit), 64)
		if err != nil || unit.Of(x) != d {
			t.Fatalf("%v is written as %s", d, written(d, unit))
		}
	})
}
