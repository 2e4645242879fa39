package entry

import (
	"fmt"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// CoursePage is a course: its card, and for the player who added it the form.
type CoursePage struct {
	layout.Page
	Heading, Lede string
	Begin, Tees   string // addresses
	Offer         CardOffer
	Editor        *CourseEditor // nil for those who cannot edit it
	Rows          []CourseHole
	Facts         []components.Fact
	Remove        string // address, empty for those who may not
	Merge         string // address, empty for all but the steward
	Others        []components.Choice
	Same          components.Field // the course that it is merged into
	MergeWrong    components.Summary
}

// CourseHole is a hole of the card.
type CourseHole struct{ Number, Par, Length, Index string }

// CardOffer offers the course's card to rounds that have another.
type CardOffer struct {
	Heading, At string
	Rounds      []OfferedRound
}

// OfferedRound is a round with another card.
type OfferedRound struct{ ID, At, Text string }

// OtherCard is what it is made of.
type OtherCard struct {
	ID    golf.RoundID
	Day   time.Time
	Holes int // whose card differs
}

// CourseInput is a course to look at.
type CourseInput struct {
	ID        golf.CourseID
	Name, Tee string
	Size      int
	Holes     []golf.CardHole
	Facts     []components.Fact // ratings
	Mine      bool
	Steward   bool // who looks is
	Others    []components.Choice
	OtherCard []OtherCard
	MergeSaid string // what was wrong with a merge
	Form      CourseFormInput
}

// NewCoursePage makes the page.
func NewCoursePage(page layout.Page, c CourseInput, units form.Units) CoursePage {
	name := words.Joined(c.Name, c.Tee)
	page.Title, page.Here = name, paths.Courses
	p := CoursePage{Page: page, Heading: name, Begin: paths.RoundOn(c.ID), Tees: paths.OtherTees(c.ID), Facts: c.Facts, Offer: newCardOffer(c)}
	par, length := 0, golf.Distance(0)
	for _, h := range c.Holes {
		row := CourseHole{Number: fmt.Sprint(h.Number), Par: fmt.Sprint(h.Par), Length: form.WriteLength(h.Length, units.Far) + " " + units.Far.String()}
		if h.Index > 0 {
			row.Index = fmt.Sprint(h.Index)
		}
		p.Rows = append(p.Rows, row)
		par, length = par+h.Par, length+h.Length
	}
	if p.Lede = fmt.Sprintf("%s, par %d, %s.", words.Plural(c.Size, "hole", "holes"), par, words.TotalLength(length, units)); len(c.Holes) < c.Size {
		p.Lede = words.Capital(soFar(len(c.Holes), c.Size)) + "."
	}
	if c.Mine {
		editor := NewCourseEditor(c.Form, paths.Course(c.ID), units)
		p.Editor, p.Script = &editor, "course.js"
	}
	if c.Mine || c.Steward {
		p.Remove = paths.RemoveCourse(c.ID)
	}
	if c.Steward && len(c.Others) > 0 {
		p.Merge, p.Others = paths.MergeCourse(c.ID), append([]components.Choice{{Name: "Choose a course"}}, c.Others...)
		p.Same = components.Field{Name: "same", Label: "This is the same course as", Problem: c.MergeSaid,
			Hint: "The rounds on this one move there, with their cards as they are, and this one is removed."}
		p.MergeWrong = components.Summed(p.Same).Saying("The courses are not merged.")
	}
	return p
}

func newCardOffer(c CourseInput) CardOffer {
	n := len(c.OtherCard)
	if n == 0 {
		return CardOffer{}
	}
	o := CardOffer{At: paths.UseCard(c.ID), Heading: fmt.Sprintf("Use this card in %s?", words.Plural(n, "round", "rounds"))}
	for _, r := range c.OtherCard {
		o.Rounds = append(o.Rounds, OfferedRound{ID: fmt.Sprint(r.ID), At: paths.Round(r.ID),
			Text: fmt.Sprintf("%s: %s", r.Day.Format("2 Jan 2006"), words.Plural(r.Holes, "hole differs", "holes differ"))})
	}
	return o
}
