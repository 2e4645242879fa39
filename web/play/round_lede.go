package play

import (
	"fmt"

	"strokeledger/analysis"
	"strokeledger/web/words"
)

// roundLede is the sentence of the round.
func roundLede(order []analysis.HolePlan, total float64, drawn int) string {
	if len(order) == 0 && total == 0 {
		return fmt.Sprintf("On the %s no aim matters: play the longest club down the middle, and at the flag.", words.SpelledPlural(drawn, "drawn hole", "drawn holes"))
	}
	text := fmt.Sprintf("The plan saves %s a round.", words.StrokeCount(total))
	sum, few := 0.0, 0
	for few < len(order) && sum < total/2 {
		sum += savedOf(order[few])
		few++
	}
	var holes []string
	for _, plan := range order[:few] {
		holes = append(holes, "the "+ordinal(plan.Hole.Number))
	}
	if few == 1 {
		return text + " Half of it or more comes from " + holes[0] + "."
	}
	return text + fmt.Sprintf(" Half of it comes from %s: %s.", words.SpelledPlural(few, "hole", "holes"), words.List(holes))
}

// ordinal writes the number of a hole as it is said.
func ordinal(n int) string {
	end := "th"
	if n < 11 || n > 13 {
		switch n % 10 {
		case 1:
			end = "st"
		case 2:
			end = "nd"
		case 3:
			end = "rd"
		}
	}
	return fmt.Sprintf("%d%s", n, end)
}
