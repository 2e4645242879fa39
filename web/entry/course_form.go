package entry

import (
	"fmt"
	"slices"
	"strconv"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// CourseEditor is the form of a course.
type CourseEditor struct {
	Save      string              // address that saves
	Summary   components.Summary  // what is wrong or asked; empty for nothing
	Fields    []components.Field  // name, tees and ratings
	Nines     []components.Field  // ratings of each nine alone
	NinesOpen bool                // one of Nines is wrong, so they show
	Sizes     []components.Choice // numbers of holes to choose from
	Size      []CardSaid          // what is said of the number of holes
	Sets      []CardSet           // the card: front nine, back nine
	Unit      string              // of the lengths: yd or m
	Count     string              // how much of the card is filled in: “9 of 18 holes, par 36, 3,270 yd”
	AskedAll  []string            // the answers to every question, if nothing else is wrong; empty otherwise
	Paste     components.Area     // the card as text
	PasteOpen bool                // there is text that is not used yet, so Paste shows
	PasteSaid []string            // what is wrong with the text, one a line
}

// CardSet is one nine of the form.
type CardSet struct {
	Name  string       // “Holes 1 to 9”
	Class string       // class of its table; empty for none
	Rows  []CardFields // its holes, at most nine
}

// CardFields is the row of a hole.
type CardFields struct {
	Number string
	Fields []CardField // par, length, stroke index
	Said   []CardSaid  // problems and questions of the hole
}

// CardField is one input of a row.
type CardField struct {
	Name  string // name and id
	Label string // “Length of hole 3 in yd”
	Value string // as typed
	Hint  string // shown in grey: the length from other tees; empty for none
	Mode  string // keyboard of a phone: numeric or decimal
	Said  string // id of what is said of it; empty for nothing
}

// CardSaid is a problem or a question, shown with its field.
type CardSaid struct {
	ID     string // on the page
	Text   string
	Answer string // value that saves anyway; empty for a problem, which it cannot
	Agreed bool   // the player has ticked the answer
}

// courseForm is a course as it was typed, and the card of other tees to go by,
// empty for none.
type courseForm struct {
	form.CourseForm
	before form.Card
}

// NewCourseEditor makes the form; save is the address that takes it, and before
// the card of other tees to go by, empty for none.
func NewCourseEditor(typed form.CourseForm, before form.Card, save string, units form.Units) CourseEditor {
	f := courseForm{typed, before}
	e := CourseEditor{Save: save, Unit: units.Far.String(), Count: cardCount(f.Card, units)}
	e.Fields = []components.Field{
		components.Filled(components.Field{Name: "name", Label: "Course"}, f.Name),
		components.Filled(components.Field{Name: "tee", Label: "Tees", Hint: "As named on the card. Optional."}, f.Tee),
		components.Filled(components.Field{Name: "rating", Label: "Course rating", Mode: "decimal", Hint: "As on the card. Optional."}, f.Whole.Rating),
		components.Filled(components.Field{Name: "slope", Label: "Slope rating", Mode: "decimal", Hint: "55 to 155. Optional."}, f.Whole.Slope),
	}
	e.Nines = slices.Concat(nineFields("front", f.Front), nineFields("back", f.Back))
	e.NinesOpen = slices.ContainsFunc(e.Nines, func(n components.Field) bool { return n.Problem != "" })
	sizes := []int{18, 9}
	for n := 1; n < 18; n++ {
		if n != 9 {
			sizes = append(sizes, n)
		}
	}
	for _, n := range sizes {
		e.Sizes = append(e.Sizes, components.Choice{Value: strconv.Itoa(n), Name: words.Plural(n, "hole", "holes"), Chosen: n == f.Card.Holes})
	}
	e.Size = f.said("holes")
	e.Sets = []CardSet{{Name: "Holes 1 to 9"}, {Name: "Holes 10 to 18", Class: "back-nine"}}
	for i := range f.Card.Rows {
		set := &e.Sets[i/9]
		set.Rows = append(set.Rows, f.row(i, e.Unit))
	}
	e.Paste = components.Area{Name: "paste", ID: "paste", Label: "The card as text, one line per hole", Value: f.Paste}
	e.PasteSaid, e.PasteOpen = f.PasteProblems, f.Paste != ""
	e.Summary, e.AskedAll = f.summary(slices.Concat(e.Fields, e.Nines))
	return e
}

// nineFields are the ratings of a nine alone.
func nineFields(nine string, r form.Ratings) []components.Field {
	return []components.Field{
		components.Filled(components.Field{Name: nine + "_rating", Label: "Rating of the " + nine + " nine", Mode: "decimal"}, r.Rating),
		components.Filled(components.Field{Name: nine + "_slope", Label: "Slope of the " + nine + " nine", Mode: "decimal"}, r.Slope),
	}
}

// row makes the inputs of a hole, from 0.
func (f courseForm) row(i int, unit string) CardFields {
	n := strconv.Itoa(i + 1)
	typed, before := f.Card.Rows[i], f.before.Rows[i]
	row := CardFields{Number: n}
	for _, c := range []CardField{
		{Name: "par-" + n, Label: "Par of hole " + n, Value: typed.Par, Mode: "numeric"},
		{Name: "length-" + n, Label: "Length of hole " + n + " in " + unit, Value: typed.Length, Hint: before.Length, Mode: "decimal"},
		{Name: "index-" + n, Label: "Stroke index of hole " + n, Value: typed.Index, Mode: "numeric"},
	} {
		if said := f.said(c.Name); len(said) > 0 {
			c.Said = said[0].ID
			row.Said = append(row.Said, said...)
		}
		row.Fields = append(row.Fields, c)
	}
	return row
}

// said is what is said of a field of the card.
func (f courseForm) said(field string) []CardSaid {
	var all []CardSaid
	for _, p := range f.CardSaid {
		if p.Field == field {
			id := field + "-wrong"
			if len(all) > 0 {
				id = fmt.Sprintf("%s-%d", id, len(all)+1)
			}
			all = append(all, CardSaid{ID: id, Text: p.Text, Answer: p.Answer, Agreed: slices.Contains(f.Agreed, p.Answer)})
		}
	}
	return all
}

// summary lists everything that keeps the course from being saved, in the order
// of the fields, and the answers to all of it where it is questions only.
func (f courseForm) summary(fields []components.Field) (s components.Summary, answers []string) {
	refused, asked := 0, 0
	for _, field := range fields {
		if field.Problem != "" {
			refused++
			s.Add(field.Key(), field.Label, field.Problem)
		}
	}
	for _, p := range f.CardSaid {
		switch {
		case p.Answer == "":
			refused++
		case slices.Contains(f.Agreed, p.Answer):
			continue
		default:
			asked++
		}
		s.Add(p.Field, "", p.Text)
		answers = append(answers, p.Answer)
	}
	for _, text := range f.PasteProblems {
		refused++
		s.Add("paste", "", text)
	}
	switch {
	case refused > 0 && asked > 0:
		s.Heading = fmt.Sprintf("Not saved yet: %s to fix and %s.", words.Plural(refused, "thing", "things"), words.Plural(asked, "question", "questions"))
	case refused > 0:
		s.Heading = fmt.Sprintf("Not saved yet: %s to fix.", words.Plural(refused, "thing", "things"))
	case asked > 0:
		s.Heading = fmt.Sprintf("Not saved yet: %s. Correct it below, or save anyway.", words.Plural(asked, "question", "questions"))
	}
	if refused > 0 {
		return s, nil
	}
	return s, append(answers, f.Agreed...)
}

// cardCount says how much of a card is filled in.
func cardCount(c form.Card, units form.Units) string {
	holes, par, length := c.Tally(units.Far)
	return fmt.Sprintf("%d of %s, par %d, %s", holes, words.Plural(c.Holes, "hole", "holes"), par, words.TotalLength(length, units))
}

// AddCoursePage is where a course is added.
type AddCoursePage struct {
	layout.Page
	Lede   string // that it is one set of tees, or what was copied
	Editor CourseEditor
}

// LikeCourse is the course that par and stroke index are copied from. The zero
// value is none.
type LikeCourse struct {
	ID   golf.CourseID
	Name string
	Card form.Card // its lengths are shown, not copied
}

// NewAddCoursePage makes the page.
func NewAddCoursePage(page layout.Page, f form.CourseForm, like LikeCourse, units form.Units) AddCoursePage {
	page.Title, page.Here, page.Script = "Add a course", paths.Courses, "course.js"
	p := AddCoursePage{Page: page, Lede: "Start with one set of tees. You can copy it later to add others."}
	save := paths.NewCourse
	if like.ID > 0 {
		save = paths.OtherTees(like.ID)
		p.Lede = fmt.Sprintf("Par and stroke index are copied from %s. Its lengths are shown in grey.", like.Name)
	}
	p.Editor = NewCourseEditor(f, like.Card, save, units)
	return p
}
