package site

import (
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/words"
)

// WelcomePage asks a new player for a target and units, once.
type WelcomePage struct {
	layout.Page
	Lede   string            // what a target is for
	Target components.Field  // score over 18 holes
	Far    components.Radios // unit off the green
	Green  components.Radios // unit on the green
	Zone   ZoneField
	Skip   string             // button that skips, with what applies then
	Wrong  components.Summary // what is wrong with the answers
}

// NewWelcomePage makes the page. in is what was typed, or what applies by default.
func NewWelcomePage(page layout.Page, in form.FirstSettings) WelcomePage {
	page.Title, page.Script = "Welcome", "zone.js"
	w := WelcomePage{Page: page,
		Lede: "Every round is compared with a golfer who averages your target. The statement explains the strokes between that score and yours.",
		Target: components.Filled(components.Field{Name: "target", Label: "Target score", Mode: "decimal",
			Hint: "For 18 holes, " + form.TargetRange() + ". About five below your usual score works well: 79 to break 80, 84 if you score 90, 89 to break 90, 99 to break 100."}, in.Target),
		Far:   components.Picked(farUnits, in.Far),
		Green: components.Picked(greenUnits, in.Green), Zone: newZoneField(in.Zone), Skip: "Skip: 79, yards and feet"}
	w.Wrong = components.Summed(w.Target)
	w.Far.AddTo(&w.Wrong)
	w.Green.AddTo(&w.Wrong)
	w.Zone.AddTo(&w.Wrong)
	return w
}

// farUnits and greenUnits are the units that a player chooses from.
var (
	farUnits   = components.Radios{Name: "far", Label: "Distances off the green", All: unitChoices(golf.FarUnits)}
	greenUnits = components.Radios{Name: "green", Label: "Distances on the green", All: unitChoices(golf.GreenUnits)}
)

// unitChoices offers units, none of them chosen.
func unitChoices(units []golf.Unit) []components.Choice {
	var all []components.Choice
	for _, u := range units {
		all = append(all, components.Choice{Value: u.String(), Name: strings.ToLower(words.Unit(u))})
	}
	return all
}
