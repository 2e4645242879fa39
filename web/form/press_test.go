package form

import (
	"strings"
	"testing"
)

func press(line string, keys ...string) string {
	for _, k := range keys {
		line = Press(line, k)
	}
	return line
}

func TestPadWritesTheLine(t *testing.T) {
	for _, c := range []struct{ keys, want string }{
		{"r 1 6 5 g 2 4 g 3", "r165 g24 g3"},
		{"x f 1 5 0 g 2 0 g 2", "x f150 g20 g2"},
		{"f 1 8 0 w r 1 2 0 g 1 8", "f180w r120 g18"},
		{"r 2 0 s 4 g 6", "r20s4 g6"},
		{"f r 9 0 undo b 7", "b7"},
		{"f 9 5 back back", "f"},
		{"holed", "h"},
		{"f 9 5 holed", "f95"},
		{"f 9 5 g 3 pickedup pickedup", "f95 g3 -"},
		{"g 2 . 5", "g2.5"},
		{"x x", "xx"},
		{"f 1 8 0 x 5", "f180x 5"},
		{"undo back nothing", ""},
	} {
		if got := press("", strings.Fields(c.keys)...); got != c.want {
			t.Errorf("%s: %q, want %q", c.keys, got, c.want)
		}
	}
	if got := press("f260/3w", "x"); got != "f260/3w x" {
		t.Errorf("a mark after a club: %q", got)
	}
	if got := press("f260/3w", "9"); got != "f260/3w 9" {
		t.Errorf("a digit after a club: %q", got)
	}
}
