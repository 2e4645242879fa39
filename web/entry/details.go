package entry

import (
	"fmt"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// DetailsPage is where a player corrects the date, course, target and card of a
// round.
type DetailsPage struct {
	layout.Page
	At         string              // address that saves
	Back       string              // address of the statement
	Wrong      components.Summary  // what is wrong, in the order of the fields
	Day        components.Field    // when it was played
	Course     components.Field    // name
	Tee        components.Field    // may be empty
	Take       []components.Choice // other courses to copy from, the first is none
	Taken      components.Field    // chooses one of Take
	Target     components.Field    // score over 18 holes
	Par18      components.Field    // par of all 18 holes
	First      components.Field    // number of the first hole played
	Conditions components.Field    // conditions, optional
	Unit       string              // of the lengths: yd or m
	Holes      []HoleFields        // the card, by number
}

// HoleFields are the card of one hole.
type HoleFields struct {
	Number string
	Par    components.Field
	Length components.Field // in Unit; empty while unknown
	Index  components.Field // stroke index; may be empty
}

// NewDetailsPage makes the page. in is what was typed, or what is saved; courses
// are those that can be copied from, and unit is that of the lengths.
func NewDetailsPage(page layout.Page, id golf.RoundID, in form.RoundDetails, courses []components.Choice, unit golf.Unit) DetailsPage {
	page.Title, page.Here = "Date, course and target", paths.Rounds
	d := DetailsPage{Page: page, At: paths.Details(id), Back: paths.Round(id), Unit: unit.String(),
		Take: append([]components.Choice{{Value: "", Name: "keep what is entered here", Chosen: in.Take.Text == ""}}, courses...)}
	d.Day = components.Filled(components.Field{Name: "day", Label: "Date played", Type: "date"}, in.Day)
	d.Course = components.Filled(components.Field{Name: "course", Label: "Course"}, in.Course)
	d.Tee = components.Filled(components.Field{Name: "tee", Label: "Tees", Hint: "Optional."}, in.Tee)
	d.Target = components.Filled(components.Field{Name: "target", Label: "Target score", Mode: "decimal", Hint: "For 18 holes, " + form.TargetRange() + "."}, in.Target)
	d.Par18 = components.Filled(components.Field{Name: "par18", Label: "Par of 18 holes", Mode: "numeric", Hint: "Of all 18 holes, even if you played nine."}, in.Par18)
	d.First = components.Filled(components.Field{Name: "first_hole", Label: "First hole", Mode: "numeric", Hint: "Where the round started. The other holes follow in order."}, in.First)
	d.Conditions = components.Filled(components.Field{Name: "conditions", Label: "Conditions", Hint: "Weather and greens, in one line. Optional."}, in.Conditions)
	d.Taken = components.Filled(components.Field{Name: "take", Label: "Copy from another course",
		Hint: "Its name, tees and card replace what is entered here, for the holes it has."}, in.Take)
	fields := []components.Field{d.Day, d.Course, d.Tee, d.Target, d.Par18, d.First, d.Conditions, d.Taken}
	for _, h := range in.Holes {
		row := holeFields(h)
		d.Holes = append(d.Holes, row)
		fields = append(fields, row.Par, row.Length, row.Index)
	}
	d.Wrong = components.Summed(fields...)
	return d
}

// holeFields are the fields of a hole's card among those of other holes.
func holeFields(in form.HoleCard) HoleFields {
	field := func(name, label, mode string) components.Field {
		return components.Field{Name: form.HoleField(name, in.Number), Label: fmt.Sprintf("%s of hole %d", label, in.Number), Mode: mode}
	}
	return HoleFields{Number: fmt.Sprint(in.Number), Par: components.Filled(field(form.FieldPar, "Par", "numeric"), in.Par),
		Length: components.Filled(field(form.FieldLength, "Length", "decimal"), in.Length),
		Index:  components.Filled(field(form.FieldIndex, "Stroke index", "numeric"), in.Index)}
}
