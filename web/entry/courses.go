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

// CoursesPage lists the courses on the server.
type CoursesPage struct {
	layout.Page
	Lede string      // how many there are, and which the player has played most
	Rule string      // who can play and edit them
	Rows []CourseRow // by name; may be empty
	New  string      // address that adds one
}

// CourseRow is one course of the list.
type CourseRow struct {
	At     string // address
	Name   string
	Said   string // “white, yours”: its tees, and that the player added it; may be empty
	Holes  string // “18”, “6 of 18 holes so far”
	Par    string // of all holes; empty until all are known
	Length string // of all holes: “6,510 yd”; empty until all are known
	Times  string // the player's rounds on it; empty for none
}

// ListedCourse is what a row is made of.
type ListedCourse struct {
	ID     golf.CourseID
	Name   string
	Tee    string        // may be empty
	Holes  int           // known so far
	Size   int           // in all
	Par    int           // of the known holes
	Length golf.Distance // of the known holes
	Mine   bool          // the player added it
	Times  int           // the player's rounds on it
}

// NewCoursesPage makes the page.
func NewCoursesPage(page layout.Page, all []ListedCourse, units form.Units) CoursesPage {
	page.Title, page.Here = "Courses", paths.Courses
	p := CoursesPage{Page: page, New: paths.NewCourse, Lede: "No courses yet. Add yours once: the par and length of each hole.",
		Rule: "Everyone on this server can play these courses. Only the person who added a course can edit it. A round keeps its own copy of the card."}
	most := ListedCourse{}
	for _, c := range all {
		p.Rows = append(p.Rows, courseRow(c, units))
		if c.Times > most.Times {
			most = c
		}
	}
	if len(all) > 0 {
		p.Lede = words.Capital(words.SpelledPlural(len(all), "course", "courses"))
		if most.Times > 0 {
			p.Lede += fmt.Sprintf(", %s %s", most.Name, times(most.Times))
		}
		p.Lede += "."
	}
	return p
}

// times says how often a course was played.
func times(n int) string {
	switch n {
	case 1:
		return "once"
	case 2:
		return "twice"
	}
	return words.Spelled(n) + " times"
}

func courseRow(c ListedCourse, units form.Units) CourseRow {
	row := CourseRow{At: paths.Course(c.ID), Name: c.Name, Said: c.Tee, Holes: fmt.Sprint(c.Holes), Par: fmt.Sprint(c.Par), Length: words.TotalLength(c.Length, units)}
	if c.Mine {
		row.Said = words.Joined(c.Tee, "yours")
	}
	if c.Holes < c.Size {
		row.Holes, row.Par, row.Length = soFar(c.Holes, c.Size), "", ""
	}
	if c.Times > 0 {
		row.Times = fmt.Sprint(c.Times)
	}
	return row
}

// soFar says how much of a card is known, for a course whose holes are filled in
// as they are played.
func soFar(known, size int) string {
	return fmt.Sprintf("%d of %s so far", known, words.Plural(size, "hole", "holes"))
}

// CourseChoice offers a course to play.
func CourseChoice(c ListedCourse, chosen bool) components.Choice {
	name := words.Joined(c.Name, c.Tee)
	if c.Holes < c.Size {
		name += ", " + soFar(c.Holes, c.Size)
	} else {
		name += fmt.Sprintf(", %s, par %d", words.Plural(c.Holes, "hole", "holes"), c.Par)
	}
	return components.Choice{Value: fmt.Sprint(c.ID), Name: name, Chosen: chosen}
}
