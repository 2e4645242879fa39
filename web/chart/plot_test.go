package chart

import (
	"math"
	"strings"
	"testing"
)

func TestRangesHoldTheirValues(t *testing.T) {
	for _, values := range [][]float64{nil, {84}, {79, 95.5, 88}, {math.NaN(), 3}, {-1e3, 1e3}} {
		r := NewRange(5, values...)
		for _, v := range values {
			if s := r.Share(v); !math.IsNaN(v) && (s < 0 || s > 1) {
				t.Errorf("%v: %g stands at %g", values, v, s)
			}
		}
		if n := len(r.Ticks()); n < 1 || n > 8 {
			t.Errorf("%v: %d ticks", values, n)
		}
	}
}

// Up is more, and right is more; a picture counts from the top and from the left.
func TestPlacesOfARange(t *testing.T) {
	r := Range{Low: 70, High: 110, Step: 10}
	for _, c := range []struct {
		value        float64
		down, across string
	}{
		{110, "0%", "100%"}, {100, "25%", "75%"}, {70, "100%", "0%"}, {85.5, "61.25%", "38.75%"}, {math.NaN(), "0%", "0%"}, {math.Inf(1), "0%", "0%"},
	} {
		if down, across := r.Down(c.value), r.Across(c.value); down != c.down || across != c.across {
			t.Errorf("%g stands %s down and %s across", c.value, down, across)
		}
	}
}

func TestPathsHoldNumbersOnly(t *testing.T) {
	area := Area([]Place{{0, .25}, {1, math.NaN()}}, []Place{{0, .5}, {1, math.Inf(1)}})
	if want := "M0 25L100 0L100 0L0 50Z"; area != want {
		t.Errorf("%s, want %s", area, want)
	}
	if Line(nil) != "" || Area(nil, nil) != "" {
		t.Error("nothing has a path")
	}
}

func TestAxesOfNarrowColumns(t *testing.T) {
	s := NewScale(-3.3, 7.1, 12)
	if n := len(s.Fewer(3).Ticks()); n < 1 || n > 3 {
		t.Errorf("%d ticks", n)
	}
}

// A whisker is cut where the scale ends, without its end mark; inside a solid
// bar it is drawn again.
func TestWhiskers(t *testing.T) {
	s := Scale{Low: -2, High: 8, Step: 2}
	w := s.Whisker(3, 1, 20)
	if !w.Known || !w.Low || w.High || w.X1 != "30%" || w.X2 != "100%" || !w.Inside || w.InX1 != "30%" || w.InX2 != "50%" {
		t.Errorf("%+v", w)
	}
	if w := s.Whisker(-1, -1.5, -.5); w.Inside {
		t.Errorf("a hollow bar has nothing inside: %+v", w)
	}
	if w := s.Whisker(0, math.NaN(), 1); w.Known || strings.Contains(w.X1, "NaN") {
		t.Errorf("%+v", w)
	}
}
