package entry

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
)

// threeHoles is a card of three holes as typed, the last without a length.
func threeHoles() form.Card {
	card := form.Card{Holes: 3}
	card.Rows[0] = form.CardRow{Par: "4", Length: "384", Index: "2"}
	card.Rows[1] = form.CardRow{Par: "3", Length: "158", Index: "3"}
	card.Rows[2] = form.CardRow{Par: "5"}
	return card
}

func TestAddCoursePage(t *testing.T) {
	for _, c := range []struct {
		like       LikeCourse
		lede, save string
	}{
		{LikeCourse{}, "Start with one set of tees. You can copy it later to add others.", "/courses/new"},
		{LikeCourse{ID: 3, Name: "Harrow Fen, white"}, "Par and stroke index are copied from Harrow Fen, white. Its lengths are shown in grey.", "/courses/new?from=3"},
	} {
		page := NewAddCoursePage(layout.Page{}, form.CourseForm{Card: form.Card{Holes: 18}}, c.like, form.StandardUnits)
		if page.Title != "Add a course" || page.Lede != c.lede || page.Editor.Save != c.save || page.Script != "course.js" {
			t.Errorf("%q, %q, %q", page.Title, page.Lede, page.Editor.Save)
		}
	}
}

func TestCourseEditor(t *testing.T) {
	e := NewCourseEditor(form.CourseForm{Card: threeHoles()}, form.Card{}, "/courses/3", form.StandardUnits)
	if e.Unit != "yd" || e.Count != "2 of 3 holes, par 7, 542 yd" || e.NinesOpen || e.PasteOpen || e.Summary.Heading != "" || len(e.AskedAll) != 0 {
		t.Errorf("%+v", e)
	}
	if len(e.Sets) != 2 || e.Sets[0].Name != "Holes 1 to 9" || len(e.Sets[0].Rows) != 9 || e.Sets[1].Name != "Holes 10 to 18" || len(e.Sets[1].Rows) != 9 {
		t.Fatalf("%+v", e.Sets)
	}
	want := CardFields{Number: "2", Fields: []CardField{
		{Name: "par-2", Label: "Par of hole 2", Value: "3", Mode: "numeric"},
		{Name: "length-2", Label: "Length of hole 2 in yd", Value: "158", Mode: "decimal"},
		{Name: "index-2", Label: "Stroke index of hole 2", Value: "3", Mode: "numeric"}}}
	if diff := cmp.Diff(want, e.Sets[0].Rows[1]); diff != "" {
		t.Error(diff)
	}
	var chosen []string
	for _, s := range e.Sizes {
		if s.Chosen {
			chosen = append(chosen, s.Name)
		}
	}
	if diff := cmp.Diff([]string{"3 holes"}, chosen); diff != "" {
		t.Error(diff)
	}
	if e.Sizes[0].Name != "18 holes" || e.Sizes[1].Name != "9 holes" || e.Sizes[2].Name != "1 hole" || len(e.Sizes) != 18 {
		t.Errorf("%+v", e.Sizes)
	}
}

