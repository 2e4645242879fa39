package entry

import (
	"fmt"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
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
	Date  components.Field  // when it was played
	First components.Field  // number of the first hole played
	Note  components.Field  // conditions, optional
	Part  components.Radios // all holes, or one nine
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

// OpenRound is an unfinished round.
type OpenRound struct {
	At   string // address of the hole to continue at
	Text string // “2 May 2026, Harrow Fen: continue at hole 7, 12 holes to go”
}

// NewOpenRound says where a round continues: at hole, with left holes to go.
func NewOpenRound(id golf.RoundID, date golf.Date, course string, hole, left int) OpenRound {
	return OpenRound{paths.Hole(id, hole), fmt.Sprintf("%s, %s: continue at hole %d, %s to go", date.Time().Format("2 Jan 2006"), course, hole, words.Plural(left, "hole", "holes"))}
}

// NewBeginPage makes the page that begins a round.
func NewBeginPage(page layout.Page, f BeginInput, open []OpenRound) BeginPage {
	page.Title, page.Here = "Enter a round", paths.NewRound
	n := BeginPage{Page: page, Open: open, Courses: f.Courses, Which: components.Field{Name: "course", Label: "Course", Problem: f.Problems["course"]}, Course: paths.NewCourse,
		Begin: beginFields(f, !f.New, ""), Fresh: beginFields(f, f.New, "new_"),
		New: []components.Field{
			{Name: "new_course", Label: "Course", Value: f.Values["new_course"], Hint: "You fill in par and length as you enter each hole.", Problem: f.Problems["new_course"]},
			{Name: "new_tee", Label: "Tees", Value: f.Values["new_tee"], Problem: f.Problems["new_tee"]},
			{Name: "new_holes", Label: "Holes", Value: f.Values["new_holes"], Mode: "numeric", Hint: "How many the course has: 1 to 18.", Problem: f.Problems["new_holes"]},
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
		Date: components.Field{Name: "date", ID: prefix + "date", Label: "Date played", Type: "date", Value: f.Values["date"], Problem: problems["date"]},
		First: components.Field{Name: "first_hole", ID: prefix + "first_hole", Label: "First hole", Mode: "numeric", Value: f.Values["first_hole"], Problem: problems["first_hole"],
			Hint: "Where you started; the rest follow in order. Leave it at 1 to start a back nine at 10."},
		Note: components.Field{Name: "note", ID: prefix + "note", Label: "Conditions", Value: f.Values["note"], Hint: "Weather and greens, in one line. Optional.", Problem: problems["note"]},
		Part: components.Radios{Name: "part", ID: prefix + "part", Label: "Holes", Problem: problems["part"],
			All: []components.Choice{{Value: PartAll, Name: "all", Chosen: part == PartAll}, {Value: PartFront, Name: "front nine", Chosen: part == PartFront}, {Value: PartBack, Name: "back nine", Chosen: part == PartBack}}},
	}
}
