package entry

import (
	"fmt"
	"time"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// CoursePage shows a course. The player who added it gets a form, others a table.
type CoursePage struct {
	layout.Page
	Heading    string              // name and tees
	Lede       string              // holes, par and length, or how much is known so far
	Begin      string              // address that starts a round here
	Tees       string              // address that adds other tees
	Strip      HoleStrip           // one hole over the reader's rounds here; without a heading when there is none
	Offer      CardOffer           // zero if every round has this card
	Editor     *CourseEditor       // nil for those who cannot edit the course
	Rows       []CourseHole        // the known holes; may be empty
	Facts      []components.Fact   // ratings that are known
	Remove     string              // address that removes the course; empty for those who cannot
	Merge      string              // address that merges it; empty for all but the steward, and without other courses
	Others     []components.Choice // to merge it into, the first asks to choose
	Same       components.Field    // chooses one of Others
	MergeWrong components.Summary  // why it was not merged
}

// CourseHole is a hole of the card.
type CourseHole struct {
	Number string
	Par    string
	Length string // “417 yd”
	Index  string // stroke index; empty if the card has none
}

// CardOffer offers the card of a course to rounds that have a different one.
type CardOffer struct {
	Heading string         // “Use this card in 2 rounds?”; empty for no offer
	At      string         // address that takes the answer
	Rounds  []OfferedRound // the player's rounds, at least one in an offer
}

// OfferedRound is a round with a different card.
type OfferedRound struct {
	ID   string // value in the form
	At   string // address
	Text string // “2 May 2026: 1 hole differs”
}

// OtherCard is what an offered round is made of.
type OtherCard struct {
	ID    golf.RoundID
	Day   time.Time
	Holes int // that differ
}

// CourseInput is what the page of a course is made of.
type CourseInput struct {
	ID        golf.CourseID
	Name      string
	Tee       string              // may be empty
	Size      int                 // number of holes, known or not
	Holes     []golf.CardHole     // the known ones, by number
	Strip     analysis.Strip      // of the reader's rounds here; without holes when there is none
	Target    float64             // the reader's, of 18 holes
	Mine      bool                // the reader added the course
	Steward   bool                // the reader is a steward
	Others    []components.Choice // courses it can be merged into; empty for all but the steward
	OtherCard []OtherCard         // the reader's rounds with a different card, the latest first
	MergeSaid string              // why a merge failed; empty if it did not
	Kept      form.CourseForm     // the course as saved
	Form      form.CourseForm     // the course as typed, or as saved
}

// NewCoursePage makes the page.
func NewCoursePage(page layout.Page, in CourseInput, units form.Units) CoursePage {
	name := words.Joined(in.Name, in.Tee)
	page.Title, page.Here = name, paths.Courses
	p := CoursePage{Page: page, Heading: name, Begin: paths.RoundOn(in.ID), Tees: paths.OtherTees(in.ID), Facts: ratingFacts(in.Kept), Offer: newCardOffer(in), Strip: newHoleStrip(in, units)}
	par, length := 0, golf.Distance(0)
	for _, h := range in.Holes {
		row := CourseHole{Number: fmt.Sprint(h.Number), Par: fmt.Sprint(h.Par), Length: form.WriteLength(h.Length, units.Far) + " " + units.Far.String()}
		if h.Index > 0 {
			row.Index = fmt.Sprint(h.Index)
		}
		p.Rows = append(p.Rows, row)
		par, length = par+h.Par, length+h.Length
	}
	if p.Lede = fmt.Sprintf("%s, par %d, %s.", words.Plural(in.Size, "hole", "holes"), par, words.TotalLength(length, units)); len(in.Holes) < in.Size {
		p.Lede = words.Capital(soFar(len(in.Holes), in.Size)) + "."
	}
	if in.Mine {
		editor := NewCourseEditor(in.Form, form.Card{}, paths.Course(in.ID), units)
		p.Editor, p.Script = &editor, "course.js"
	}
	if in.Mine || in.Steward {
		p.Remove = paths.RemoveCourse(in.ID)
	}
	if in.Steward && len(in.Others) > 0 {
		p.Merge, p.Others = paths.MergeCourse(in.ID), append([]components.Choice{{Name: "Choose a course"}}, in.Others...)
		p.Same = components.Field{Name: "same", Label: "This is the same course as", Problem: in.MergeSaid,
			Hint: "Rounds on this course move to that one and keep their cards. This course is then removed."}
		p.MergeWrong = components.Summed(p.Same).Saying("The courses were not merged.")
	}
	return p
}

// ratingFacts are the ratings that are known.
func ratingFacts(kept form.CourseForm) []components.Fact {
	var all []components.Fact
	for _, x := range []components.Fact{
		{Name: "Course rating", Value: kept.Whole.Rating.Text}, {Name: "Slope rating", Value: kept.Whole.Slope.Text},
		{Name: "Rating of the front nine", Value: kept.Front.Rating.Text}, {Name: "Slope of the front nine", Value: kept.Front.Slope.Text},
		{Name: "Rating of the back nine", Value: kept.Back.Rating.Text}, {Name: "Slope of the back nine", Value: kept.Back.Slope.Text},
	} {
		if x.Value != "" {
			all = append(all, x)
		}
	}
	return all
}

// newCardOffer offers the card to the rounds that differ.
func newCardOffer(in CourseInput) CardOffer {
	n := len(in.OtherCard)
	if n == 0 {
		return CardOffer{}
	}
	o := CardOffer{At: paths.UseCard(in.ID), Heading: fmt.Sprintf("Use this card in %s?", words.Plural(n, "round", "rounds"))}
	for _, r := range in.OtherCard {
		o.Rounds = append(o.Rounds, OfferedRound{ID: fmt.Sprint(r.ID), At: paths.Round(r.ID),
			Text: fmt.Sprintf("%s: %s", r.Day.Format("2 Jan 2006"), words.Plural(r.Holes, "hole differs", "holes differ"))})
	}
	return o
}
