package form

import (
	"net/url"

	"strokeledger/analysis/golf"
)

// RoundCard is the line about weather and greens, and what the paper card says of
// each nine.
type RoundCard struct {
	Conditions Text  // weather and greens
	Out, In    Whole // the scores of the nines on the paper card; 0 where not known
}

// ParseRoundCard reads a round’s card; what is not in the form stays as it was.
func ParseRoundCard(v url.Values, kept RoundCard) RoundCard {
	c := kept
	if v.Has("conditions") {
		c.Conditions = conditions(v.Get("conditions"))
	}
	for name, to := range map[string]*Whole{"out": &c.Out, "in": &c.In} {
		if v.Has(name) {
			*to = optional(v.Get(name), func(text string) Whole { return ParseWhole(text, 1, golf.MaxNine) })
		}
	}
	return c
}

// Sound reports whether nothing is wrong with the form.
func (c RoundCard) Sound() bool { return sound(c.Conditions, c.Out, c.In) }

// conditions reads a line about weather and greens.
func conditions(text string) Text { return ParseText(text, golf.MaxConditions) }
