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

// CoursesPage lists the courses of the server.
type CoursesPage struct {
	layout.Page
	Lede string
	Rule string // who sees and edits what
	Rows []CourseRow
	New  string
}

// CourseRow is one course of the list.
type CourseRow struct {
	At, Name, Holes, Par, Length, Times string
	Said                                string // its tees, and whether it is the player's
}

// ListedCourse is what a row is made of.
type ListedCourse struct {
	ID               golf.CourseID
	Name, Tee        string
	Holes, Size, Par int // holes known so far, and in all
	Length           golf.Distance
	Mine             bool
	Times            int // rounds of the player on it
}

// NewCoursesPage makes the page.
func NewCoursesPage(page layout.Page, all []ListedCourse, units form.Units) CoursesPage {
	page.Title, page.Here = "Courses", paths.Courses
	p := CoursesPage{Page: page, New: paths.NewCourse, Lede: "No course yet. Add yours once: par and length of each hole.",
		Rule: "Everyone on this server can play these courses. Only the person who added a course can edit it. A round keeps its own copy of the card."}
	most := ListedCourse{}
	for _, c := range all {
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
		if c.Times > most.Times {
			most = c
		}
		p.Rows = append(p.Rows, row)
	}
	if len(all) > 0 {
		p.Lede = words.Capital(words.Spelled(len(all))) + " " + words.OneOrMany(len(all), "course", "courses")
		if most.Times > 0 {
			p.Lede += fmt.Sprintf("; %s on %s", words.Plural(most.Times, "round", "rounds"), most.Name)
		}
		p.Lede += "."
	}
	return p
}

// soFar says how much is known of a course that is described while it is played.
func soFar(known, size int) string {
	return fmt.Sprintf("%d of %s so far", known, words.Plural(size, "hole", "holes"))
}

// CourseChoice names a course to choose.
func CourseChoice(c ListedCourse, chosen bool) components.Choice {
	name := words.Joined(c.Name, c.Tee)
	if c.Holes < c.Size {
		name += ", " + soFar(c.Holes, c.Size)
	} else {
		name += fmt.Sprintf(", %s, par %d", words.Plural(c.Holes, "hole", "holes"), c.Par)
	}
	return components.Choice{Value: fmt.Sprint(c.ID), Name: name, Chosen: chosen}
}
