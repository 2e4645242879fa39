package components

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Drawing is a picture of lines, dots and words on a plane of its own. Its places
// are counted from the upper left corner.
type Drawing struct {
	Class         string // of the picture
	Width, Height float64
	Label         string // what it shows, for a reader who cannot see it; empty when a table beside it says the same
	Shapes        []Shape
}

// Shape is a line, an area, a dot or words. Its text is empty but for words.
type Shape struct {
	Class  string
	Data   string // of a path; empty for dots and words
	X, Y   string
	R      string // of a dot
	Anchor string // of words: start, middle or end
	Text   string
}

// Box is the plane of the picture.
func (d *Drawing) Box() string { return "0 0 " + place(d.Width) + " " + place(d.Height) }

// DrawPath adds a line or an area.
func (d *Drawing) DrawPath(class, data string) {
	d.Shapes = append(d.Shapes, Shape{Class: class, Data: data})
}

// DrawLine adds a straight line.
func (d *Drawing) DrawLine(class string, x1, y1, x2, y2 float64) {
	d.DrawPath(class, fmt.Sprintf("M%s %sL%s %s", place(x1), place(y1), place(x2), place(y2)))
}

// DrawRect adds a rectangle.
func (d *Drawing) DrawRect(class string, x, y, width, height float64) {
	d.DrawPath(class, fmt.Sprintf("M%s %sh%sv%sh%sZ", place(x), place(y), place(width), place(height), place(-width)))
}

// DrawDot adds a dot or a ring.
func (d *Drawing) DrawDot(class string, x, y, r float64) {
	d.Shapes = append(d.Shapes, Shape{Class: class, X: place(x), Y: place(y), R: place(r)})
}

// DrawWords adds words beside a place: anchor is start, middle or end.
func (d *Drawing) DrawWords(class string, x, y float64, anchor, text string) {
	d.Shapes = append(d.Shapes, Shape{Class: class, X: place(x), Y: place(y), Anchor: anchor, Text: text})
}

// DrawCurve adds a line through many places, given as x, y, x, y; closed makes it
// the edge of an area.
func (d *Drawing) DrawCurve(class string, places []float64, closed bool) {
	var data strings.Builder
	for i := 0; i+1 < len(places); i += 2 {
		data.WriteByte("ML"[min(i, 1)])
		data.WriteString(place(places[i]) + " " + place(places[i+1]))
	}
	if closed {
		data.WriteByte('Z')
	}
	d.DrawPath(class, data.String())
}

// DrawHatch fills a rectangle with slanting strokes.
func (d *Drawing) DrawHatch(class string, x, y, width, height float64) {
	const apart = 5
	var data strings.Builder
	for at := x - height; at < x+width; at += apart {
		from, to := max(at, x), min(at+height, x+width)
		if from < to {
			fmt.Fprintf(&data, "M%s %sL%s %s", place(from), place(y+height-(from-at)), place(to), place(y+height-(to-at)))
		}
	}
	d.DrawPath(class, data.String())
}

// place writes a place with one decimal; what is no number is 0.
func place(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		x = 0
	}
	return strconv.FormatFloat(math.Round(x*10)/10+0, 'f', -1, 64)
}
