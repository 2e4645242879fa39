package form

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
)

// A form that came back is shown on the note it belongs to; every other note has
// an empty reply form, and its own text to edit.
func TestReturnedFormsOfNotes(t *testing.T) {
	typed := &Note{Body: Text{Text: "too long", Problem: "Allowed: 1 to 4000 characters."}}
	kept := Note{Body: TextOf("Aim left.")}
	for _, c := range []struct {
		name        string
		returned    Returned
		reply, edit Note
		onNotes     bool
	}{
		{"none", Returned{}, Note{}, kept, false},
		{"a reply to this note", Returned{Of: 3, Reply: typed}, *typed, kept, true},
		{"a reply to another", Returned{Of: 4, Reply: typed}, Note{}, kept, true},
		{"this note, edited", Returned{Of: 3, Edit: typed}, Note{}, *typed, true},
		{"another, edited", Returned{Of: 4, Edit: typed}, Note{}, kept, true},
		{"a new note", Returned{Note: typed}, Note{}, kept, true},
		{"a lesson", Returned{Lesson: typed}, Note{}, kept, true},
		{"a form that is no note", Returned{Of: 3, Assignment: &Assignment{}}, Note{}, kept, false},
	} {
		if diff := cmp.Diff(c.reply, c.returned.ReplyTo(3)); diff != "" {
			t.Errorf("%s: reply %s", c.name, diff)
		}
		if diff := cmp.Diff(c.edit, c.returned.EditOf(3, "Aim left.")); diff != "" {
			t.Errorf("%s: edit %s", c.name, diff)
		}
		if got := c.returned.OnNotes(); got != c.onNotes {
			t.Errorf("%s: on notes %v", c.name, got)
		}
	}
}

// An assignment whose result did not come back offers the day of today.
func TestReturnedResults(t *testing.T) {
	today := DayOf(golf.Date{Year: 2026, Month: 5, Day: 2})
	typed := Result{Day: Day{Text: "yesterday", Problem: "Not a day."}, Result: TextOf("7 of 10"), Passed: true}
	for _, c := range []struct {
		name     string
		returned Returned
		want     Result
	}{
		{"none", Returned{}, Result{Day: today}},
		{"of this assignment", Returned{Of: 5, Result: &typed}, typed},
		{"of another", Returned{Of: 6, Result: &typed}, Result{Day: today}},
	} {
		if diff := cmp.Diff(c.want, c.returned.ResultOf(5, today)); diff != "" {
			t.Errorf("%s: %s", c.name, diff)
		}
	}
}

// The first wrong field takes the focus; a card that is only being typed has
// nothing wrong yet.
func TestWrongFieldOfAHoleCard(t *testing.T) {
	wrong := "Allowed: something else."
	for _, c := range []struct {
		name               string
		par, length, index string // what is wrong
		want               string
	}{
		{"nothing", "", "", "", ""},
		{"the par", wrong, "", "", FieldPar},
		{"the length", "", wrong, "", FieldLength},
		{"the index", "", "", wrong, FieldIndex},
		{"two fields", "", wrong, wrong, FieldLength},
	} {
		card := HoleCard{Number: 7, Par: Whole{Text: "9", Problem: c.par}, Length: Length{Text: "3yd", Problem: c.length}, Index: Whole{Text: "19", Problem: c.index}}
		if got := card.Wrong(); got != c.want {
			t.Errorf("%s: %q", c.name, got)
		}
		typed := card.AsTyped()
		if want := (HoleCard{Number: 7, Par: Whole{Text: "9"}, Length: Length{Text: "3yd"}, Index: Whole{Text: "19"}}); typed != want {
			t.Errorf("%s: %+v", c.name, typed)
		}
	}
}
