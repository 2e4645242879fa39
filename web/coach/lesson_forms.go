package coach

import (
	"fmt"

	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/form"
	"strokeledger/web/notes"
	"strokeledger/web/words"
)

func newLessonForm(in LessonsInput) LessonForm {
	back := in.Returned.Lesson
	typed := form.Note{Day: form.DayOf(in.unwritten())}
	if back != nil {
		typed = *back
	}
	f := LessonForm{At: in.Whose.Notes(), CanHide: !in.Whose.Own, Share: notes.ShareWith(in.Name, in.Whose.Own), Open: back != nil || in.unwritten() != in.Today,
		Day:  components.Filled(components.Field{Name: "day", ID: "lesson_day", Label: "Day of the lesson", Type: "date"}, typed.Day),
		Body: components.FilledArea(components.Area{Name: "body", ID: "lesson", Label: "Lesson", Hint: "Lines that begin with a hyphen become a list."}, typed.Body)}
	f.Wrong, f.Phrases = components.Summed(f.Day, f.Body.Field()), notes.PhraseKeys(in.Phrases)
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

func newAssignForm(in LessonsInput) figures.PracticeForm {
	return figures.NewPracticeForm(figures.PracticeFormInput{Whose: in.Whose, Boundary: in.Boundary, Units: in.Units, Today: in.Today, Returned: in.Returned.Assignment, Others: in.Others})
}
