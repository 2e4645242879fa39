package form

import (
	"fmt"
	"strconv"
	"strings"

	"strokeledger/analysis/golf"
)

// ParseCard reads the holes of a course typed or pasted as text: a line a hole
// with its par, its length and, where it is known, its stroke index; what stands
// behind is passed over. Empty lines do not count. The problem says the first thing that is wrong, and is empty
// when nothing is.
func ParseCard(text string, unit golf.Unit) (card []golf.CardHole, problem string) {
	line := 0
	for row := range strings.Lines(text) {
		line++
		words := strings.FieldsFunc(row, func(r rune) bool { return r == ' ' || r == '\t' || r == ',' || r == ';' || r == '\r' || r == '\n' })
		if len(words) == 0 {
			continue
		}
		h := golf.CardHole{Number: len(card) + 1}
		var err error
		if h.Par, err = strconv.Atoi(words[0]); err != nil || h.Par < 3 || h.Par > 6 {
			return nil, fmt.Sprintf("Line %d: no par “%s”. Allowed: 3 to 6, then the length.", line, words[0])
		}
		length := 0.0
		if len(words) > 1 {
			length, err = strconv.ParseFloat(words[1], 64)
		}
		h.Length = unit.Of(length)
		if err != nil || !(h.Length > 0 && h.Length <= golf.MaxDistance) {
			return nil, fmt.Sprintf("Line %d: no length. Allowed: over 0, at most %.0f %s, behind the par.", line, unit.In(golf.MaxDistance), unit)
		}
		if len(words) > 2 {
			if h.Index, err = strconv.Atoi(words[2]); err != nil || h.Index < 1 || h.Index > 18 {
				return nil, fmt.Sprintf("Line %d: no stroke index “%s”. Allowed: 1 to 18 behind the length, or nothing.", line, words[2])
			}
		}
		card = append(card, h)
	}
	if len(card) < 1 || len(card) > 18 {
		return nil, fmt.Sprintf("%d holes. Allowed: 1 to 18 lines, a hole each.", len(card))
	}
	return card, ""
}

// WriteCard writes holes as ParseCard reads them.
func WriteCard(card []golf.CardHole, unit golf.Unit) string {
	var b strings.Builder
	for _, h := range card {
		fmt.Fprintf(&b, "%d %s", h.Par, strconv.FormatFloat(unit.In(h.Length), 'f', -1, 64))
		if h.Index > 0 {
			fmt.Fprintf(&b, " %d", h.Index)
		}
		b.WriteByte('\n')
	}
	return b.String()
}
