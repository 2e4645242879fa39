package entry

import (
	"fmt"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
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

// NewDetailsPage makes the page of what is kept of a round or was typed; courses
// are those that it may take over.
func NewDetailsPage(page layout.Page, id golf.RoundID, f form.RoundDetails, courses []components.Choice, unit golf.Unit) DetailsPage {
	page.Title, page.Here = "Day, course and target", paths.Rounds
	d := DetailsPage{Page: page, At: paths.Details(id), Back: paths.Round(id), Unit: unit.String(),
		Take: append([]components.Choice{{Value: "", Name: "none: as typed here", Chosen: f.Take.Text == ""}}, courses...)}
	d.Day = components.Filled(components.Field{Name: "day", Label: "Day of play", Type: "date"}, f.Day)
	d.Course = components.Filled(components.Field{Name: "course", Label: "Course"}, f.Course)
	d.Tee = components.Filled(components.Field{Name: "tee", Label: "Tees", Hint: "May be left out."}, f.Tee)
	d.Target = components.Filled(components.Field{Name: "target", Label: "Target score", Mode: "decimal", Hint: "For 18 holes, 68 to 110."}, f.Target)
	d.Par18 = components.Filled(components.Field{Name: "par18", Label: "Par of 18 holes", Mode: "numeric", Hint: "Of the whole course, also when nine were played."}, f.Par18)
	d.First = components.Filled(components.Field{Name: "first_hole", Label: "First hole", Mode: "numeric", Hint: "Where the round began; entering goes on in that order."}, f.First)
	d.Note = components.Filled(components.Field{Name: "note", Label: "Weather and greens, in a line", Hint: "May be left out."}, f.Note)
	d.Taken = components.Filled(components.Field{Name: "take", Label: "Take over another course",
		Hint: "Its name, tees and card then replace what stands here, on the holes that it has."}, f.Take)
	fields := []components.Field{d.Day, d.Course, d.Tee, d.Target, d.Par18, d.First, d.Note, d.Taken}
	for _, h := range f.Holes {
		row := holeFields(h)
		d.Holes = append(d.Holes, row)
		fields = append(fields, row.Par, row.Length, row.Index)
	}
	d.Wrong = components.Summed(fields...)
	return d
}

// holeFields are the fields of a hole's card among those of other holes.
func holeFields(h form.HoleCard) HoleFields {
	field := func(name, label, mode string) components.Field {
		return components.Field{Name: form.HoleField(name, h.Number), Label: fmt.Sprintf("%s of hole %d", label, h.Number), Mode: mode}
	}
	return HoleFields{Number: fmt.Sprint(h.Number), Par: components.Filled(field(form.FieldPar, "Par", "numeric"), h.Par),
		Length: components.Filled(field(form.FieldLength, "Length", "decimal"), h.Length),
		Index:  components.Filled(field(form.FieldIndex, "Stroke index", "numeric"), h.Index)}
}
