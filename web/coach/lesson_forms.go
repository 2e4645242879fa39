package coach

import (
	"fmt"

	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/words"
)

func newLessonForm(in LessonsInput) LessonForm {
	values, problems := in.Typed.At(form.FormLesson, 0)
	day := in.Today.String()
	if len(problems) > 0 {
		day = values["day"]
	}
	f := LessonForm{At: in.Whose.Notes(), CanHide: !in.Whose.Own, Private: values["private"] != "", Open: len(problems) > 0,
		Day:  components.Field{Name: "day", ID: "lesson_day", Label: "Day of the lesson", Type: "date", Value: day, Problem: problems["day"]},
		Body: components.Area{Name: "body", ID: "lesson", Label: "Lesson", Value: values["body"], Problem: problems["body"], Hint: "Lines that begin with a hyphen become a list."}}
	f.Wrong = components.Summed(f.Day, f.Body.Field())
	return f
}

func newTargetPart(in LessonsInput) TargetPart {
	values, problems := in.Typed.At(form.FormTarget, 0)
	t := TargetPart{Now: words.Plain(in.Target), AnswerAt: in.Whose.AnswerTarget(),
		Field: components.Field{Name: "target", Label: "Propose a target", Value: values["target"], Problem: problems["target"], Mode: "decimal", Hint: "68 to 110, for 18 holes of par 72."}}
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
	values, problems := in.Typed.At(form.FormAssign, 0)
	due := in.Today.AddDays(daysToPractise).String()
	if len(problems) > 0 {
		due = values["due"]
	}
	f := AssignForm{At: in.Whose.Assignments(), Open: len(problems) > 0, Fields: []components.Field{
		{Name: "what", Label: "What to practise", Value: values["what"], Problem: problems["what"]},
		{Name: "amount", Label: "How much", Value: values["amount"], Problem: problems["amount"], Hint: "For example, 40 putts or 20 minutes."},
		{Name: "pass_mark", Label: "Pass mark", Value: values["pass_mark"], Problem: problems["pass_mark"], Hint: "For example, 32 of 40."},
		{Name: "due", Label: "By when", Type: "date", Value: due, Problem: problems["due"]},
	}}
	f.Wrong = components.Summed(f.Fields...)
	return f
}
