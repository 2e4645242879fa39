package form

import (
	"encoding/json"
	"os"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// The cases that the browser's keys are held to as well.
func TestPadWritesTheLine(t *testing.T) {
	data, err := os.ReadFile("../../testdata/pad.json")
	if err != nil {
		t.Fatal(err)
	}
	var cases []struct{ Keys, Line string }
	if err := json.Unmarshal(data, &cases); err != nil || len(cases) == 0 {
		t.Fatal(len(cases), err)
	}
	for _, c := range cases {
		line := ""
		for key := range strings.FieldsSeq(c.Keys) {
			line = Press(line, key)
		}
		if line != c.Line {
			t.Errorf("%s: %q, want %q", c.Keys, line, c.Line)
		}
	}
	if got := Press("f260/3w", "x"); got != "f260/3w x" {
		t.Errorf("a mark after a club: %q", got)
	}
	if got := Press("f260/3w", "9"); got != "f260/3w 9" {
		t.Errorf("a digit after a club: %q", got)
	}
	if got := Press("g3/Pö", "back"); got != "g3/P" {
		t.Errorf("a letter of two bytes rubbed out: %q", got)
	}
}

// Whatever stands in the line, no key ends in a panic.
func TestAnyKeyOnAnyLine(t *testing.T) {
	keys := []string{"f", "g", "next", "1", ".", "s", "x", "w", "u", "u2", "d", "undo", "back", "h", "-", "=", "t", "/", "~", "save", ""}
	rapid.Check(t, func(t *rapid.T) {
		Press(rapid.String().Draw(t, "line"), rapid.SampledFrom(keys).Draw(t, "key"))
	})
}
