package entry

import (
	"fmt"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// DetailsPage is where day, course, target and card of a round are put right.
type DetailsPage struct {
	layout.Page
	At     string // address that saves
	Back   string // the statement
	Wrong  components.Summary
	Day    components.Field
	Course components.Field
	Tee    components.Field
	Take   []components.Choice // courses of the server to take over
	Taken  components.Field
	Target components.Field
	Par18  components.Field
	First  components.Field
	Note   components.Field
	Unit   string
	Holes  []HoleFields
}

// HoleFields are the card of one hole.
type HoleFields struct {
	Number             string
	Par, Length, Index components.Field
}

// DetailsInput is what is kept of a round or was typed, by field, and what was
// wrong.
type DetailsInput struct {
	ID       golf.RoundID
	Holes    []int
	Courses  []components.Choice
	Unit     golf.Unit
	Values   map[string]string
	Problems map[string]string
}

// The fields of a hole's card.
const (
	HolePar    = "par"
	HoleLength = "length"
	HoleIndex  = "index"
)

// HoleField is the name of a field of a hole's card.
func HoleField(field string, hole int) string { return fmt.Sprintf("%s-%d", field, hole) }

// NewDetailsPage makes the page.
func NewDetailsPage(page layout.Page, f DetailsInput) DetailsPage {
	page.Title, page.Here = "Day, course and target", paths.Rounds
	d := DetailsPage{Page: page, At: paths.Details(f.ID), Back: paths.Round(f.ID), Unit: f.Unit.String(),
		Take: append([]components.Choice{{Value: "", Name: "none: as typed here", Chosen: f.Values["take"] == ""}}, f.Courses...)}
	field := func(name, label, hint string) components.Field {
		d.Wrong.Add(name, label, f.Problems[name])
		return components.Field{Name: name, Label: label, Value: f.Values[name], Hint: hint, Problem: f.Problems[name]}
	}
	d.Day = field("day", "Day of play", "")
	d.Day.Type = "date"
	d.Course, d.Tee = field("course", "Course", ""), field("tee", "Tees", "May be left out.")
	d.Target = field("target", "Target score", "For 18 holes, 68 to 110.")
	d.Par18 = field("par18", "Par of 18 holes", "Of the whole course, also when nine were played.")
	d.First = field("first_hole", "First hole", "Where the round began; entering goes on in that order.")
	d.Target.Mode, d.Par18.Mode, d.First.Mode = "decimal", "numeric", "numeric"
	d.Note = field("note", "Weather and greens, in a line", "May be left out.")
	d.Taken = field("take", "Take over another course", "Its name, tees and card then replace what stands here, on the holes that it has.")
	for _, n := range f.Holes {
		h := HoleFields{Number: fmt.Sprint(n), Par: field(HoleField(HolePar, n), fmt.Sprintf("Par of hole %d", n), ""),
			Length: field(HoleField(HoleLength, n), fmt.Sprintf("Length of hole %d", n), ""),
			Index:  field(HoleField(HoleIndex, n), fmt.Sprintf("Stroke index of hole %d", n), "")}
		h.Par.Mode, h.Length.Mode, h.Index.Mode = "numeric", "decimal", "numeric"
		d.Holes = append(d.Holes, h)
	}
	return d
}
