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

// BeginPage is where a round is started, or an unfinished one continued.
type BeginPage struct {
	layout.Page
	Open    []OpenRound         // unfinished rounds, the latest first; may be empty
	Courses []components.Choice // empty if there are none on the server
	Which   components.Field    // chooses one of Courses
	Course  string              // address that adds a course
	Begin   BeginFields         // for one of Courses
	New     []components.Field  // name, tees and size of a course that is filled in as it is played
	Fresh   BeginFields         // for that course

	BeginWrong components.Summary // what is wrong with the form for one of Courses
	FreshWrong components.Summary // what is wrong with the form for a new course
}

// BeginFields are the fields that describe a round on any course.
type BeginFields struct {
	Date       components.Field  // when it was played
	First      components.Field  // number of the first hole played
	Conditions components.Field  // conditions, optional
	Part       components.Radios // all holes, or one nine
}

// OpenRound is an unfinished round.
type OpenRound struct {
	At   string // address of the hole to continue at
	Text string // “2 May 2026, Harrow Fen: continue at hole 7, 12 holes to go”
}

// NewOpenRound says where a round continues: at hole, with left holes to go.
func NewOpenRound(id golf.RoundID, date golf.Date, course string, hole, left int) OpenRound {
	return OpenRound{paths.Hole(id, hole), fmt.Sprintf("%s, %s: continue at hole %d, %s to go", date.Time().Format("2 Jan 2006"), course, hole, words.Plural(left, "hole", "holes"))}
}

// NewBeginPage makes the page. in is what was typed, or what a new form starts
// with; courses are those to choose from.
func NewBeginPage(page layout.Page, in form.RoundStart, courses []components.Choice, open []OpenRound) BeginPage {
	page.Title, page.Here = "Enter a round", paths.NewRound
	n := BeginPage{Page: page, Open: open, Courses: courses, Which: components.Filled(components.Field{Name: "course", Label: "Course"}, in.Course), Course: paths.NewCourse,
		Begin: beginFields(in, !in.Fresh, ""), Fresh: beginFields(in, in.Fresh, "new_"),
		New: []components.Field{
			components.Filled(components.Field{Name: "new_course", Label: "Course", Hint: "You fill in par and length as you enter each hole."}, in.NewName),
			components.Filled(components.Field{Name: "new_tee", Label: "Tees"}, in.NewTee),
			components.Filled(components.Field{Name: "new_holes", Label: "Holes", Mode: "numeric", Hint: "How many the course has: 1 to 18."}, in.NewHoles),
		}}
	n.BeginWrong, n.FreshWrong = components.Summed(n.Which), components.Summed(n.New...)
	n.Begin.sum(&n.BeginWrong)
	n.Fresh.sum(&n.FreshWrong)
	n.BeginWrong, n.FreshWrong = n.BeginWrong.Saying(notBegun), n.FreshWrong.Saying(notBegun)
	return n
}

const notBegun = "The round was not started."

// sum adds what is wrong with the fields, in their order.
func (b BeginFields) sum(s *components.Summary) {
	s.Add(b.Date.ID, b.Date.Label, b.Date.Problem)
	b.Part.AddTo(s)
	s.Add(b.First.ID, b.First.Label, b.First.Problem)
	s.Add(b.Conditions.ID, b.Conditions.Label, b.Conditions.Problem)
}

// beginFields fills the fields of one of the two forms; problems belong to the
// one that was sent.
func beginFields(in form.RoundStart, sent bool, prefix string) BeginFields {
	if !sent {
		in.Date.Problem, in.First.Problem, in.Conditions.Problem, in.Part.Problem = "", "", "", ""
	}
	return BeginFields{
		Date: components.Filled(components.Field{Name: "date", ID: prefix + "date", Label: "Date played", Type: "date"}, in.Date),
		First: components.Filled(components.Field{Name: "first_hole", ID: prefix + "first_hole", Label: "First hole", Mode: "numeric",
			Hint: "Where you started; the rest follow in order. Leave it at 1 to start a back nine at 10."}, in.First),
		Conditions: components.Filled(components.Field{Name: "conditions", ID: prefix + "conditions", Label: "Conditions", Hint: "Weather and greens, in one line. Optional."}, in.Conditions),
		Part: components.Picked(components.Radios{Name: "part", ID: prefix + "part", Label: "Holes", All: []components.Choice{
			{Value: form.AllHoles.String(), Name: "all"}, {Value: form.FrontNine.String(), Name: "front nine"}, {Value: form.BackNine.String(), Name: "back nine"}}}, in.Part),
	}
}
