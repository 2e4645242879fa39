package pages

import (
	"strokeledger/web/components"
	"strokeledger/web/layout"
)

// Welcome asks a new player for target and units, once.
type Welcome struct {
	layout.Page
	Lede   string
	Target components.Field
	Far    Choices
	Green  Choices
	Skip   string // what who skips it gets
}

// Choices are a few, of which one is chosen.
type Choices struct {
	Name, Label string
	All         []Choice
	Problem     string
}

// WelcomeForm is what is kept or was typed, and what was wrong.
type WelcomeForm struct {
	Target, Far, Green string
	Problems           map[string]string
}

// NewWelcome makes the page.
func NewWelcome(page layout.Page, f WelcomeForm) Welcome {
	page.Title = "Welcome"
	return Welcome{Page: page,
		Lede: "Every round is compared with a golfer who averages your target: the strokes between that score and yours are what the account explains.",
		Target: components.Field{Name: "target", Label: "Target score", Value: f.Target, Mode: "decimal", Problem: f.Problems["target"],
			Hint: "For 18 holes, 68 to 110. About five below your usual score works well: 79 to break 80, 84 if you score 90, 89 to break 90, 99 to break 100."},
		Far:   farChoices(f.Far, f.Problems["far"]),
		Green: greenChoices(f.Green, f.Problems["green"]), Skip: "Skip: 79, yards and feet"}
}

func farChoices(far, problem string) Choices {
	return Choices{"far", "Distances off the green", []Choice{{"yd", "yards", far == "yd"}, {"m", "metres", far == "m"}}, problem}
}

func greenChoices(green, problem string) Choices {
	return Choices{"green", "Distances on the green", []Choice{{"ft", "feet", green == "ft"}, {"m", "metres", green == "m"}}, problem}
}
