package statement

import (
	"fmt"
	"strings"

	"strokeledger/analysis/account"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// NineCheck compares a nine with what the card says of it.
type NineCheck struct {
	Field components.Field
	Score string // of the holes
	Asked bool   // the card's score has not been told
	Right string // that they agree, empty when not told or not
}

// nineChecks asks for the score of each nine that has been entered whole. A
// forgotten putt is the commonest mistake, and only the card knows.
func nineChecks(q RoundInput) []NineCheck {
	var all []NineCheck
	for half, name := range []string{"out", "in"} {
		holes, entered, score, exact := 0, 0, 0, true
		for _, h := range q.Card {
			if (h.Number > 9) == (half == 1) {
				holes++
			}
		}
		for _, h := range q.Round.Holes {
			if (h.Number > 9) == (half == 1) {
				entered++
				score += h.Strokes()
				exact = exact && !h.PickedUp
			}
		}
		if holes == 0 || entered < holes || !exact {
			continue
		}
		said := q.Nines[half]
		c := NineCheck{Score: fmt.Sprint(score), Asked: said == 0, Field: components.Field{Name: name, Label: "The card's score " + name, Mode: "numeric"}}
		if said > 0 {
			c.Field.Value = fmt.Sprint(said)
			if said == score {
				c.Right = "It agrees with the holes."
			} else {
				c.Field.Problem = fmt.Sprintf("The holes come to %d. Look for a putt or a penalty that is missing, or one too many.", score)
			}
		}
		if back := q.Returned.Card; back != nil {
			c.Field, c.Right = components.Filled(c.Field, [2]form.Whole{back.Out, back.In}[half]), ""
		}
		all = append(all, c)
	}
	return all
}

// checks puts the questions of the card on the page: first of all when the
// last hole was just entered and the card's nines are not known, and that they
// agree once they do.
func (s *RoundPage) checks(q RoundInput) {
	note := form.TextOf(q.Note)
	if q.Returned.Card != nil {
		note = q.Returned.Card.Note
	}
	s.Note = components.Filled(components.Field{Name: "note", Label: "Weather and greens, in a line"}, note)
	s.NoteAt = paths.Note(q.ID)
	s.Checks = nineChecks(q)
	if q.Returned.Card != nil {
		for _, c := range s.Checks {
			s.NinesWrong.Add(c.Field.Name, c.Field.Label, c.Field.Problem)
		}
		s.NoteWrong = components.Summed(s.Note)
	}
	whole, agree := len(q.Round.Holes) == len(q.Card), []string{}
	for _, c := range s.Checks {
		s.CardFirst = s.CardFirst || c.Asked && whole && q.JustEntered
		if c.Right != "" {
			agree = append(agree, c.Score)
		}
	}
	if len(agree) > 0 && len(agree) == len(s.Checks) {
		s.Agrees = "The card agrees: " + strings.Join(agree, " and ") + "."
	}
}

// countsLine writes the plain counts of a round.
func countsLine(c account.Counts, holes int) string {
	if c.Holes == 0 {
		return ""
	}
	var parts []string
	for _, x := range []struct {
		name       string
		n, chances int
	}{{"fairways", c.Fairways, c.FairwayChances}, {"greens", c.Greens, c.GreenChances}} {
		if x.chances > 0 {
			parts = append(parts, fmt.Sprintf("%s %d of %d", x.name, x.n, x.chances))
		}
	}
	parts = append(parts, words.Plural(c.Putts, "putt", "putts"))
	if c.UpAndDownChances > 0 {
		parts = append(parts, fmt.Sprintf("up and down %d of %d", c.UpAndDowns, c.UpAndDownChances))
	}
	line := words.Capital(strings.Join(parts, ", ")) + "."
	if c.Holes < holes {
		line += fmt.Sprintf(" On the %s entered shot by shot.", words.Plural(c.Holes, "hole", "holes"))
	}
	return line
}

// nextHole is the first hole in the order of play that has not been entered, or
// the first of the card.
func nextHole(q RoundInput) int {
	entered := map[int]bool{}
	for _, h := range q.Round.Holes {
		entered[h.Number] = true
	}
	for _, early := range []bool{false, true} { // the round goes on at hole 1 after the end of the card
		for _, h := range q.Card {
			if !entered[h.Number] && (h.Number < q.First) == early {
				return h.Number
			}
		}
	}
	if len(q.Card) == 0 {
		return 1
	}
	return q.Card[0].Number
}
