package form

import (
	"slices"
	"strings"

	"strokeledger/analysis/golf"
)

// unitSpan is where the unit of a distance stands in a line, or would stand.
type unitSpan struct {
	span
	lie   golf.Lie
	typed golf.Unit // 0 where none stands there
}

// Shown is a line that was stored in some units as a reader of others types it:
// the same text while the units are the same; otherwise every distance keeps
// its number, and its unit stands behind it where it is not the reader's own.
// Read in the reader's units it is the same hole to the last digit.
func Shown(line string, card golf.CardHole, stored, reader Units) string {
	if stored == reader {
		return line
	}
	l := ParseLine(line, card, stored)
	shown := l.inUnits(stored, reader)
	if !l.Sound() {
		return shown
	}
	if again := ParseLine(shown, card, reader); again.Sound() && slices.Equal(again.Hole.Shots, l.Hole.Shots) {
		return shown
	}
	return WriteLine(l.Hole, card, reader) // it got too long, or its commas read otherwise beside other units
}

// inUnits is the text of a line with a unit behind each number that needs one.
func (l *Line) inUnits(stored, reader Units) string {
	var b strings.Builder
	at := 0
	for _, u := range l.units {
		unit := u.typed
		if unit == 0 {
			unit = stored.of(u.lie)
		}
		b.WriteString(l.Text[at:u.from])
		switch {
		case unit == reader.of(u.lie):
		case u.typed != 0:
			b.WriteString(l.Text[u.from:u.to])
		default:
			b.WriteString(unit.String())
		}
		at = u.to
	}
	b.WriteString(l.Text[at:])
	return b.String()
}
