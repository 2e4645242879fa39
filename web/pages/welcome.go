package pages

import (
	"fmt"

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
	Wrong  components.Summary
}

// Choices are a few, of which one is chosen.
type Choices struct {
	Name    string
	ID      string // of the first on the page; its name when empty
	Label   string
	All     []Choice
	Problem string
}

// id tells the first of them from other inputs of the page.
func (c Choices) id() string {
	if c.ID == "" {
		return c.Name
	}
	return c.ID
}

// inputID is the id of one of them.
func (c Choices) inputID(i int) string {
	if i == 0 {
		return c.id()
	}
	return fmt.Sprintf("%s-%d", c.id(), i+1)
}

// sum adds what is wrong with the choice.
func (c Choices) sum(s *components.Summary) { s.Add(c.id(), c.Label, c.Problem) }

// WelcomeForm is what is kept or was typed, and what was wrong.
type WelcomeForm struct {
	Target, Far, Green string
	Problems           map[string]string
}

// NewWelcome makes the page.
func NewWelcome(page layout.Page, f WelcomeForm) Welcome {
	page.Title = "Welcome"
	w := Welcome{Page: page,
		Lede: "Every round is compared with a golfer who averages your target: the strokes between that score and yours are what the account explains.",
		Target: components.Field{Name: "target", Label: "Target score", Value: f.Target, Mode: "decimal", Problem: f.Problems["target"],
			Hint: "For 18 holes, 68 to 110. About five below your usual score works well: 79 to break 80, 84 if you score 90, 89 to break 90, 99 to break 100."},
		Far:   farChoices(f.Far, f.Problems["far"]),
		Green: greenChoices(f.Green, f.Problems["green"]), Skip: "Skip: 79, yards and feet"}
	w.Wrong = components.Summed(w.Target)
	w.Far.sum(&w.Wrong)
	w.Green.sum(&w.Wrong)
	return w
}

func farChoices(far, problem string) Choices {
	return Choices{Name: "far", Label: "Distances off the green", All: []Choice{{"yd", "yards", far == "yd"}, {"m", "metres", far == "m"}}, Problem: problem}
}

func greenChoices(green, problem string) Choices {
	return Choices{Name: "green", Label: "Distances on the green", All: []Choice{{"ft", "feet", green == "ft"}, {"m", "metres", green == "m"}}, Problem: problem}
}
