package entry

import (
	"fmt"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// DetailsPage is where a player corrects the date, course, target and card of a
// round.
type DetailsPage struct {
	layout.Page
	At     string              // address that saves
	Back   string              // address of the statement
	Wrong  components.Summary  // what is wrong, in the order of the fields
	Day    components.Field    // when it was played
	Course components.Field    // name
	Tee    components.Field    // may be empty
	Take   []components.Choice // other courses to copy from, the first is none
	Taken  components.Field    // chooses one of Take
	Target components.Field    // score over 18 holes
	Par18  components.Field    // par of all 18 holes
	First  components.Field    // number of the first hole played
	Note   components.Field    // conditions, optional
	Unit   string              // of the lengths: yd or m
	Holes  []HoleFields        // the card, by number
}

// HoleFields are the card of one hole.
type HoleFields struct {
	Number string
	Par    components.Field
	Length components.Field // in Unit; empty while unknown
	Index  components.Field // stroke index; may be empty
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
	page.Title, page.Here = "Date, course and target", paths.Rounds
	d := DetailsPage{Page: page, At: paths.Details(f.ID), Back: paths.Round(f.ID), Unit: f.Unit.String(),
		Take: append([]components.Choice{{Value: "", Name: "keep what is entered here", Chosen: f.Values["take"] == ""}}, f.Courses...)}
	field := func(name, label, hint string) components.Field {
		d.Wrong.Add(name, label, f.Problems[name])
		return components.Field{Name: name, Label: label, Value: f.Values[name], Hint: hint, Problem: f.Problems[name]}
	}
	d.Day = field("day", "Date played", "")
	d.Day.Type = "date"
	d.Course, d.Tee = field("course", "Course", ""), field("tee", "Tees", "Optional.")
	d.Target = field("target", "Target score", "For 18 holes, 68 to 110.")
	d.Par18 = field("par18", "Par of 18 holes", "Of all 18 holes, even if you played nine.")
	d.First = field("first_hole", "First hole", "Where the round started. The other holes follow in order.")
	d.Target.Mode, d.Par18.Mode, d.First.Mode = "decimal", "numeric", "numeric"
	d.Note = field("note", "Conditions", "Weather and greens, in one line. Optional.")
	d.Taken = field("take", "Copy from another course", "Its name, tees and card replace what is entered here, for the holes it has.")
	for _, n := range f.Holes {
		h := HoleFields{Number: fmt.Sprint(n), Par: field(HoleField(HolePar, n), fmt.Sprintf("Par of hole %d", n), ""),
			Length: field(HoleField(HoleLength, n), fmt.Sprintf("Length of hole %d", n), ""),
			Index:  field(HoleField(HoleIndex, n), fmt.Sprintf("Stroke index of hole %d", n), "")}
		h.Par.Mode, h.Length.Mode, h.Index.Mode = "numeric", "decimal", "numeric"
		d.Holes = append(d.Holes, h)
	}
	return d
}
