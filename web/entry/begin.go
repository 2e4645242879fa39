package entry

import (
	"fmt"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// BeginPage is where a round begins.
type BeginPage struct {
	layout.Page
	Open    []OpenRound // begun and not entered to the end
	Courses []components.Choice
	Which   components.Field // of those courses
	Course  string           // address of making one
	Begin   BeginFields
	New     []components.Field // of a course that is told hole by hole
	Fresh   BeginFields        // the same as Begin, for that

	BeginWrong, FreshWrong components.Summary
}

// BeginFields are what is asked of a round on any course.
type BeginFields struct {
	Date, First, Note components.Field
	Part              components.Radios
}

// OpenRound is a round that can be gone on with.
type OpenRound struct{ At, Text string }

// NewOpenRound says where a round goes on.
func NewOpenRound(id golf.RoundID, date golf.Date, course string, hole, left int) OpenRound {
	return OpenRound{paths.Hole(id, hole), fmt.Sprintf("%s, %s: on with hole %d, %s to go", date.Time().Format("2 Jan 2006"), course, hole, words.Plural(left, "hole", "holes"))}
}

// NewBeginPage makes the page that begins a round; courses are those to choose
// from.
func NewBeginPage(page layout.Page, f form.RoundStart, courses []components.Choice, open []OpenRound) BeginPage {
	page.Title, page.Here = "Enter a round", paths.NewRound
	n := BeginPage{Page: page, Open: open, Courses: courses, Which: components.Filled(components.Field{Name: "course", Label: "Course"}, f.Course), Course: paths.NewCourse,
		Begin: beginFields(f, !f.Fresh, ""), Fresh: beginFields(f, f.Fresh, "new_"),
		New: []components.Field{
			components.Filled(components.Field{Name: "new_course", Label: "Course", Hint: "Its par and lengths are asked for as you enter each hole."}, f.NewName),
			components.Filled(components.Field{Name: "new_tee", Label: "Tees"}, f.NewTee),
			components.Filled(components.Field{Name: "new_holes", Label: "Holes", Mode: "numeric", Hint: "Of the course: 1 to 18."}, f.NewHoles),
		}}
	n.BeginWrong, n.FreshWrong = components.Summed(n.Which), components.Summed(n.New...)
	n.Begin.sum(&n.BeginWrong)
	n.Fresh.sum(&n.FreshWrong)
	n.BeginWrong, n.FreshWrong = n.BeginWrong.Saying(notBegun), n.FreshWrong.Saying(notBegun)
	return n
}

const notBegun = "The round is not begun yet."

// sum adds what is wrong with the fields, in their order.
func (b BeginFields) sum(s *components.Summary) {
	s.Add(b.Date.ID, b.Date.Label, b.Date.Problem)
	b.Part.AddTo(s)
	s.Add(b.First.ID, b.First.Label, b.First.Problem)
	s.Add(b.Note.ID, b.Note.Label, b.Note.Problem)
}

// beginFields fills the fields of one of the two forms; problems belong to the
// one that was sent.
func beginFields(f form.RoundStart, sent bool, prefix string) BeginFields {
	if !sent {
		f.Date.Problem, f.First.Problem, f.Note.Problem, f.Part.Problem = "", "", "", ""
	}
	return BeginFields{
		Date: components.Filled(components.Field{Name: "date", ID: prefix + "date", Label: "Day of play", Type: "date"}, f.Date),
		First: components.Filled(components.Field{Name: "first_hole", ID: prefix + "first_hole", Label: "First hole", Mode: "numeric",
			Hint: "Where you began; the holes follow from there. Left at 1, a back nine begins at 10."}, f.First),
		Note: components.Filled(components.Field{Name: "note", ID: prefix + "note", Label: "Weather and greens, in a line", Hint: "May be left out."}, f.Note),
		Part: components.Picked(components.Radios{Name: "part", ID: prefix + "part", Label: "Holes", All: []components.Choice{
			{Value: form.AllHoles.String(), Name: "all"}, {Value: form.FrontNine.String(), Name: "front nine"}, {Value: form.BackNine.String(), Name: "back nine"}}}, f.Part),
	}
}
