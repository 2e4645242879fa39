package form

import (
	"net/url"
	"slices"
	"strconv"
	"strings"

	"strokeledger/analysis/golf"
)

// CourseForm is a course as it was typed: one set of tees, its ratings, and its
// card in rows or as text.
type CourseForm struct {
	Name, Tee          Text            // of the course, and of the set of tees
	Whole, Front, Back Ratings         // of all holes and of each nine
	Card               Card            // in rows, as typed or filled from the text
	CardSaid           []CardProblem   // what is wrong with the card, and what is asked about it
	Holes              []golf.CardHole // of the card, as far as it was understood
	Agreed             []string        // answers to questions
	Paste              string          // the card as text, while it is not used
	PasteProblems      []string        // what is wrong with the text
	filled             bool
}

// Ratings are the course rating and the slope of all holes or of a nine.
type Ratings struct {
	Rating Number // strokes that a scratch golfer takes; 0 where not known
	Slope  Number // how much harder it is for a bogey golfer; 0 where not known
}

// Sound reports whether nothing is wrong with the ratings.
func (r Ratings) Sound() bool { return sound(r.Rating, r.Slope) }

// ParseCourseForm reads a course; unit is that of a length without one, and
// before is the card as it was saved.
func ParseCourseForm(v url.Values, unit golf.Unit, before KnownCard) CourseForm {
	f := CourseForm{
		Name:   personName(shortField(v, "name")),
		Tee:    ParseText(shortField(v, "tee"), golf.MaxName).saying("Allowed: at most 80 characters."),
		Whole:  parseRatings(v, "", golf.MinRating, golf.MaxRating),
		Front:  parseRatings(v, "front_", golf.MinNineRating, golf.MaxNineRating),
		Back:   parseRatings(v, "back_", golf.MinNineRating, golf.MaxNineRating),
		Paste:  strings.TrimSpace(v.Get("paste")),
		Agreed: slices.Clone(v["anyway"]),
	}
	if f.Paste != "" {
		f.Paste = v.Get("paste")
	}
	f.Card.Holes, _ = strconv.Atoi(shortField(v, "holes"))
	for i := range f.Card.Rows {
		field := func(name string) string { return shortField(v, HoleField(name, i+1)) }
		f.Card.Rows[i] = CardRow{Par: field(FieldPar), Length: field(FieldLength), Index: field(FieldIndex)}
	}
	if v.Get("anyway_all") != "" {
		f.Agreed = append(f.Agreed, v["asked"]...)
	}
	f.fill(unit, v.Get("fill") != "")
	f.Holes, f.CardSaid = f.Card.Read(unit, before)
	return f
}

// shortField is a field, cut to a length that a page can show again.
func shortField(v url.Values, name string) string {
	const most = 120 // common practice: longer than any of these fields may be
	letters := []rune(strings.ToValidUTF8(strings.ReplaceAll(v.Get(name), "\x00", ""), ""))
	return strings.TrimSpace(string(letters[:min(len(letters), most)]))
}

func parseRatings(v url.Values, prefix string, low, high float64) Ratings {
	within := func(low, high float64) func(string) Number {
		return func(text string) Number { return ParseNumber(text, low, high) }
	}
	return Ratings{optional(shortField(v, prefix+"rating"), within(low, high)), optional(shortField(v, prefix+"slope"), within(golf.MinSlope, golf.MaxSlope))}
}

// Sound reports whether the course can be saved: nothing is refused, and every
// question is answered.
func (f CourseForm) Sound() bool {
	refused := func(p CardProblem) bool { return p.Answer == "" || !slices.Contains(f.Agreed, p.Answer) }
	return sound(f.Name, f.Tee, f.Whole, f.Front, f.Back) && len(f.PasteProblems) == 0 && !slices.ContainsFunc(f.CardSaid, refused)
}

// Filled reports whether the form was sent to fill the rows from the text, and
// not to be saved.
func (f CourseForm) Filled() bool { return f.filled }

// fill puts pasted text into the rows when that was asked for, or when nothing
// else was filled in. Text that is not used is a problem, since it would be lost.
func (f *CourseForm) fill(unit golf.Unit, asked bool) {
	if f.Paste == "" {
		return
	}
	f.filled = asked
	pasted := PasteCard(f.Paste, unit)
	card := pasted.over(f.Card)
	switch same := card == f.Card; {
	case asked || f.Card.Blank():
		f.Card, f.PasteProblems = card, pasted.Problems
	case !same:
		f.PasteProblems = []string{"The pasted text differs from the rows. Fill the rows from it, or clear it."}
	}
	if asked && len(f.PasteProblems) == 0 {
		f.Paste = ""
	}
}

// over is the card with the pasted rows in the place of its own. A text that
// begins after the first hole leaves what stands before it.
func (p PastedCard) over(card Card) Card {
	filled := p.Card
	if p.Card.Rows[0].Empty() {
		filled = card
		for i, row := range p.Card.Rows {
			if !row.Empty() {
				filled.Rows[i] = row
			}
		}
	}
	filled.Holes = card.Holes
	if n := p.Card.Holes; n == golf.MaxHole/2 || n > card.Holes {
		filled.Holes = n
	}
	return filled
}
