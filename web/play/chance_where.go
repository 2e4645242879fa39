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
		return " The plan’s aims choose among clubs with the lengths and patterns of the level."
	}
	return " The plan’s aims choose among the clubs of the bag and allow for where their balls end. How far the longest goes, and how wide balls spread, is the level’s: it comes of rounds played with these clubs, and holds both already."
}

func (in ChanceInput) at() string {
	par := 0
	for _, h := range in.Card {
		par += h.Par
	}
	text := fmt.Sprintf("Par %d. ", par)
	if in.Thin.Any() {
		text += fmt.Sprintf("A golfer of %s plays.", words.Plain(in.Target))
	} else {
		text += fmt.Sprintf("From %s.", words.SpelledPlural(in.Played, "round", "rounds"))
	}
	switch {
	case in.Drawn == 0:
		return text + " No hole is drawn, so every hole has average country."
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
