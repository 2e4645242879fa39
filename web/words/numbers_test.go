package words

import "testing"

func TestStrokeCount(t *testing.T) {
	for x, want := range map[float64]string{0: "0 strokes", .1: "0.1 strokes", .98: "1 stroke", 1: "1 stroke", 1.1: "1.1 strokes", 12: "12 strokes"} {
		if got := StrokeCount(x); got != want {
			t.Errorf("%v is %q, want %q", x, got, want)
		}
	}
}
