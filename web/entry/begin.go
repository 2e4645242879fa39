package entry

import (
	"fmt"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
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

// BeginInput is what was typed, and what was wrong by field.
type BeginInput struct {
	Courses  []components.Choice
	New      bool // on a course that is told hole by hole
	Values   map[string]string
	Problems map[string]string
}

// The parts of a course that are played.
const (
	PartAll   = ""
	PartFront = "front"
	PartBack  = "back"
)

// OpenRound is a round that can be gone on with.
type OpenRound struct{ At, Text string }

// NewOpenRound says where a round goes on.
func NewOpenRound(id golf.RoundID, date golf.Date, course string, hole, left int) OpenRound {
	return OpenRound{paths.Hole(id, hole), fmt.Sprintf("%s, %s: on with hole %d, %s to go", date.Time().Format("2 Jan 2006"), course, hole, words.Plural(left, "hole", "holes"))}
}

// NewBeginPage makes the page that begins a round.
func NewBeginPage(page layout.Page, f BeginInput, open []OpenRound) BeginPage {
	page.Title, page.Here = "Enter a round", paths.NewRound
	n := BeginPage{Page: page, Open: open, Courses: f.Courses, Which: components.Field{Name: "course", Label: "Course", Problem: f.Problems["course"]}, Course: paths.NewCourse,
		Begin: beginFields(f, !f.New, ""), Fresh: beginFields(f, f.New, "new_"),
		New: []components.Field{
			{Name: "new_course", Label: "Course", Value: f.Values["new_course"], Hint: "Its par and lengths are asked for as you enter each hole.", Problem: f.Problems["new_course"]},
			{Name: "new_tee", Label: "Tees", Value: f.Values["new_tee"], Problem: f.Problems["new_tee"]},
			{Name: "new_holes", Label: "Holes", Value: f.Values["new_holes"], Mode: "numeric", Hint: "Of the course: 1 to 18.", Problem: f.Problems["new_holes"]},
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
func beginFields(f BeginInput, sent bool, prefix string) BeginFields {
	problems := f.Problems
	if !sent {
		problems = nil
	}
	part := f.Values["part"]
	return BeginFields{
		Date: components.Field{Name: "date", ID: prefix + "date", Label: "Day of play", Type: "date", Value: f.Values["date"], Problem: problems["date"]},
		First: components.Field{Name: "first_hole", ID: prefix + "first_hole", Label: "First hole", Mode: "numeric", Value: f.Values["first_hole"], Problem: problems["first_hole"],
			Hint: "Where you began; the holes follow from there. Left at 1, a back nine begins at 10."},
		Note: components.Field{Name: "note", ID: prefix + "note", Label: "Weather and greens, in a line", Value: f.Values["note"], Hint: "May be left out.", Problem: problems["note"]},
		Part: components.Radios{Name: "part", ID: prefix + "part", Label: "Holes", Problem: problems["part"],
			All: []components.Choice{{Value: PartAll, Name: "all", Chosen: part == PartAll}, {Value: PartFront, Name: "front nine", Chosen: part == PartFront}, {Value: PartBack, Name: "back nine", Chosen: part == PartBack}}},
	}
}
