package play

import (
	"cmp"
	"fmt"
	"slices"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// IndexInput is what the first page of playing is made of.
type IndexInput struct {
	Whose   paths.Whose
	Player  string // the player's name, for a coach
	Target  float64
	Courses []PlayedCourse // by name
}

// PlayedCourse is a course with how much of it is drawn.
type PlayedCourse struct {
	ID    golf.CourseID
	Name  string // with its tees
	Holes int
	Drawn int // holes
	Times int // rounds of the player
}

// IndexPage lists the courses that can be prepared.
type IndexPage struct {
	layout.Page
	Heading string
	Lede    string
	Rows    []CourseRow
	Bag     string
	Add     string // where a course is added; empty for a coach
}

// CourseRow is a course of the list.
type CourseRow struct {
	Name   string
	Plan   string
	Chance string
	Draw   string // empty for a coach's look at a pupil
	Said   string
}

// NewIndexPage makes the page: courses that were played first, then those that are
// drawn.
func NewIndexPage(page layout.Page, in IndexInput) IndexPage {
	page.Title, page.Here = "Play", layout.Here(in.Whose, in.Whose.Play())
	p := IndexPage{Page: page, Heading: "Play", Bag: in.Whose.Bag(), Lede: "Where to aim, hole by hole, and how likely the target is. First draw the holes that cost you most."}
	if !in.Whose.Own {
		p.Heading, p.Lede = "Play: "+in.Player, "The plans of "+in.Player+": where to aim, hole by hole, and how likely the target is."
	} else {
		p.Add = paths.NewCourse
	}
	courses := slices.Clone(in.Courses)
	slices.SortStableFunc(courses, func(a, b PlayedCourse) int {
		return cmp.Or(cmp.Compare(b.Times, a.Times), cmp.Compare(b.Drawn, a.Drawn))
	})
	for _, c := range courses {
		row := CourseRow{Name: c.Name, Plan: in.Whose.RoundPlan(c.ID), Chance: in.Whose.Chance(c.ID), Said: courseSaid(c), Draw: paths.Pictures(c.ID)}
		p.Rows = append(p.Rows, row)
	}
	if len(p.Rows) == 0 {
		p.Lede = "There is no course yet. Add one, then draw its holes."
	}
	return p
}

func courseSaid(c PlayedCourse) string {
	drawn := "no hole drawn"
	switch {
	case c.Drawn > 0 && c.Drawn == c.Holes:
		drawn = "every hole drawn"
	case c.Drawn > 0:
		drawn = fmt.Sprintf("%d of %d holes drawn", c.Drawn, c.Holes)
	}
	if c.Times == 0 {
		return capital(drawn)
	}
	return capital(words.SpelledPlural(c.Times, "round", "rounds")) + ", " + drawn
}

// Empty reports whether there is nothing to list.
func (p IndexPage) Empty() bool { return len(p.Rows) == 0 }

// Links lead to what can be done with a course.
func (r CourseRow) Links() []components.Link {
	return []components.Link{{Name: "Plan", At: r.Plan}, {Name: "Chance", At: r.Chance}, {Name: "Draw", At: r.Draw}}
}
