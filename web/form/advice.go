package form

import (
	"net/url"
	"strings"

	"strokeledger/analysis/golf"
)

// AnAim stands for the club of a proposal on a par 3, which is an aim alone.
const AnAim = "aim"

// SafeSides are the sides of a green that may be proposed as the safe one.
var SafeSides = []string{"left", "right", "short", "long"}

// HoleAdvice is what a coach says of a hole, and the club, the aim and the safe side of
// the green that are proposed there.
type HoleAdvice struct {
	Note Text
	Club Text   // empty for no proposal
	Side Length // of the aim from the middle, or from the flag; 0 for none
	To   Text   // left or right
	Long Length // beyond the flag or short of it, on a par 3
	Way  Text   // short or long
	Safe Text   // left, right, short or long; empty for none
}

// ParseHoleAdvice reads it; unit is that of a number without one, and clubs are those
// that may be proposed: on a par 3 AnAim, and none where nothing can be.
func ParseHoleAdvice(v url.Values, unit golf.Unit, clubs []string) HoleAdvice {
	known := map[string]bool{"": true}
	for _, c := range clubs {
		known[c] = true
	}
	yards := func(field string, most int) Length {
		return optional(strings.TrimLeft(shortField(v, field), "0"), func(text string) Length { return yardsBetween(text, unit, 1, most) })
	}
	safe := map[string]bool{"": true}
	for _, side := range SafeSides {
		safe[side] = len(clubs) > 0
	}
	f := HoleAdvice{
		Note: ParseText(strings.Join(strings.Fields(v.Get("note")), " "), golf.MaxHoleNote),
		Club: oneOf(shortField(v, "club"), known),
		Side: yards("side", golf.MaxAimSide), To: oneOf(shortField(v, "to"), map[string]bool{"": true, "left": true, "right": true}),
		Long: yards("long", golf.MaxAimLong), Way: oneOf(shortField(v, "way"), map[string]bool{"": true, "short": true, "long": true}),
		Safe: oneOf(shortField(v, "safe"), safe),
	}
	f.check()
	return f
}

// Empty reports whether nothing is said and nothing proposed.
func (f HoleAdvice) Empty() bool {
	return f.Note.Value == "" && f.Club.Value == "" && f.Safe.Value == ""
}

// Asked is the form with a question for what was to be said, where it says nothing.
func (f HoleAdvice) Asked() *HoleAdvice {
	if f.Sound() && f.Empty() {
		f.Note.Problem = "Write a note, or propose something."
	}
	return &f
}

// check adds what is wrong with the proposal as a whole.
func (f *HoleAdvice) check() {
	if f.Side.Text != "" && f.To.Text == "" && f.To.Sound() {
		f.To.Problem = "Left or right?"
	}
	if f.Long.Text != "" && f.Way.Text == "" && f.Way.Sound() {
		f.Way.Problem = "Short or long?"
	}
	if f.Club.Text == "" && f.Club.Sound() && (f.Side.Text != "" || f.Long.Text != "") {
		f.Club.Problem = "What is to be aimed with it?"
	}
}

// SideYards is how far right of the middle or the flag the aim is; left is negative.
func (f HoleAdvice) SideYards() float64 { return signed(f.Side, f.To.Value == "left") }

// LongYards is how far beyond the flag the aim is; short is negative.
func (f HoleAdvice) LongYards() float64 { return signed(f.Long, f.Way.Value == "short") }

func signed(l Length, negative bool) float64 {
	if negative {
		return -l.Value.Yards()
	}
	return l.Value.Yards()
}

// Sound reports whether nothing is wrong.
func (f HoleAdvice) Sound() bool { return sound(f.Note, f.Club, f.To, f.Way, f.Side, f.Long, f.Safe) }

// HoleAdviceOf is the form of what is kept; an empty club proposes no aim.
func HoleAdviceOf(note, club, safe string, side, long float64, unit golf.Unit) HoleAdvice {
	f := HoleAdvice{Note: TextOf(note), Safe: TextOf(safe), Club: TextOf(club), Side: LengthOf(golf.Yards.Of(max(side, -side)), unit), Long: LengthOf(golf.Yards.Of(max(long, -long)), unit)}
	switch {
	case side < 0:
		f.To = TextOf("left")
	case side > 0:
		f.To = TextOf("right")
	}
	switch {
	case long < 0:
		f.Way = TextOf("short")
	case long > 0:
		f.Way = TextOf("long")
	}
	return f
}
