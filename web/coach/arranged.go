package coach

import (
	"fmt"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/notes"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// ArrangedLesson is a lesson that coach and pupil have arranged.
type ArrangedLesson struct {
	ID      int64
	CoachID golf.PlayerID // 0 when that account is gone
	Coach   string        // name
	Day     golf.Date
	Starts  *int   // minutes after midnight; nil where no time is set
	Place   string // may be empty
	Aim     string // may be empty
	Agreed  string // may be empty
	Written bool   // the reader can read a note on a lesson of that day
	Changes int    // how often it was changed
}

// LessonCoach is somebody with whom a lesson may be arranged.
type LessonCoach struct {
	ID   golf.PlayerID
	Name string
}

// ArrangedInput is what the part about arranged lessons is made of.
type ArrangedInput struct {
	Whose    paths.Whose
	Me       golf.PlayerID
	Name     string // the player's
	Today    golf.Date
	Lessons  []ArrangedLesson // the earliest first
	Coaches  []LessonCoach    // who have access; only read on the player's own page
	Returned form.Returned
}

// ArrangedPart is the part of a page about lessons to come, and about those that have
// not been written up.
type ArrangedPart struct {
	Cards   []ArrangedCard // the earliest first
	Empty   string         // that there is none; empty where there is one
	Arrange ArrangeForm
}

// Shown reports whether there is anything to read or to arrange.
func (p ArrangedPart) Shown() bool { return len(p.Cards) > 0 || p.Arrange.At != "" }

// ArrangedCard is one lesson.
type ArrangedCard struct {
	ID     string // place on the page
	When   string
	With   string
	Place  string // empty for none
	Aim    string // empty for none
	Agreed []notes.Paragraph
	File   string      // address of the file for a calendar; empty once it is over
	Write  string      // where it is written up; empty before its day, and once it is written up
	Change ArrangeForm // its address is empty for who may not change it
	Off    string      // where it is removed once it is over; empty before that, and for who may not
}

// ArrangeForm is the form of a lesson to come.
type ArrangeForm struct {
	At      string // where it is sent; empty for no form
	Title   string // opens the form
	Save    string // on its button
	Cancel  string // where the form that calls the lesson off is sent; empty for a new one
	Coach   string // id of the only coach; empty where there is a choice, or nothing to choose
	Coaches []components.Choice
	With    components.Field // the choice of a coach
	Day     components.Field
	Time    components.Field
	Place   components.Field
	Aim     components.Field
	Agreed  components.Area
	Changes string // how often the lesson had been changed when the form was made; empty for a new one
	Open    bool   // shown opened, since something in it was wrong
	Wrong   components.Summary
}

// unwrittenDays is for how long a lesson asks to be written up.
const unwrittenDays = 30

// ArrangedFrom is the first day of the lessons that a page shows.
func ArrangedFrom(today golf.Date) golf.Date { return today.AddDays(-unwrittenDays) }

// NewArrangedPart makes the part.
func NewArrangedPart(in ArrangedInput) ArrangedPart {
	var p ArrangedPart
	for _, l := range in.Lessons {
		if over := l.Day.Compare(in.Today) < 0; !over || !l.Written {
			p.Cards = append(p.Cards, in.card(l))
		}
	}
	if len(p.Cards) == 0 {
		p.Empty = "No lesson is arranged."
	}
	p.Arrange = in.form(0, form.Lesson{})
	p.Arrange.Title, p.Arrange.Save = "Arrange a lesson", "Arrange this lesson"
	if in.Whose.Own {
		p.Arrange.At = ""
		if len(in.Coaches) > 0 {
			p.Arrange.At = in.Whose.Lessons()
		}
	}
	return p
}

// card is the card of a lesson.
func (in ArrangedInput) card(l ArrangedLesson) ArrangedCard {
	c := ArrangedCard{ID: lessonID(l.ID), When: LessonTime(l), With: "with " + l.Coach, Place: l.Place, Aim: l.Aim, Agreed: notes.Paragraphs(l.Agreed)}
	if over := l.Day.Compare(in.Today) < 0; !over {
		c.File = in.Whose.LessonFile(l.ID)
	}
	if l.Day.Compare(in.Today) <= 0 && !l.Written {
		c.Write = in.Whose.Lessons() + "#lesson"
	}
	if in.Whose.Own || l.CoachID == in.Me {
		if c.Off = in.Whose.CancelLesson(l.ID); c.File != "" {
			c.Change = in.form(l.ID, form.Lesson{Day: form.DayOf(l.Day), Time: form.TimeOf(l.Starts), Place: form.TextOf(l.Place), Aim: form.TextOf(l.Aim), Agreed: form.TextOf(l.Agreed)})
			c.Change.Changes = fmt.Sprint(l.Changes)
			c.Change.Title, c.Change.Save, c.Change.Cancel, c.Off = "Change or cancel", "Save the change", c.Off, ""
		}
	}
	return c
}

// lessonID is the place of a lesson on a page.
func lessonID(lesson int64) string { return fmt.Sprintf("lesson-%d", lesson) }

// form is the form that changes a lesson, or that arranges one where it is 0: as it came
// back, or with what is kept.
func (in ArrangedInput) form(lesson int64, typed form.Lesson) ArrangeForm {
	f := ArrangeForm{At: in.Whose.Lessons()}
	id := func(name string) string { return "next_" + name }
	if lesson > 0 {
		f.At = in.Whose.Arranged(lesson)
		id = func(name string) string { return fmt.Sprintf("next_%s-%d", name, lesson) }
	}
	if back := in.Returned.Arranged; back != nil && in.Returned.Of == lesson {
		f.Open, typed = true, *back
	}
	if in.Whose.Own && lesson == 0 {
		for i, c := range in.Coaches {
			f.Coaches = append(f.Coaches, components.Choice{Value: fmt.Sprint(c.ID), Name: c.Name, Chosen: c.ID == typed.Coach.Value || i == 0 && typed.Coach.Value == 0})
		}
		if len(in.Coaches) == 1 {
			f.Coach, f.Coaches = f.Coaches[0].Value, nil
		}
	}
	f.With = components.Filled(components.Field{Name: "coach", ID: id("coach"), Label: "With"}, typed.Coach)
	f.Day = components.Filled(components.Field{Name: "day", ID: id("day"), Label: "Day", Type: "date"}, typed.Day)
	f.Time = components.Filled(components.Field{Name: "time", ID: id("time"), Label: "Time", Type: "time", Hint: "Where the lesson is. It may be left empty, as may all that follows."}, typed.Time)
	f.Place = components.Filled(components.Field{Name: "place", ID: id("place"), Label: "Place"}, typed.Place)
	f.Aim = components.Filled(components.Field{Name: "aim", ID: id("aim"), Label: "Aim", Hint: "What the lesson is for."}, typed.Aim)
	f.Agreed = components.FilledArea(components.Area{Name: "agreed", ID: id("agreed"), Label: "What is agreed", Hint: "Until then, or for the day. Lines that begin with a hyphen become a list."}, typed.Agreed)
	f.Wrong = components.Summed(f.With, f.Day, f.Time, f.Place, f.Aim, f.Agreed.Field())
	return f
}

// LessonTime writes when a lesson is: Tuesday 8 September 2026, 17:30.
func LessonTime(l ArrangedLesson) string {
	if l.Starts == nil {
		return words.LongDay(l.Day)
	}
	return words.LongDay(l.Day) + ", " + form.TimeOf(l.Starts).Text
}

// LessonMoved says what a lesson has become since a form was made that changes it.
func LessonMoved(l ArrangedLesson) string {
	text := LessonTime(l)
	if l.Place != "" {
		text += ", " + l.Place
	}
	if l.Aim != "" {
		text += ": " + l.Aim
	}
	return fmt.Sprintf("The lesson has been changed since you opened this page, to “%s”. Save again to change it to this.", text)
}

// LessonNews says in a line what the next lesson of a player is, for the player's first
// page.
func LessonNews(l ArrangedLesson, today golf.Date) string {
	when := words.DueDay(l.Day, today)
	if n := words.DaysBetween(today, l.Day); n > 1 {
		when = "on " + when
	}
	if l.Starts != nil {
		when += " at " + form.TimeOf(l.Starts).Text
	}
	text := fmt.Sprintf("Lesson with %s %s", l.Coach, when)
	if l.Place != "" {
		text += ", " + l.Place
	}
	if l.Aim != "" {
		return text + ": " + l.Aim
	}
	return text + "."
}
