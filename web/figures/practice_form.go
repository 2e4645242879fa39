package figures

import (
	"fmt"
	"slices"
	"strings"

	"strokeledger/analysis/account"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/practice"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// PracticeForm is the form that sets something to practise.
type PracticeForm struct {
	At      string // where it is sent
	Round   string // the round whose page it stands on, to come back to; empty elsewhere
	Fields  []components.Field
	Figure  components.Field // which figure it is to move
	Rows    []components.Choice
	Drill   components.Field // which drill of the list it is
	Drills  []components.Choice
	Own     []components.Field  // of a drill of one's own
	OwnOpen bool                // shown opened, since something is typed there
	Also    []components.Choice // other pupils of the reader; none for a player
	Open    bool                // shown opened, since something in it was wrong
	Wrong   components.Summary
}

// PracticeFormInput is what the form is made of.
type PracticeFormInput struct {
	Whose    paths.Whose
	Boundary golf.Distance // where the player's short game ends
	Units    form.Units    // of the reader
	Today    golf.Date
	Round    golf.RoundID     // 0 where the form is not on the page of a round
	Returned *form.Assignment // as it came back; nil for a new one
	Others   []OtherPupil     // for whom the same can be set
}

// OtherPupil is another pupil of the reader.
type OtherPupil struct {
	ID   golf.PlayerID
	Name string
}

// daysToPractise is how long practice is set for, unless another day is chosen.
const daysToPractise = 7

// NewPracticeForm makes the form.
func NewPracticeForm(in PracticeFormInput) PracticeForm {
	typed := form.Assignment{Due: form.DayOf(in.Today.AddDays(daysToPractise))}
	if in.Returned != nil {
		typed = *in.Returned
	}
	f := PracticeForm{At: in.Whose.Assignments(), Open: in.Returned != nil, Fields: []components.Field{
		components.Filled(components.Field{Name: "what", Label: "What to practise", Hint: "May be left empty with a drill from the list."}, typed.What),
		components.Filled(components.Field{Name: "amount", Label: "How much", Hint: "For example, 40 putts or 20 minutes."}, typed.Amount),
		components.Filled(components.Field{Name: "pass_mark", Label: "Pass mark", Hint: "For example, 32 of 40. Left empty with a drill from the list, it follows from the target."}, typed.PassMark),
		components.Filled(components.Field{Name: "due", Label: "By when", Type: "date"}, typed.Due),
	}}
	if in.Round != 0 {
		f.Round = fmt.Sprint(in.Round)
	}
	f.Figure = components.Filled(components.Field{Name: "figure", Label: "Which figure should it move?", Hint: "The overview shows it before and since."}, typed.Figure)
	f.Rows = figureChoices(in, typed.Figure.Text)
	f.drills(in, typed)
	f.Wrong = components.Summed(slices.Concat(f.Fields, []components.Field{f.Figure}, f.Own)...)
	return f
}

// drills fills in the drills that can be set, a drill of one's own, and for whom else.
func (f *PracticeForm) drills(in PracticeFormInput, typed form.Assignment) {
	f.Drill = components.Filled(components.Field{Name: "drill", Label: "Drill"}, typed.Drill)
	f.Drills = []components.Choice{{Name: "none: in my own words", Chosen: typed.Drill.Text == ""}}
	for _, d := range practice.Drills() {
		f.Drills = append(f.Drills, components.Choice{Value: d.Key, Name: d.Name, Chosen: d.Key == typed.Drill.Text})
	}
	f.Own = []components.Field{
		components.Filled(components.Field{Name: "set_up", Label: "How it is set up", Hint: "In one line."}, typed.SetUp),
		components.Filled(components.Field{Name: "tries", Label: "Tries", Mode: "numeric"}, typed.Tries),
		components.Filled(components.Field{Name: "mark", Label: "How many must count", Mode: "numeric"}, typed.Mark),
	}
	f.OwnOpen = typed.SetUp.Text+typed.Tries.Text+typed.Mark.Text != ""
	for _, o := range in.Others {
		f.Also = append(f.Also, components.Choice{Value: fmt.Sprint(o.ID), Name: o.Name, Chosen: slices.Contains(typed.Also, o.ID)})
	}
}

// figureChoices are the figures that a practice can move: the parts of the game and
// their bands.
func figureChoices(in PracticeFormInput, chosen string) []components.Choice {
	all := []components.Choice{{Name: "none", Chosen: chosen == ""}}
	for _, row := range compare.Rows(in.Boundary)[1:] {
		all = append(all, components.Choice{Value: row.String(), Name: RowName(row, in.Units), Chosen: chosen == row.String()})
	}
	return all
}

// RowName names a part of the game, or one of its bands with it.
func RowName(row compare.Row, units form.Units) string {
	name := words.Capital(row.Category.String())
	if row.Band == (account.Band{}) {
		return name
	}
	return name + ", " + strings.ToLower(words.Band(row.Band, units))
}
