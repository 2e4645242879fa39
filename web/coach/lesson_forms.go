package coach

import (
	"fmt"
	"slices"
	"strings"

	"strokeledger/analysis/account"
	"strokeledger/analysis/compare"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/words"
)

func newLessonForm(in LessonsInput) LessonForm {
	back := in.Returned.Lesson
	typed := form.Note{Day: form.DayOf(in.Today)}
	if back != nil {
		typed = *back
	}
	f := LessonForm{At: in.Whose.Notes(), CanHide: !in.Whose.Own, Private: typed.Private, Open: back != nil,
		Day:  components.Filled(components.Field{Name: "day", ID: "lesson_day", Label: "Day of the lesson", Type: "date"}, typed.Day),
		Body: components.FilledArea(components.Area{Name: "body", ID: "lesson", Label: "Lesson", Hint: "Lines that begin with a hyphen become a list."}, typed.Body)}
	f.Wrong = components.Summed(f.Day, f.Body.Field())
	return f
}

func newTargetPart(in LessonsInput) TargetPart {
	var typed form.Number
	if in.Returned.Target != nil {
		typed = *in.Returned.Target
	}
	t := TargetPart{Now: words.Plain(in.Target), AnswerAt: in.Whose.AnswerTarget(),
		Field: components.Filled(components.Field{Name: "target", Label: "Propose a target", Mode: "decimal", Hint: form.TargetRange() + ", for 18 holes of par 72."}, typed)}
	t.Wrong = components.Summed(t.Field).Saying("The target was not proposed.")
	if !in.Whose.Own {
		t.ProposeAt = in.Whose.Target()
	}
	for _, p := range in.Proposals {
		t.Proposed = append(t.Proposed, ProposedTarget{fmt.Sprint(p.CoachID), p.Coach, words.Plain(p.Target)})
	}
	return t
}

// daysToPractise is how long practice is set for, unless another day is chosen.
const daysToPractise = 7

func newAssignForm(in LessonsInput) AssignForm {
	back := in.Returned.Assignment
	typed := form.Assignment{Due: form.DayOf(in.Today.AddDays(daysToPractise))}
	if back != nil {
		typed = *back
	}
	f := AssignForm{At: in.Whose.Assignments(), Open: back != nil, Fields: []components.Field{
		components.Filled(components.Field{Name: "what", Label: "What to practise"}, typed.What),
		components.Filled(components.Field{Name: "amount", Label: "How much", Hint: "For example, 40 putts or 20 minutes."}, typed.Amount),
		components.Filled(components.Field{Name: "pass_mark", Label: "Pass mark", Hint: "For example, 32 of 40."}, typed.PassMark),
		components.Filled(components.Field{Name: "due", Label: "By when", Type: "date"}, typed.Due),
	}}
	f.Figure = components.Filled(components.Field{Name: "figure", Label: "Which figure should it move?", Hint: "The overview shows it before and since."}, typed.Figure)
	f.Rows = figureChoices(in, typed.Figure.Text)
	f.Wrong = components.Summed(append(slices.Clone(f.Fields), f.Figure)...)
	return f
}

// figureChoices are the figures that a practice can move: the parts of the game and
// their bands.
func figureChoices(in LessonsInput, chosen string) []components.Choice {
	all := []components.Choice{{Name: "none", Chosen: chosen == ""}}
	for _, row := range compare.Rows(in.Boundary)[1:] {
		all = append(all, components.Choice{Value: row.String(), Name: rowName(row, in.Units), Chosen: chosen == row.String()})
	}
	return all
}

// rowName names a part of the game, or one of its bands with it.
func rowName(row compare.Row, units form.Units) string {
	name := words.Capital(row.Category.String())
	if row.Band == (account.Band{}) {
		return name
	}
	return name + ", " + strings.ToLower(words.Band(row.Band, units))
}
