package form

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"strokeledger/analysis/golf"
)

// MostHoles is the largest number of holes of a course.
const MostHoles = 18

// CardRow is a hole of a card as it was typed. A hole that is not known yet has
// an empty row.
type CardRow struct {
	Par    string // as typed
	Length string // as typed, with or without a unit
	Index  string // stroke index as typed
}

// Empty reports whether nothing was typed.
func (r CardRow) Empty() bool { return r == CardRow{} }

// Card is a card as it was typed, a row for each hole from the first.
type Card struct {
	Holes int                // how many the course has
	Rows  [MostHoles]CardRow // the first is that of hole 1; those past the last hole are empty
}

// Blank reports whether every row is empty.
func (c Card) Blank() bool { return c.Rows == [MostHoles]CardRow{} }

// Tally returns how many rows have a par and a length, and their sums.
func (c Card) Tally(unit golf.Unit) (holes, par int, length golf.Distance) {
	for _, row := range c.Rows {
		p, hasPar := whole(row.Par, 3, 6)
		d, hasLength := ReadLength(row.Length, unit)
		if hasPar && hasLength {
			holes, par, length = holes+1, par+p, length+d
		}
	}
	return holes, par, length
}

// CardProblem is something about a card that is not allowed, or a question
// about something unusual.
type CardProblem struct {
	Field  string // the field it is about: holes, or par-, length- or index- with the number of the hole
	Text   string // what is wrong or asked, a sentence for a page
	Answer string // what to send along to save anyway; empty where that is not allowed
}

// KnownCard is the card as it was saved before. What it already has is not
// asked about again.
type KnownCard struct {
	Size  int             // how many holes the course has
	Holes []golf.CardHole // those that were filled in
}

func (k KnownCard) hole(number int) (golf.CardHole, bool) {
	i := slices.IndexFunc(k.Holes, func(h golf.CardHole) bool { return h.Number == number })
	if i < 0 {
		return golf.CardHole{}, false
	}
	return k.Holes[i], true
}

// Read returns the holes whose rows are not empty and everything that is wrong
// or unusual.
func (c Card) Read(unit golf.Unit, before KnownCard) ([]golf.CardHole, []CardProblem) {
	r := cardReader{unit: unit, before: before, indexes: map[int]int{}}
	r.size(c)
	for i, row := range c.Rows {
		if !row.Empty() && i < c.Holes {
			r.row(i+1, row)
		}
	}
	return r.holes, r.problems
}

type cardReader struct {
	unit     golf.Unit
	before   KnownCard
	indexes  map[int]int // the hole of each stroke index
	holes    []golf.CardHole
	problems []CardProblem
}

func (r *cardReader) add(field, answer, format string, args ...any) {
	r.problems = append(r.problems, CardProblem{Field: field, Answer: answer, Text: fmt.Sprintf(format, args...)})
}

// size checks how many holes there are.
func (r *cardReader) size(c Card) {
	if c.Holes < 1 || c.Holes > MostHoles {
		r.add("holes", "", "Choose how many holes the course has, 1 to %d.", MostHoles)
		return
	}
	var missing, beyond []string
	for i, row := range c.Rows {
		if row.Empty() && i < c.Holes {
			missing = append(missing, strconv.Itoa(i+1))
		}
		if !row.Empty() && i >= c.Holes {
			beyond = append(beyond, strconv.Itoa(i+1))
		}
	}
	switch {
	case len(beyond) == 1:
		r.add("holes", "", "Hole %s is filled in as well. Choose more holes, or empty its row.", beyond[0])
	case len(beyond) > 0:
		r.add("holes", "", "Holes %s are filled in as well. Choose more holes, or empty their rows.", strings.Join(beyond, ", "))
	}
	known := c.Holes == r.before.Size
	if len(missing) == c.Holes && !known {
		r.add("holes", "", "Fill in the holes below, or paste the card as text.")
		return
	}
	if c.Holes != 9 && c.Holes != 18 && !known {
		r.add("holes", fmt.Sprintf("holes:%d", c.Holes), "A course usually has 9 or 18 holes, not %d.", c.Holes)
	}
	// a course that is described while it is played may stay as far as it is
	if asked := known && len(missing) <= c.Holes-len(r.before.Holes); len(missing) > 0 && !asked {
		r.add("holes", fmt.Sprintf("missing:%s/%d", strings.Join(missing, ","), c.Holes),
			"Not filled in: hole %s. You can add the rest later, or while you play.", strings.Join(missing, ", "))
	}
}

