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

// NineCheck compares a nine with its score on the paper card.
type NineCheck struct {
	Field components.Field // asks for the card's score; says so where the holes come to another
	Score string           // of the holes
	Asked bool             // the card's score is not known yet
	Right string           // says that they agree; empty when they do not, or it is not known
}

// nineChecks asks for the card's score of each nine that is entered completely
// and holed out. A forgotten putt is the commonest mistake, and only the card
// shows it.
func nineChecks(in RoundInput) []NineCheck {
	var all []NineCheck
	for half := range 2 {
		if score, whole := scoreOfNine(in, half); whole {
			all = append(all, newNineCheck(in, half, score))
		}
	}
	return all
}

// scoreOfNine adds up the front nine, 0, or the back nine, 1. whole says that all
// its holes are entered and holed out.
func scoreOfNine(in RoundInput, half int) (score int, whole bool) {
	holes, entered, exact := 0, 0, true
	for _, h := range in.Card {
		if (h.Number > 9) == (half == 1) {
			holes++
		}
	}
	for _, h := range in.Round.Holes {
		if (h.Number > 9) == (half == 1) {
			entered++
			score += h.Strokes()
			exact = exact && !h.PickedUp
		}
	}
	return score, holes > 0 && entered >= holes && exact
}

func newNineCheck(in RoundInput, half, score int) NineCheck {
	name, card := [...]string{"out", "in"}[half], in.Nines[half]
	c := NineCheck{Score: fmt.Sprint(score), Asked: card == 0, Field: components.Field{Name: name, Label: "Score " + name + " on your card", Mode: "numeric"}}
	switch {
	case card == 0:
	case card == score:
		c.Field.Value, c.Right = fmt.Sprint(card), "It agrees with the holes."
	default:
		c.Field.Value = fmt.Sprint(card)
		c.Field.Problem = fmt.Sprintf("The holes add up to %d. Look for a missing putt or penalty, or one too many.", score)
	}
	if back := in.Returned.Card; back != nil {
		c.Field, c.Right = components.Filled(c.Field, [2]form.Whole{back.Out, back.In}[half]), ""
	}
	return c
}

// checks fills in what the card is asked for. The nines stand at the top when the
// last hole was just entered and the card's score is not known yet.
func (s *RoundPage) checks(in RoundInput) {
	conditions := form.TextOf(in.Conditions)
	if in.Returned.Card != nil {
		conditions = in.Returned.Card.Conditions
	}
	s.ConditionsField = components.Filled(components.Field{Name: "conditions", Label: "Conditions", Hint: "Weather and greens, in one line."}, conditions)
	s.SaveCard = paths.Conditions(in.ID)
	s.Checks = nineChecks(in)
	if in.Returned.Card != nil {
		for _, c := range s.Checks {
			s.NinesWrong.Add(c.Field.Name, c.Field.Label, c.Field.Problem)
		}
		s.ConditionsWrong = components.Summed(s.ConditionsField)
		s.CardOpen, s.ConditionsOpen = s.NinesWrong.Heading != "", s.ConditionsWrong.Heading != ""
	}
	whole, agree := len(in.Round.Holes) == len(in.Card), []string{}
	for _, c := range s.Checks {
		s.CardFirst = s.CardFirst || c.Asked && whole && in.JustEntered
		s.CardOpen = s.CardOpen || c.Field.Problem != ""
		if c.Right != "" {
			agree = append(agree, c.Score)
		}
	}
	if len(agree) > 0 && len(agree) == len(s.Checks) {
		s.Agrees = "Card agrees: " + strings.Join(agree, " and ") + "."
	}
}

// countsLine writes the counts of a round; holes is how many were played.
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

// nextHole is the first hole in the order of play that is not entered, or the
// first of the card when all are.
func nextHole(in RoundInput) int {
	entered := map[int]bool{}
	for _, h := range in.Round.Holes {
		entered[h.Number] = true
	}
	for _, early := range []bool{false, true} { // after the end of the card the round goes on at its first hole
		for _, h := range in.Card {
			if !entered[h.Number] && (h.Number < in.First) == early {
				return h.Number
			}
		}
	}
	if len(in.Card) == 0 {
		return 1
	}
	return in.Card[0].Number
}
