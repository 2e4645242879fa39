package site

import (
	"strokeledger/web/components"
	"strokeledger/web/layout"
)

// WelcomePage asks a new player for a target and units, once.
type WelcomePage struct {
	layout.Page
	Lede   string             // what a target is for
	Target components.Field   // score over 18 holes
	Far    components.Radios  // unit off the green
	Green  components.Radios  // unit on the green
	Skip   string             // button that skips, with what applies then
	Wrong  components.Summary // what is wrong with the answers
}

// WelcomeInput is what is kept or was typed, and what was wrong.
type WelcomeInput struct {
	Target, Far, Green string
	Problems           map[string]string
}

// NewWelcomePage makes the page.
func NewWelcomePage(page layout.Page, f WelcomeInput) WelcomePage {
	page.Title = "Welcome"
	w := WelcomePage{Page: page,
		Lede: "Every round is compared with a golfer who averages your target. The statement explains the strokes between that score and yours.",
		Target: components.Field{Name: "target", Label: "Target score", Value: f.Target, Mode: "decimal", Problem: f.Problems["target"],
			Hint: "For 18 holes, 68 to 110. About five below your usual score works well: 79 to break 80, 84 if you score 90, 89 to break 90, 99 to break 100."},
		Far:   farChoices(f.Far, f.Problems["far"]),
		Green: greenChoices(f.Green, f.Problems["green"]), Skip: "Skip: 79, yards and feet"}
	w.Wrong = components.Summed(w.Target)
	w.Far.AddTo(&w.Wrong)
	w.Green.AddTo(&w.Wrong)
	return w
}

func farChoices(far, problem string) components.Radios {
	return components.Radios{Name: "far", Label: "Distances off the green", All: []components.Choice{{Value: "yd", Name: "yards", Chosen: far == "yd"}, {Value: "m", Name: "metres", Chosen: far == "m"}}, Problem: problem}
}

func greenChoices(green, problem string) components.Radios {
	return components.Radios{Name: "green", Label: "Distances on the green", All: []components.Choice{{Value: "ft", Name: "feet", Chosen: green == "ft"}, {Value: "m", Name: "metres", Chosen: green == "m"}}, Problem: problem}
}