// row reads the row of a hole.
func (r *cardReader) row(number int, row CardRow) {
	at := func(name string) string { return name + "-" + strconv.Itoa(number) }
	faults := len(r.problems)
	h := golf.CardHole{Number: number}
	par, ok := whole(row.Par, 3, 6)
	switch h.Par = par; {
	case row.Par == "":
		r.add(at("par"), "", "Hole %d has no par.", number)
	case !ok:
		r.add(at("par"), "", "Par of hole %d: 3 to 6.", number)
	}
	before, known := r.before.hole(number)
	switch h.Length, ok = ReadLength(row.Length, r.unit); {
	case known && row.Length == WriteLength(before.Length, r.unit):
		h.Length = before.Length // it may have been typed in another unit
	case row.Length == "":
		r.add(at("length"), "", "Hole %d has no length.", number)
	case !ok:
		r.add(at("length"), "", "Length of hole %d: a number over 0 and at most %.0f %s.", number, r.unit.In(golf.MaxDistance), r.unit)
	}
	if row.Index != "" {
		index, ok := whole(row.Index, 1, MostHoles)
		if h.Index = index; !ok {
			r.add(at("index"), "", "Stroke index of hole %d: 1 to %d, or nothing.", number, MostHoles)
		} else if other, taken := r.indexes[index]; taken {
			r.add(at("index"), "", "Stroke index %d is on hole %d and on hole %d.", index, other, number)
		} else {
			r.indexes[index] = number
		}
	}
	if len(r.problems) == faults && !(known && before == h) {
		r.plausible(at("length"), h)
	}
	r.holes = append(r.holes, h)
}

// usual is how long holes of each par are in yards; 0 sets no end. Common
// practice: par 3 and 5 have short courses and mountains beyond it, so what is
// outside is asked about, not refused.
var usual = map[int]struct{ low, high float64 }{3: {30, 300}, 4: {200, 520}, 5: {380, 680}}

// plausible asks about a length that is unusual for the par.
func (r *cardReader) plausible(field string, h golf.CardHole) {
	span, limited := usual[h.Par]
	if yards := h.Length.Yards(); !limited || yards >= span.low && yards <= span.high {
		return
	}
	text := WriteLength(h.Length, r.unit)
	r.add(field, fmt.Sprintf("%s:%d:%s", field, h.Par, text), "Hole %d is a par %d of %s %s. Usual are %.0f to %.0f %s.", h.Number, h.Par, text, r.unit,
		r.unit.In(golf.Yards.Of(span.low)), r.unit.In(golf.Yards.Of(span.high)), r.unit)
}

func whole(text string, low, high int) (int, bool) {
	n, err := strconv.Atoi(strings.TrimSpace(text))
	return n, err == nil && n >= low && n <= high
}

// lengthText is a length as people write it: 347, 347.5, 347,5, 346m, 346 yd.
var lengthText = regexp.MustCompile(`(?i)^\s*([0-9]{1,4}(?:[.,][0-9]{1,9})?)\s*(m|met(?:re|er)s?|y|yds?|yards?)?\.?\s*$`)

// ReadLength reads a length of the card; unit is that of a number without one.
// ok is false when it is none that a hole can have.
func ReadLength(text string, unit golf.Unit) (d golf.Distance, ok bool) {
	parts := lengthText.FindStringSubmatch(text)
	if parts == nil {
		return 0, false
	}
	x, err := strconv.ParseFloat(strings.Replace(parts[1], ",", ".", 1), 64)
	switch {
	case strings.HasPrefix(strings.ToLower(parts[2]), "m"):
		unit = golf.Metres
	case parts[2] != "":
		unit = golf.Yards
	}
	d = unit.Of(x)
	return d, err == nil && d > 0 && d <= golf.MaxDistance
}

// WriteLength writes a length of the card as it was typed in this unit; one
// from another unit has at most one decimal.
func WriteLength(d golf.Distance, unit golf.Unit) string {
	x := unit.In(d)
	if typed := math.Round(x*100) / 100; math.Abs(x-typed) < 1e-6 {
		return strconv.FormatFloat(typed, 'f', -1, 64)
	}
	return strconv.FormatFloat(math.Round(x*10)/10, 'f', -1, 64)
}

// WriteCard writes the known holes of a course of a size as rows.
func WriteCard(size int, holes []golf.CardHole, unit golf.Unit) Card {
	c := Card{Holes: size}
	for _, h := range holes {
		if h.Length == 0 || h.Number < 1 || h.Number > MostHoles {
			continue
		}
		row := CardRow{Par: strconv.Itoa(h.Par), Length: WriteLength(h.Length, unit)}
		if h.Index > 0 {
			row.Index = strconv.Itoa(h.Index)
		}
		c.Rows[h.Number-1] = row
	}
	return c
}
