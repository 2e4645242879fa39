package play

import (
	"fmt"
	"maps"
	"slices"

	"strokeledger/analysis/aim"
	"strokeledger/web/words"
)

// clubsSaid says which clubs the plan's aims choose among; empty where no hole is drawn.
func (in ChanceInput) clubsSaid() string {
	if in.Drawn == 0 {
		return ""
	}
	if !slices.ContainsFunc(in.Clubs, func(c aim.Club) bool { return c.Own || c.Pattern.Known() || c.Pattern.Side != 0 }) {
		return " The plan chooses from clubs with the lengths and patterns usual at this level."
	}
	return " The plan chooses from the clubs in the bag and allows for where each club’s shots finish. Length off the tee and spread come from the level, which was measured in rounds played with these clubs, so they are not counted twice."
}

func (in ChanceInput) at() string {
	par := 0
	for _, h := range in.Card {
		par += h.Par
	}
	text := fmt.Sprintf("Par %d. ", par)
	if in.Thin.Any() {
		text += fmt.Sprintf("For a golfer who averages %s.", words.Plain(in.Target))
	} else {
		text += fmt.Sprintf("From %s.", words.SpelledPlural(in.Played, "round", "rounds"))
	}
	switch {
	case in.Drawn == 0:
		return text + " No holes are drawn, so every hole is taken to have average trouble."
	case in.Planned:
		text += fmt.Sprintf(" %s played on %s, with the plan’s aims.", capital(words.SpelledPlural(in.Drawn, "hole is", "holes are")), itsDrawing(in.Drawn))
	default:
		text += fmt.Sprintf(" %s played on %s, aimed straight.", capital(words.SpelledPlural(in.Drawn, "hole is", "holes are")), itsDrawing(in.Drawn))
	}
	return text + in.takenSaid()
}

// takenSaid says on which holes the plan is what a coach proposed; empty for none.
func (in ChanceInput) takenSaid() string {
	var holes []string
	for _, n := range slices.Sorted(maps.Keys(in.Taken)) {
		holes = append(holes, "the "+ordinal(n))
	}
	if len(holes) == 0 {
		return ""
	}
	return fmt.Sprintf(" The plan’s aim on %s is the one that a coach proposed, not the best.", words.List(holes))
}

func itsDrawing(n int) string { return words.OneOrMany(n, "its drawing", "their drawings") }
