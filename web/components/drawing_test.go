package components

import (
	"math"
	"strconv"
	"strings"
	"testing"
)

func TestADrawing(t *testing.T) {
	d := &Drawing{Class: "some-drawing", Width: 100, Height: 40, Label: "A ball & a hole"}
	d.DrawLine("axis-line", 0, 20, 100, 20.04)
	d.DrawRect("some-area", 10, 5, 20, 4)
	d.DrawDot("some-dot", 50, 20, 2.5)
	d.DrawWords("", 50, 38, "middle", "6 <ft")
	d.DrawCurve("some-curve", []float64{0, 0, 5, math.NaN(), 10, 5}, true)
	var html strings.Builder
	if err := d.View().Render(t.Context(), &html); err != nil {
		t.Fatal(err)
	}
	for _, part := range []string{`viewBox="0 0 100 40"`, `role="img"`, `A ball &amp; a hole`, `d="M0 20L100 20"`, `d="M10 5h20v4h-20Z"`, `cx="50" cy="20" r="2.5"`, `6 &lt;ft`, `d="M0 0L5 0L10 5Z"`} {
		if !strings.Contains(html.String(), part) {
			t.Errorf("%s is not in %s", part, html.String())
		}
	}
	d.Label = ""
	html.Reset()
	if err := d.View().Render(t.Context(), &html); err != nil || !strings.Contains(html.String(), `aria-hidden="true"`) || strings.Contains(html.String(), "role=") {
		t.Errorf("%v %s", err, html.String())
	}
}

// A hatch keeps inside its rectangle.
func TestHatches(t *testing.T) {
	d := &Drawing{}
	d.DrawHatch("some-hatch", 12, 26, 60, 7)
	if len(d.Shapes) != 1 || strings.Count(d.Shapes[0].Data, "M") < 10 {
		t.Errorf("%+v", d.Shapes)
	}
	for _, move := range strings.FieldsFunc(d.Shapes[0].Data, func(r rune) bool { return strings.ContainsRune("ML", r) }) {
		var x, y float64
		if !scan(move, &x, &y) || x < 12 || x > 72 || y < 26 || y > 33 {
			t.Errorf("%s lies outside", move)
		}
	}
}

func scan(text string, x, y *float64) bool {
	a, b, ok := strings.Cut(text, " ")
	var one, two error
	*x, one = strconv.ParseFloat(a, 64)
	*y, two = strconv.ParseFloat(b, 64)
	return ok && one == nil && two == nil
}
