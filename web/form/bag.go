package form

import (
	"fmt"
	"net/url"
	"strconv"
	"strings"

	"strokeledger/analysis/golf"
)

// BagRows is how many clubs for the tee a bag has room for.
const BagRows = golf.MaxTeeClubs

// Bag is the clubs for the tee as they were typed.
type Bag struct{ Rows [BagRows]BagRow }

// BagRow is one club of a bag.
type BagRow struct {
	Club   Text
	Length Length // of a well-struck ball; 0 when it follows from the level
	Bend   Length // by which the ball ends beside its aim; 0 for none
	Side   Text   // of the aim on which it ends: left or right
}

// BagField is the name of a field of a row, counted from 1.
func BagField(name string, row int) string { return name + "-" + strconv.Itoa(row) }

// ParseBag reads the clubs of a bag; unit is that of a number without one. Rows without
// a club are left out.
func ParseBag(v url.Values, unit golf.Unit) Bag {
	var b Bag
	seen := map[string]bool{}
	for i := range b.Rows {
		field := func(name string) string { return shortField(v, BagField(name, i+1)) }
		r := BagRow{
			Club:   ParseText(strings.Join(strings.Fields(field("club")), " "), golf.MaxClub),
			Length: optional(field("length"), func(text string) Length { return yardsBetween(text, unit, golf.MinClubYards, golf.MaxClubYards) }),
			Bend:   optional(strings.TrimLeft(field("bend"), "0"), func(text string) Length { return yardsBetween(text, unit, golf.MinBendYards, golf.MaxBendYards) }),
			Side:   oneOf(field("side"), map[string]bool{"": true, "left": true, "right": true}),
		}
		r.check(seen)
		b.Rows[i] = r
	}
	return b
}

// check adds what is wrong with the row as a whole.
func (r *BagRow) check(seen map[string]bool) {
	name := strings.ToLower(r.Club.Value)
	switch {
	case name == "" && (r.Length.Text != "" || r.Bend.Text != ""):
		r.Club.Problem = "Which club is it?"
	case name != "" && seen[name]:
		r.Club.Problem = "This club stands in a row above."
	case r.Bend.Text != "" && r.Side.Value == "" && r.Side.Sound():
		r.Side.Problem = "Left or right?"
	}
	seen[name] = true
}

// BendYards is by how many yards the ball ends beside its aim; left is negative.
func (r BagRow) BendYards() float64 {
	if r.Side.Value == "left" {
		return -r.Bend.Value.Yards()
	}
	return r.Bend.Value.Yards()
}

// Sound reports whether nothing is wrong with the bag.
func (b Bag) Sound() bool {
	for _, r := range b.Rows {
		if !sound(r.Club, r.Length, r.Bend, r.Side) {
			return false
		}
	}
	return true
}

// BagRowOf is the row of a club that is kept; lengths in yards.
func BagRowOf(club string, length, bend float64, unit golf.Unit) BagRow {
	r := BagRow{Club: TextOf(club), Length: LengthOf(golf.Yards.Of(length), unit)}
	if bend != 0 {
		r.Bend, r.Side = LengthOf(golf.Yards.Of(max(bend, -bend)), unit), TextOf("right")
		if bend < 0 {
			r.Side = TextOf("left")
		}
	}
	return r
}

// Range is a session on the range as it was typed.
type Range struct {
	Club  Text
	Day   Day
	Balls Text // a ball a line
}

// ParseRange reads a session on the range; clubs are those that may be chosen. The
// balls are read elsewhere.
func ParseRange(v url.Values, clubs []string) Range {
	known := map[string]bool{}
	for _, c := range clubs {
		known[c] = true
	}
	f := Range{Club: oneOf(v.Get("range_club"), known), Day: ParseDay(v.Get("day")), Balls: Text{Text: v.Get("balls"), Value: strings.TrimSpace(v.Get("balls"))}}
	if len(f.Balls.Text) > golf.MaxRangeText {
		f.Balls = refused[string](shortened(f.Balls.Text), fmt.Sprintf("Allowed: at most %d characters. The rest is cut off.", golf.MaxRangeText))
	}
	return f
}

// Sound reports whether nothing is wrong with the session.
func (f Range) Sound() bool { return sound(f.Club, f.Day, f.Balls) }
