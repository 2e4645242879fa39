package site

import (
	"strokeledger/web/components"
	"strokeledger/web/layout"
)

// WelcomePage asks a new player for target and units, once.
type WelcomePage struct {
	layout.Page
	Lede   string
	Target components.Field
	Far    components.Radios
	Green  components.Radios
	Skip   string // what who skips it gets
	Wrong  components.Summary
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
		Lede: "Every round is compared with a golfer who averages your target: the strokes between that score and yours are what the account explains.",
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
