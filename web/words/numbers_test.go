package words

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestPercent(t *testing.T) {
	for x, want := range map[float64]string{0: "0%", .004: "0%", .005: "1%", .375: "38%", 1: "100%"} {
		if got := Percent(x); got != want {
			t.Errorf("%g: %q, want %q", x, got, want)
		}
	}
}

func TestPoints(t *testing.T) {
	for x, want := range map[float64]string{0: "0 points", .01: "+1 point", -.01: "−1 point", .11: "+11 points", -.2: "−20 points", .004: "0 points"} {
		if got := Points(x); got != want {
			t.Errorf("%g: %q, want %q", x, got, want)
		}
	}
}

func TestSigned(t *testing.T) {
	for _, c := range []struct {
		x        float64
		decimals int
		want     string
	}{
		{1.25, 1, "+1.2"}, {-.04, 1, "0.0"}, {.04, 1, "0.0"}, {-2, 2, "−2.00"}, {0, 2, "0.00"}, {-.5, 0, "0"}, {3, 0, "+3"}, {-100, 0, "−100"},
	} {
		if got := Signed(c.x, c.decimals); got != c.want {
			t.Errorf("%g to %d decimals: %q, want %q", c.x, c.decimals, got, c.want)
		}
	}
}

func TestOneDecimal(t *testing.T) {
	for x, want := range map[float64]string{0: "0.0", 1: "+1.0", -1.26: "−1.3", -.01: "0.0"} {
		if got := OneDecimal(x); got != want {
			t.Errorf("%g: %q, want %q", x, got, want)
		}
	}
}

func TestTick(t *testing.T) {
	for x, want := range map[float64]string{0: "0", 2: "+2", -1: "−1", .5: "+0.5", -1.5: "−1.5"} {
		if got := Tick(x); got != want {
			t.Errorf("%g: %q, want %q", x, got, want)
		}
	}
}

func TestPlain(t *testing.T) {
	for x, want := range map[float64]string{79: "79", 79.5: "79.5", 79.04: "79", .25: "0.3", 0: "0", -.04: "0", -.4: "-0.4"} {
		if got := Plain(x); got != want {
			t.Errorf("%g: %q, want %q", x, got, want)
		}
	}
}

func TestStrokeCount(t *testing.T) {
	for x, want := range map[float64]string{0: "0 strokes", -.04: "0 strokes", .1: "0.1 strokes", .96: "1 stroke", 1: "1 stroke", 1.1: "1.1 strokes", 12: "12 strokes"} {
		if got := StrokeCount(x); got != want {
			t.Errorf("%g: %q, want %q", x, got, want)
		}
	}
}

func TestGrouped(t *testing.T) {
	for n, want := range map[int]string{0: "0", 999: "999", 1000: "1,000", 6012: "6,012", 1234567: "1,234,567"} {
		if got := Grouped(n); got != want {
			t.Errorf("%d: %q, want %q", n, got, want)
		}
	}
}

func TestPlurals(t *testing.T) {
	for _, c := range []struct {
		n                     int
		noun, figure, spelled string
	}{
		{0, "holes", "0 holes", "no holes"},
		{1, "hole", "1 hole", "one hole"},
		{2, "holes", "2 holes", "two holes"},
		{12, "holes", "12 holes", "twelve holes"},
		{18, "holes", "18 holes", "18 holes"},
	} {
		if got := OneOrMany(c.n, "hole", "holes"); got != c.noun {
			t.Errorf("%d: %q, want %q", c.n, got, c.noun)
		}
		if got := Plural(c.n, "hole", "holes"); got != c.figure {
			t.Errorf("%d: %q, want %q", c.n, got, c.figure)
		}
		if got := SpelledPlural(c.n, "hole", "holes"); got != c.spelled {
			t.Errorf("%d: %q, want %q", c.n, got, c.spelled)
		}
	}
}

func TestTally(t *testing.T) {
	if yes, no := Tally(true), Tally(false); yes != 1 || no != 0 {
		t.Errorf("%d, %d", yes, no)
	}
}

func TestSpelled(t *testing.T) {
	for n, want := range map[int]string{-1: "-1", 0: "no", 1: "one", 8: "eight", 12: "twelve", 13: "13"} {
		if got := Spelled(n); got != want {
			t.Errorf("%d: %q, want %q", n, got, want)
		}
	}
}

func TestSpelledAmount(t *testing.T) {
	for x, want := range map[float64]string{0: "no", .04: "no", .4: "0.4", 1: "one", 2.96: "three", 12: "twelve", 13: "thirteen", 20: "twenty", 23: "23", 7.25: "7.3"} {
		if got := SpelledAmount(x); got != want {
			t.Errorf("%g: %q, want %q", x, got, want)
		}
	}
}

// The article is that of the number read aloud: eight, eleven, eighteen, eighty.
func TestNumbersHaveTheirArticle(t *testing.T) {
	for x, want := range map[float64]string{
		79: "a 79", 84: "an 84", 8: "an 8", 18: "an 18", 11: "an 11", 11.5: "an 11.5", 18.2: "an 18.2", 89.96: "a 90", 79.98: "an 80",
		1: "a 1", 100: "a 100", 110: "a 110", 180: "a 180", 800: "an 800", 7: "a 7",
	} {
		if got := A(x); got != want {
			t.Errorf("%g: %q, want %q", x, got, want)
		}
	}
	for number, want := range map[string]string{"11,000": "an", "18,250": "an", "1,800": "a", "8,000": "an", "": "a"} {
		if got := Article(number); got != want {
			t.Errorf("%s: %q, want %q", number, got, want)
		}
	}
}

// Nothing that a page prints is a signed zero, a hyphen for a minus or NaN.
func TestAmountsAreReadable(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x, decimals := rapid.Float64Range(-200, 200).Draw(t, "x"), rapid.IntRange(0, 2).Draw(t, "decimals")
		text := Signed(x, decimals)
		rounds := math.Abs(x)*math.Pow(10, float64(decimals)) < .5
		switch first := []rune(text)[0]; {
		case rounds && (first == '+' || string(first) == Minus):
			t.Fatalf("%g to %d decimals is the signed zero %q", x, decimals, text)
		case !rounds && x < 0 && string(first) != Minus && math.Abs(math.Abs(x)*math.Pow(10, float64(decimals))-.5) > 1e-9:
			t.Fatalf("%g is %q", x, text)
		}
	})
}
