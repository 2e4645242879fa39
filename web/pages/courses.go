package pages

import (
	"fmt"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// Courses lists the courses of the server.
type Courses struct {
	layout.Page
	Lede string
	Rows []CourseRow
	New  string
}

// CourseRow is one course of the list.
type CourseRow struct {
	At, Name, Tee, Holes, Par, Length string
	Mine                              bool
}

// ListedCourse is what a row is made of.
type ListedCourse struct {
	ID         golf.CourseID
	Name, Tee  string
	Holes, Par int
	Length     golf.Distance
	Mine       bool
}

// NewCourses makes the page.
func NewCourses(page layout.Page, all []ListedCourse, units form.Units) Courses {
	page.Title, page.Here = "Courses", paths.Courses
	p := Courses{Page: page, New: paths.NewCourse, Lede: "Courses are shared with everybody on this server. Whoever put one in may change it; rounds keep their own copy."}
	if len(all) == 0 {
		p.Lede = "No course yet. Put yours in once: par and length of its holes."
	}
	for _, c := range all {
		p.Rows = append(p.Rows, CourseRow{At: paths.Course(c.ID), Name: c.Name, Tee: c.Tee, Holes: fmt.Sprint(c.Holes), Par: fmt.Sprint(c.Par),
			Length: far(golf.Tee, c.Length, units), Mine: c.Mine})
	}
	return p
}

// CoursePage is where a course is put in, changed or looked at.
type CoursePage struct {
	layout.Page
	Heading string
	Save    string
	Fields  []components.Field
	Nines   []components.Field // ratings of each nine alone
	Text    string             // the card as text: a line a hole
	Wrong   string             // about the card
	Mine    bool
	Unit    string
}

// CourseForm is a course as it was typed, and what was wrong by field.
type CourseForm struct {
	Name, Tee, Rating, Slope, Card                 string
	FrontRating, FrontSlope, BackRating, BackSlope string
	Problems                                       map[string]string
}

// NewCoursePage makes the page; at is the address that saves.
func NewCoursePage(page layout.Page, f CourseForm, at string, mine bool, units form.Units) CoursePage {
	page.Title, page.Here = "Course", paths.Courses
	p := CoursePage{Page: page, Heading: "A course", Save: at, Text: f.Card, Wrong: f.Problems["card"], Mine: mine, Unit: units.Far.String()}
	p.Nines = []components.Field{
		{Name: "front_rating", Label: "Rating of the front nine", Value: f.FrontRating, Mode: "decimal", Problem: f.Problems["front_rating"]},
		{Name: "front_slope", Label: "Slope of the front nine", Value: f.FrontSlope, Mode: "decimal", Problem: f.Problems["front_slope"]},
		{Name: "back_rating", Label: "Rating of the back nine", Value: f.BackRating, Mode: "decimal", Problem: f.Problems["back_rating"]},
		{Name: "back_slope", Label: "Slope of the back nine", Value: f.BackSlope, Mode: "decimal", Problem: f.Problems["back_slope"]},
	}
	p.Fields = []components.Field{
		{Name: "name", Label: "Course", Value: f.Name, Problem: f.Problems["name"]},
		{Name: "tee", Label: "Tees", Value: f.Tee, Hint: "As the card calls them, may be left out.", Problem: f.Problems["tee"]},
		{Name: "rating", Label: "Course rating", Value: f.Rating, Mode: "decimal", Hint: "As on the card, may be left out.", Problem: f.Problems["rating"]},
		{Name: "slope", Label: "Slope", Value: f.Slope, Mode: "decimal", Hint: "55 to 155, may be left out.", Problem: f.Problems["slope"]},
	}
	return p
}
