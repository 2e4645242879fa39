package form

import (
	"net/url"
	"strconv"
	"strings"

	"strokeledger/analysis/golf"
)

// WalkedName is the name of the field with the line of a hole.
func WalkedName(hole int) string { return "line-" + strconv.Itoa(hole) }

// WalkedShownName is the name of the field with the line that the page showed of a hole.
func WalkedShownName(hole int) string { return "shown-" + strconv.Itoa(hole) }

// WalkedShown is the line that the page of a form showed of a hole; stored where the form
// does not say.
func WalkedShown(v url.Values, hole int, stored string) string {
	if name := WalkedShownName(hole); v.Has(name) {
		return v.Get(name)
	}
	return stored
}

// ParseWalked reads the lines of a round that a coach entered, a hole each in the order of
// the card. One that is empty was not played.
func ParseWalked(v url.Values, card []golf.CardHole, units Units) []Line {
	lines := make([]Line, len(card))
	for i, h := range card {
		lines[i] = ParseWalkedLine(strings.TrimSpace(v.Get(WalkedName(h.Number))), h, units)
	}
	return lines
}

// ParseWalkedLine reads one of them: the line of a hole as the pad writes it.
func ParseWalkedLine(text string, h golf.CardHole, units Units) Line {
	if l := ParseLine(text, h, units); !l.Empty() {
		return l
	}
	return Line{}
}
