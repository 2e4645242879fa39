package statement

import (
	"fmt"

	"strokeledger/analysis/golf"
	"strokeledger/web/words"
)

// lede says the round in a sentence, with the losses as the account prints them.
func lede(q RoundInput, printed map[golf.Category]float64) string {
	a := q.Account
	target := "your " + words.Plain(q.Target)
	if q.Of != "" {
		target = "the target of " + words.Plain(q.Target)
	}
	over := fmt.Sprintf("%s over %s", words.Capital(words.Strokes(a.Lost.Total)), target)
	switch {
	case a.Lost.Total < -.05:
		over = fmt.Sprintf("%s under %s", words.Capital(words.Strokes(-a.Lost.Total)), target)
	case a.Lost.Total < .05:
		over = "Level with " + target
	}
	if n := len(a.Holes); n < 18 {
		over += fmt.Sprintf(" on %s %s", words.Spelled(n), words.OneOrMany(n, "hole", "holes"))
	}
	worst := a.Lost.Worst()
	text := over
	if printed[worst] >= .3 {
		text += fmt.Sprintf(": %s lost %s", words.Strokes(printed[worst]), words.Where(worst))
	} else {
		text += ": no part of the game lost much"
	}
	switch n, compound := len(a.Doubles), a.Counts.Compound; {
	case n == 0:
	case n == compound:
		text += fmt.Sprintf(", and %s compound %s", words.Spelled(n), words.OneOrMany(n, "double", "doubles"))
	case compound == 0:
		text += fmt.Sprintf(", and %s %s", words.Spelled(n), words.OneOrMany(n, "double", "doubles"))
	default:
		text += fmt.Sprintf(", and %s doubles, %s of them compound", words.Spelled(n), words.Spelled(compound))
	}
	return text + "."
}
