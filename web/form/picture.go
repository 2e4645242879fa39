package form

import (
	"fmt"
	"math"
	"net/url"
	"strings"

	"strokeledger/analysis/golf"
)

// PictureForm is a hole as it is drawn: answers about the tee shot and the green, and
// the rows of text that they become.
type PictureForm struct {
	Bend            Text   // one of Bends, empty for straight
	Fairway         Length // its width at DrivingLength
	LeftIs, RightIs Text   // one of Grounds, empty for nothing
	Left, Right     Length // from the middle
	Width, Depth    Length // of the green
	ShortIs         Text   // of the green, one of Grounds
	GreenLeft       Text
	GreenRight      Text
	Rows            Text   // as typed
	Before          string // the rows that answers replaced
	Does            string // what the form was sent for: DrawPicture and so on
	par             int
	length, driving float64 // yards
	answered        bool
}

// What the form of a picture is sent for.
const (
	DrawPicture = "draw" // make rows of the answers
	LookPicture = "look" // draw the rows
	SavePicture = "save"
	UndoPicture = "undo" // take the rows that answers replaced
)

// DrivingLength is where the answers about the tee shot are given: about what a golfer
// who scores 80 to 95 drives (analysis/golfer: 237 yards for 80, 228 for 85, 217 for 95).
const DrivingLength = 230 * golf.Yard

// Bends are the answers to how a hole bends, with degrees; right is positive. Common
// practice: a hole that turns by 25 degrees is a dogleg.
var Bends = []struct {
	Value, Name string
	Degrees     int
}{{"", "straight", 0}, {"little-left", "a little left", -10}, {"left", "left", -25}, {"little-right", "a little right", 10}, {"right", "right", 25}}

// Grounds are the answers to what lies somewhere.
var Grounds = []struct{ Value, Name string }{{"", "nothing"}, {"out", "out of bounds"}, {"water", "water"}, {"trees", "trees"}, {"bunker", "bunker"}, {"rough", "open rough"}}

// Limits of the answers, in yards. Common practice.
const (
	narrowFairway, wideFairway = 8, 100
	nearestGround, farGround   = 3, 120
	smallGreen, largeGreen     = 6, 70
)

// MaxPictureRows is how many bytes the rows of a picture may have.
const MaxPictureRows = 8000

// ParsePicture reads the form of a hole's picture; unit is that of a number without
// one.
func ParsePicture(v url.Values, hole golf.CardHole, unit golf.Unit) PictureForm {
	f := NewPictureForm(hole)
	f.Rows, f.Before, f.Does = Text{Text: v.Get("rows"), Value: v.Get("rows")}, shortened(v.Get("before")), v.Get("do")
	if len(f.Rows.Text) > MaxPictureRows {
		f.Rows = refused[string](shortened(f.Rows.Text), fmt.Sprintf("Allowed: at most %d characters. The rest is cut off.", MaxPictureRows))
	}
	of := func(name string, low, high int) Length {
		return optional(shortField(v, name), func(text string) Length { return yardsBetween(text, unit, low, high) })
	}
	ground := func(name string) Text { return oneOf(shortField(v, name), groundNames()) }
	f.Bend, f.Fairway = oneOf(shortField(v, "bend"), bendNames()), of("fairway", narrowFairway, wideFairway)
	f.LeftIs, f.Left = ground("left"), of("left_far", nearestGround, farGround)
	f.RightIs, f.Right = ground("right"), of("right_far", nearestGround, farGround)
	f.Width, f.Depth = of("width", smallGreen, largeGreen), of("depth", smallGreen, largeGreen)
	f.ShortIs, f.GreenLeft, f.GreenRight = ground("short"), ground("green_left"), ground("green_right")
	f.answered = true
	f.missing()
	return f
}

// NewPictureForm is the empty form of a hole.
func NewPictureForm(hole golf.CardHole) PictureForm {
	return PictureForm{par: hole.Par, length: hole.Length.Yards(), driving: min(DrivingLength.Yards(), math.Round(hole.Length.Yards()*.6))}
}

// HasTeeShot reports whether the answers about the tee shot are asked: on a par 3 the
// tee shot is aimed at the green.
func (f PictureForm) HasTeeShot() bool { return f.par > 3 }

// Driving is where the tee shot is asked about.
func (f PictureForm) Driving() golf.Distance { return golf.Yards.Of(f.driving) }

// missing says which answers a drawing cannot do without. They are asked for only
// when the form was sent to draw, or to save with no rows.
func (f *PictureForm) missing() {
	if !f.MakesRows() {
		return
	}
	need := func(l *Length, is Text) {
		if is.Value != "" && l.Text == "" {
			l.Problem = "How far from the middle?"
		}
	}
	if f.HasTeeShot() {
		need(&f.Left, f.LeftIs)
		need(&f.Right, f.RightIs)
		if f.Fairway.Text == "" {
			f.Fairway.Problem = "How wide? About is good enough."
		}
	}
	for _, l := range []*Length{&f.Width, &f.Depth} {
		if l.Text == "" {
			l.Problem = "About how many? Paces will do."
		}
	}
}

// MakesRows reports whether rows are to be made of the answers.
func (f PictureForm) MakesRows() bool {
	return f.answered && (f.Does == DrawPicture || f.Does == SavePicture && strings.TrimSpace(f.Rows.Text) == "")
}

// Sound reports whether nothing is wrong with what the form is sent for; the rows
// themselves are read elsewhere.
func (f PictureForm) Sound() bool {
	if !f.MakesRows() {
		return f.Rows.Sound()
	}
	if f.HasTeeShot() && !sound(f.Bend, f.Fairway, f.LeftIs, f.RightIs, f.Left, f.Right) {
		return false
	}
	return sound(f.Width, f.Depth, f.ShortIs, f.GreenLeft, f.GreenRight)
}

func yardsBetween(text string, unit golf.Unit, low, high int) Length {
	l := ParseLength(text, unit)
	yd := l.Value.Yards()
	if !l.Sound() || yd < float64(low) || yd > float64(high) {
		return refused[golf.Distance](l.Text, fmt.Sprintf("Allowed: %.0f to %.0f %s.", unit.In(golf.Yards.Of(float64(low))), unit.In(golf.Yards.Of(float64(high))), unit))
	}
	return l
}

func oneOf(text string, known map[string]bool) Text {
	if !known[text] {
		return refused[string]("", "Choose one of the list.")
	}
	return TextOf(text)
}

func groundNames() map[string]bool {
	all := map[string]bool{}
	for _, g := range Grounds {
		all[g.Value] = true
	}
	return all
}

func bendNames() map[string]bool {
	all := map[string]bool{}
	for _, b := range Bends {
		all[b.Value] = true
	}
	return all
}

// shortened is a text without what is beyond MaxPictureRows.
func shortened(text string) string {
	return strings.ToValidUTF8(text[:min(len(text), MaxPictureRows)], "")
}

// Done is the form after what it was sent for: its rows are those of the answers, or
// those that answers replaced.
func (f PictureForm) Done() PictureForm {
	switch {
	case f.MakesRows():
		f.Before = f.Rows.Text
		f.Rows = TextOf(f.Sketch())
	case f.Does == UndoPicture:
		f.Rows, f.Before = TextOf(f.Before), ""
	}
	return f
}
