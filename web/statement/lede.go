package statement

import (
	"fmt"

	"strokeledger/analysis/golf"
	"strokeledger/web/words"
)

// lede says the round in a sentence, with the losses of the parts as the lines of
// the statement print them.
func lede(in RoundInput, printed map[golf.Category]float64) string {
	a := in.Account
	target := "your " + words.Plain(in.Target)
	if in.Of != "" {
		target = "the target of " + words.Plain(in.Target)
	}
	over := fmt.Sprintf("%s over %s", words.Capital(words.SpelledAmount(a.Lost.Total)), target)
	switch {
	case a.Lost.Total < -.05:
		over = fmt.Sprintf("%s under %s", words.Capital(words.SpelledAmount(-a.Lost.Total)), target)
	case a.Lost.Total < .05:
		over = "Level with " + target
	}
	if n := len(a.Holes); n < 18 {
		over += fmt.Sprintf(" on %s", words.SpelledPlural(n, "hole", "holes"))
	}
	worst := a.Lost.Worst()
	text := over
	if printed[worst] >= .3 {
		text += fmt.Sprintf(": %s lost %s", words.SpelledAmount(printed[worst]), words.Where(worst))
	} else {
		text += ": no part of the game lost much"
	}
	switch n, compound := len(a.Doubles), a.Counts.Compound; {
	case n == 0:
	case n == compound:
		text += fmt.Sprintf(", and %s", words.SpelledPlural(n, "compound double", "compound doubles"))
	case compound == 0:
		text += fmt.Sprintf(", and %s", words.SpelledPlural(n, "double", "doubles"))
	default:
		text += fmt.Sprintf(", and %s doubles, %s of them compound", words.Spelled(n), words.Spelled(compound))
	}
	return text + "."
}
