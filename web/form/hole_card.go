package form

import (
	"net/url"
	"strconv"

	"strokeledger/analysis/golf"
)

// HoleCard is what a card says of one hole.
type HoleCard struct {
	Number int    // of the hole
	Par    Whole  // 3 to 6
	Length Length // from the tee to the hole
	Index  Whole  // stroke index, 0 where none is known
}

// The names of the fields of a hole's card, alone on a page.
const (
	FieldPar    = "par"
	FieldLength = "length"
	FieldIndex  = "index"
)

// HoleField is the name of a field of a hole's card beside those of other holes.
func HoleField(field string, hole int) string { return field + "-" + strconv.Itoa(hole) }

// HoleCardOf is the card of a hole that is kept.
func HoleCardOf(h golf.CardHole, unit golf.Unit) HoleCard {
	return HoleCard{h.Number, WholeOf(h.Par), LengthOf(h.Length, unit), WholeOf(h.Index)}
}

// ParseHoleCard reads the card of a hole that stands alone on its page.
func ParseHoleCard(v url.Values, number int, unit golf.Unit) HoleCard {
	return HoleCard{Number: number,
		Par:    ParseWhole(v.Get(FieldPar), golf.MinPar, golf.MaxPar),
		Length: ParseLength(v.Get(FieldLength), unit),
		Index:  optional(v.Get(FieldIndex), strokeIndex)}
}

// parseHoleCard reads the card of one hole among others. A length that stands as
// it was shown is the one that is kept, so that rounding changes nothing.
func parseHoleCard(v url.Values, kept golf.CardHole, unit golf.Unit) HoleCard {
	alone := url.Values{}
	for _, field := range []string{FieldPar, FieldLength, FieldIndex} {
		alone.Set(field, v.Get(HoleField(field, kept.Number)))
	}
	c := ParseHoleCard(alone, kept.Number, unit)
	if shown := LengthOf(kept.Length, unit); c.Length.Text == shown.Text {
		c.Length = shown
	}
	return c
}

func strokeIndex(text string) Whole { return ParseWhole(text, 1, golf.MaxIndex) }

// Sound reports whether nothing is wrong with the card.
func (c HoleCard) Sound() bool { return sound(c.Par, c.Length, c.Index) }

// AsTyped is the card as it was typed, without what is wrong with it: nobody has
// asked to save it yet.
func (c HoleCard) AsTyped() HoleCard {
	return HoleCard{Number: c.Number, Par: Whole{Text: c.Par.Text}, Length: Length{Text: c.Length.Text}, Index: Whole{Text: c.Index.Text}}
}

// Wrong is the name of the first field with which something is wrong, empty for
// none.
func (c HoleCard) Wrong() string {
	switch {
	case !c.Par.Sound():
		return FieldPar
	case !c.Length.Sound():
		return FieldLength
	case !c.Index.Sound():
		return FieldIndex
	}
	return ""
}

// Hole is the card as it was meant.
func (c HoleCard) Hole() golf.CardHole {
	return golf.CardHole{Number: c.Number, Par: c.Par.Value, Length: c.Length.Value, Index: c.Index.Value}
}

// parseHoleNumber reads the number of a hole.
func parseHoleNumber(text string) Whole { return ParseWhole(text, 1, golf.MaxHole) }
