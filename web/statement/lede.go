package statement

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/web/words"
)

// lede says the round in a sentence, and in another what a single shot made of its
// heaviest part, with the losses of the parts as the lines of
// the statement print them.
func lede(in RoundInput, printed map[string]float64) string {
	a, total := in.Account, 0.0
	for _, tenths := range printed {
		total += tenths
	}
	target := targetSaid(in)
	text := fmt.Sprintf("%s over %s", words.Capital(words.SpelledAmount(total)), target)
	switch {
	case total < -.05:
		text = fmt.Sprintf("%s under %s", words.Capital(words.SpelledAmount(-total)), target)
	case total < .05:
		text = "Level with " + target
	}
	return text + ": " + whereTo(printed) + doublesWords(a) + "." + withoutIt(in, printed)
}

// targetSaid names the target of the holes played: your 79, or your target of 46 for
// nine holes.
func targetSaid(in RoundInput) string {
	whose, n := "your", len(in.Account.Holes)
	if in.Of != "" {
		whose = words.Whose(in.Of)
	}
	if n < 18 {
		return fmt.Sprintf("%s target of %s for %s", whose, words.Plain(in.Account.Expected-in.Account.Lost.Course), words.SpelledPlural(n, "hole", "holes"))
	}
	if in.Of != "" {
		return whose + " target of " + words.Plain(in.Target)
	}
	return whose + " " + words.Plain(in.Target)
}

// worthNaming is how much a line has to lose or win back to be named in the
// sentence; less is even.
const worthNaming = .3

// whereTo names the lines that lost most, then those that won back, then the rest.
func whereTo(printed map[string]float64) string {
	var names []string
	for _, name := range append(slices.Clone(lineNames), courseLine) {
		if _, known := printed[name]; known {
			names = append(names, name)
		}
	}
	slices.SortStableFunc(names, func(a, b string) int { return cmp.Compare(printed[b], printed[a]) })
	var said []string
	even := false
	for _, name := range names {
		switch tenths := printed[name]; {
		case tenths >= worthNaming-.01:
			said = append(said, fmt.Sprintf("%.1f %s", tenths, inSentence[name]))
		case tenths <= -worthNaming+.01:
			said = append(said, fmt.Sprintf("%.1f won back %s", -tenths, inSentence[name]))
		default:
			even = true
		}
	}
	switch {
	case len(said) == 0:
		return "no part of the game lost or won much"
	case even:
		said = append(said, "the rest even")
	}
	return strings.Join(said, ", ")
}

// inSentence are the lines as the places where strokes were lost.
var inSentence = map[string]string{"Tee": words.Where(golf.TeeShots), "Approach": words.Where(golf.Approach), "Short game": words.Where(golf.ShortGame), "Putting": words.Where(golf.Putting),
	scoreOnly: "on holes without shots", rounding: "by counting picked-up holes in whole strokes", courseLine: "to the course"}

// doublesWords counts the doubles at the end of the sentence.
func doublesWords(a account.Account) string {
	switch n, compound := len(a.Doubles), a.Counts.Compound; {
	case n == 0:
		return ""
	case n == compound:
		return fmt.Sprintf("; and %s", words.SpelledPlural(n, "compound double", "compound doubles"))
	case compound == 0:
		return fmt.Sprintf("; and %s", words.SpelledPlural(n, "double", "doubles"))
	default:
		return fmt.Sprintf("; and %s doubles, %s of them compound", words.Spelled(n), words.Spelled(compound))
	}
}
