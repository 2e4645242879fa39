package play

import (
	"fmt"
	"slices"

	"strokeledger/analysis/aim"
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// PicturesInput is what the list of a course's holes is made of.
type PicturesInput struct {
	Whose  paths.Whose
	Course golf.CourseID
	Name   string
	Holes  []PicturedHole
}

// PicturedHole is a hole with the picture that is kept of it.
type PicturedHole struct {
	Hole golf.CardHole
	File string // empty for none
}

// PicturesPage lists the holes of a course with what is drawn of them.
type PicturesPage struct {
	layout.Page
	Heading string
	Lede    string
	Rows    []PictureRow
	Sub     []components.Link
}

// PictureRow is a hole of the list.
type PictureRow struct {
	Number string
	At     string
	Card   string // par and length
	Drawn  string // what is drawn, in a line
	Act    string // what the link does
}

// NewPicturesPage makes the page.
func NewPicturesPage(page layout.Page, in PicturesInput) PicturesPage {
	page.Title, page.Here = "Draw "+in.Name, in.Whose.Play()
	p := PicturesPage{Page: page, Heading: "Draw " + in.Name, Sub: subLinks(in.Whose, in.Course, paths.Pictures(in.Course))}
	drawn := 0
	for _, h := range in.Holes {
		row := PictureRow{Number: fmt.Sprint(h.Hole.Number), At: paths.Picture(in.Course, h.Hole.Number), Card: fmt.Sprintf("par %d, %s yd", h.Hole.Par, yards(h.Hole.Length.Yards())), Drawn: "not drawn yet", Act: "Draw"}
		if picture, ok := PictureOf(h.Hole, h.File); ok {
			drawn++
			row.Drawn, row.Act = inShort(picture), "Change"
		}
		p.Rows = append(p.Rows, row)
	}
	switch {
	case len(in.Holes) == 0:
		p.Lede = "This course has no holes yet."
	case drawn == 0:
		p.Lede = "No hole is drawn yet. Begin with the one that costs you most; it takes a minute."
	default:
		p.Lede = fmt.Sprintf("%s of %d holes %s drawn.", words.Capital(words.Spelled(drawn)), len(in.Holes), words.OneOrMany(drawn, "is", "are"))
	}
	return p
}

// inShort names what is drawn, each kind once.
func inShort(p aim.Picture) string {
	var all []string
	add := func(has bool, name string) {
		if has && !slices.Contains(all, name) {
			all = append(all, name)
		}
	}
	add(len(p.Bends) > 0, "bend")
	add(len(p.Fairway) > 0, "fairway")
	for _, z := range p.Zones {
		add(true, kindWords[z.Kind])
	}
	add(p.Green.Drawn(), "green")
	if len(all) == 0 {
		return "nothing in it"
	}
	return words.List(all)
}

// subLinks lead to the pages of a course; here is where the reader is.
func subLinks(whose paths.Whose, course golf.CourseID, here string) []components.Link {
	all := []components.Link{{Name: "Plan of the round", At: whose.RoundPlan(course)}, {Name: "Chance of the target", At: whose.Chance(course)},
		{Name: "Bag", At: whose.Bag()}, {Name: "Draw holes", At: paths.Pictures(course)}}
	if !whose.Own {
		all = append(all, components.Link{Name: "Write a note", At: whose.Lessons()})
	}
	for i := range all {
		all[i].Here = all[i].At == here
	}
	return all
}