// What keeps a course from being saved is summed up in the order of the form. A
// question can be answered all at once if nothing else is wrong.
func TestCourseEditorSummary(t *testing.T) {
	question := form.CardProblem{Field: "length-3", Text: "Hole 3 is a par 5 of 12 yd.", Answer: "length-3:5:12"}
	mistake := form.CardProblem{Field: "par-2", Text: "Par 9 is not allowed."}
	slope := form.Ratings{Slope: form.Number{Text: "300", Problem: "Allowed: 55 to 155."}}
	for name, c := range map[string]struct {
		in      form.CourseForm
		heading string
		links   []string
		answers []string
		sound   bool
	}{
		"nothing":      {form.CourseForm{}, "", nil, nil, true},
		"one mistake":  {form.CourseForm{Whole: slope}, "Not saved yet: 1 thing to fix.", []string{"Slope rating: Allowed: 55 to 155."}, nil, false},
		"pasted text":  {form.CourseForm{Paste: "x", PasteProblems: []string{"Line 1: “x” is no par."}}, "Not saved yet: 1 thing to fix.", []string{"Line 1: “x” is no par."}, nil, false},
		"a question":   {form.CourseForm{CardSaid: []form.CardProblem{question}}, "Not saved yet: 1 question. Correct it below, or save anyway.", []string{"Hole 3 is a par 5 of 12 yd."}, []string{"length-3:5:12"}, false},
		"both":         {form.CourseForm{Whole: slope, CardSaid: []form.CardProblem{mistake, question}}, "Not saved yet: 2 things to fix and 1 question.", []string{"Slope rating: Allowed: 55 to 155.", "Par 9 is not allowed.", "Hole 3 is a par 5 of 12 yd."}, nil, false},
		"an answer":    {form.CourseForm{CardSaid: []form.CardProblem{question}, Agreed: []string{"length-3:5:12"}}, "", nil, []string{"length-3:5:12"}, true},
		"other answer": {form.CourseForm{CardSaid: []form.CardProblem{question}, Agreed: []string{"length-3:5:13"}}, "Not saved yet: 1 question. Correct it below, or save anyway.", []string{"Hole 3 is a par 5 of 12 yd."}, []string{"length-3:5:12", "length-3:5:13"}, false},
	} {
		c.in.Card.Holes = 9
		e := NewCourseEditor(c.in, form.Card{}, "/courses/new", form.StandardUnits)
		var links []string
		for _, l := range e.Summary.Links {
			links = append(links, l.Text)
		}
		if e.Summary.Heading != c.heading || c.in.Sound() != c.sound {
			t.Errorf("%s: %q, sound %v", name, e.Summary.Heading, c.in.Sound())
		}
		if diff := cmp.Diff(c.links, links); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
		if diff := cmp.Diff(c.answers, e.AskedAll); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}

// A problem stands under the row of its hole, and its field points to it.
func TestCourseEditorRows(t *testing.T) {
	in := form.CourseForm{Card: threeHoles(), Agreed: []string{"length-1:4:384"}, CardSaid: []form.CardProblem{
		{Field: "length-1", Text: "Is hole 1 that short?", Answer: "length-1:4:384"}, {Field: "length-1", Text: "Unlike the other tees."}, {Field: "holes", Text: "Choose 1 to 18."}}}
	e := NewCourseEditor(in, threeHoles(), "/courses/new", form.StandardUnits)
	row := e.Sets[0].Rows[0]
	want := []CardSaid{{ID: "length-1-wrong", Text: "Is hole 1 that short?", Answer: "length-1:4:384", Agreed: true}, {ID: "length-1-wrong-2", Text: "Unlike the other tees."}}
	if diff := cmp.Diff(want, row.Said); diff != "" {
		t.Error(diff)
	}
	if length := row.Fields[1]; length.Said != "length-1-wrong" || length.Hint != "384" || row.Fields[0].Said != "" {
		t.Errorf("%+v", row.Fields)
	}
	if diff := cmp.Diff([]CardSaid{{ID: "holes-wrong", Text: "Choose 1 to 18."}}, e.Size); diff != "" {
		t.Error(diff)
	}
}

// The ratings of each nine show only if one of them is wrong, and the text of a
// card only while it is not used.
func TestCourseEditorFolds(t *testing.T) {
	in := form.CourseForm{Paste: "4 384 2", Back: form.Ratings{Slope: form.Number{Problem: "Allowed: 55 to 155."}}}
	in.Card.Holes = 18
	e := NewCourseEditor(in, form.Card{}, "/courses/new", form.StandardUnits)
	if !e.NinesOpen || !e.PasteOpen || e.Paste.Value != "4 384 2" {
		t.Errorf("%v, %v, %q", e.NinesOpen, e.PasteOpen, e.Paste.Value)
	}
	want := []components.SummaryLink{{At: "#back_slope", Text: "Slope of the back nine: Allowed: 55 to 155."}}
	if diff := cmp.Diff(want, e.Summary.Links); diff != "" {
		t.Error(diff)
	}
}
