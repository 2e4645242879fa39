package golf

import (
	"strings"
	"testing"
)

func TestVersusIsReadAsItIsWritten(t *testing.T) {
	for s, want := range map[string]Versus{"target": {}, "tour": VersusTour, "68": VersusLevel(68), "84.5": VersusLevel(84.5), "110": VersusLevel(110)} {
		got, err := ParseVersus(s)
		if err != nil || got != want || got.String() != s {
			t.Errorf("%s: %v, %v", s, got, err)
		}
	}
	for _, s := range []string{"", "Tour", "67", "111", "NaN", "Inf", "eighty", "84" + strings.Repeat("0", 5000), "7" + strings.Repeat("9", 30)} {
		if got, err := ParseVersus(s); err == nil {
			t.Errorf("%.20q is read as %v", s, got)
		} else if len(err.Error()) > 200 {
			t.Errorf("%.20q: the error repeats it", s)
		}
	}
	if level, ok := VersusTour.Level(); ok || !VersusTour.IsTour() || VersusTour.IsTarget() {
		t.Errorf("the tour has level %g", level)
	}
	if level, ok := VersusLevel(84).Level(); !ok || level != 84 || VersusLevel(84).IsTarget() {
		t.Errorf("level 84 is %g, %v", level, ok)
	}
	if !(Versus{}).IsTarget() {
		t.Error("the zero value is not the target")
	}
}

func TestComparisonsThatAreAllowed(t *testing.T) {
	spans := func(n int) []Span { return make([]Span, n) }
	for _, c := range []struct {
		name   string
		choice Comparison
		field  string // at fault, none when empty
	}{
		{"the usual", Comparison{}, ""},
		{"one span", Comparison{Spans: spans(1)}, FieldSpans},
		{"two", Comparison{Spans: spans(2)}, ""},
		{"six", Comparison{Spans: spans(6)}, ""},
		{"seven", Comparison{Spans: spans(7)}, FieldSpans},
		{"200 left out", Comparison{Without: make([]RoundID, 200)}, ""},
		{"201 left out", Comparison{Without: make([]RoundID, 201)}, FieldWithout},
	} {
		ps := c.choice.Check()
		if len(ps) == 0 != (c.field == "") || len(ps) > 0 && ps[0].Field != c.field {
			t.Errorf("%s: %v", c.name, ps)
		}
	}
	var c Comparison
	c.LeaveOut(3)
	c.LeaveOut(4)
	c.LeaveOut(3)
	if len(c.Without) != 2 {
		t.Errorf("left out: %v", c.Without)
	}
}

func TestThin(t *testing.T) {
	for have, missing := range map[int]int{0: 5, 1: 4, 4: 1, 5: 0, 9: 0} {
		note := Enough(ThinLevel, have, 5)
		if note.Missing() != missing || note.Any() != (missing > 0) {
			t.Errorf("%d of 5: %+v", have, note)
		}
	}
}

func TestMost(t *testing.T) {
	for name, c := range map[string]struct {
		of   [Putting + 1]float64
		want Category
	}{
		"none":         {[Putting + 1]float64{}, TeeShots},
		"all negative": {[Putting + 1]float64{0, -3, -1, -2, -4}, Approach},
		"equals":       {[Putting + 1]float64{0, 1, 2, 2, 0}, Approach},
		"putting":      {[Putting + 1]float64{9, 1, 2, 2, 3}, Putting},
	} {
		if got := Most(func(p Category) float64 { return c.of[p] }); got != c.want {
			t.Errorf("%s: %s, want %s", name, got, c.want)
		}
	}
}
