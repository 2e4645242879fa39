package coach

import (
	"fmt"
	"slices"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/practice"
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
	f := AssignForm{At: in.Whose.Assignments(), Open: back != nil, Drill: components.Field{Name: "drill", Label: "Drill"}, Drills: drillChoices(typed.Drill.Text), Also: alsoChoices(in.Others, typed.Also), Fields: []components.Field{
		components.Filled(components.Field{Name: "what", Label: "What to practise", Hint: "May be left empty with a drill from the list."}, typed.What),
		components.Filled(components.Field{Name: "amount", Label: "How much", Hint: "For example, 40 putts or 20 minutes."}, typed.Amount),
		components.Filled(components.Field{Name: "pass_mark", Label: "Pass mark", Hint: "For example, 32 of 40. For a drill from the list it follows from the target when left empty."}, typed.PassMark),
		components.Filled(components.Field{Name: "due", Label: "By when", Type: "date"}, typed.Due),
	}}
	f.Own = []components.Field{
		components.Filled(components.Field{Name: "set_up", Label: "How it is set up", Hint: "In one line."}, typed.SetUp),
		components.Filled(components.Field{Name: "tries", Label: "Tries", Mode: "numeric"}, typed.Tries),
		components.Filled(components.Field{Name: "mark", Label: "How many must count", Mode: "numeric"}, typed.Mark),
	}
	f.OwnOpen = typed.SetUp.Text+typed.Tries.Text+typed.Mark.Text != ""
	f.Wrong = components.Summed(append(slices.Clone(f.Fields), f.Own...)...)
	return f
}

// drillChoices are the drills that can be set, and none.
func drillChoices(chosen string) []components.Choice {
	all := []components.Choice{{Name: "none: in my own words", Chosen: chosen == ""}}
	for _, d := range practice.Drills() {
		all = append(all, components.Choice{Value: d.Key, Name: d.Name, Chosen: d.Key == chosen})
	}
	return all
}

// alsoChoices are the others for whom the same can be set.
func alsoChoices(others []Other, chosen []golf.PlayerID) []components.Choice {
	var all []components.Choice
	for _, o := range others {
		all = append(all, components.Choice{Value: fmt.Sprint(o.ID), Name: o.Name, Chosen: slices.Contains(chosen, o.ID)})
	}
	return all
}
