package chart

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestScale(t *testing.T) {
	s := NewScale(3.5, -.3, 2.1)
	if diff := cmp.Diff([]float64{0, .5, 1, 1.5, 2, 2.5, 3, 3.5}, s.Ticks()); diff != "" {
		t.Error(diff)
	}
	if b := s.Bar(-.3); !b.Won || b.Empty || b.Width != "7.41%" {
		t.Errorf("%+v", b)
	}
	if b := s.Bar(0); b.Won || !b.Empty {
		t.Errorf("%+v", b)
	}
}

func TestEveryScaleHoldsItsValues(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		values := rapid.SliceOf(rapid.Float64Range(-1e4, 1e4)).Draw(t, "values")
		s := NewScale(append(values, math.NaN(), math.Inf(1))...)
		if n := len(s.Ticks()); n < 2 || n > mostTicks+2 || s.Low >= 0 || s.High <= 0 {
			t.Fatalf("%+v: %d ticks", s, n)
		}
		for _, v := range values {
			if p := s.Percent(v); strings.Contains(p, "NaN") || strings.HasPrefix(p, "-") {
				t.Fatalf("%g stands at %s", v, p)
			}
		}
	})
}

// A fixed scale keeps its ends; what leaves it is drawn to the edge and cut there.
func TestBarsThatLeaveAFixedScale(t *testing.T) {
	s := Fixed(-3, 5, 1)
	if first, last := s.Ticks()[0], s.Ticks()[len(s.Ticks())-1]; first != -3 || last != 5 {
		t.Errorf("ticks from %g to %g", first, last)
	}
	for v, want := range map[float64]Bar{
		6.9: {X: "38.89%", Width: "61.11%", Cut: "100%"},
		-4:  {X: "0%", Width: "38.89%", Won: true, Cut: "0%"},
		1:   {X: "38.89%", Width: "11.11%"},
	} {
		if got := s.Bar(v); got != want {
			t.Errorf("%g: %+v, want %+v", v, got, want)
		}
	}
}
