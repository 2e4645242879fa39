package coach

import (
	"fmt"
	"slices"
	"time"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/notes"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// LessonsPage is where a coach and a pupil write to each other, with the practice:
// the pupil's own page, and the coach's of the pupil.
type LessonsPage struct {
	layout.Page
	Heading   string
	At        string
	Lede      string
	Own       bool
	Acts      []components.Link
	Questions []notes.Card
	Notes     []notes.Card
	Lesson    LessonForm
	Target    TargetPart
	Practice  []AssignmentCard
	Done      []AssignmentCard
	Give      AssignForm
	Rounds    []figures.RoundRow
	AllRounds string
	Coach     string // who may end it, to a coach
	Player    string
}

// LessonForm is where a lesson is noted down.
type LessonForm struct {
	At      string
	Day     components.Field
	Body    components.Area
	CanHide bool
	Private bool
	Open    bool
	Wrong   components.Summary
}

// TargetPart is the player's target, and targets that are proposed.
type TargetPart struct {
	Now      string
	Proposed []ProposedTarget
	At       string // where a coach proposes one
	Field    components.Field
	Wrong    components.Summary
	AnswerAt string
}

// ProposedTarget is a target that a coach proposes.
type ProposedTarget struct{ Coach, Who, Target string }

// LessonsInput is what the page is made of.
type LessonsInput struct {
	Whose       paths.Whose
	Me          golf.PlayerID
	Name        string // the player's
	Target      float64
	Coached     bool
	Today       golf.Date
	Visit       time.Time // when the coach's visit before this one ended; zero for none
	Notes       []notes.Note
	Assignments []Assignment
	Proposals   []Proposal
	Rounds      []figures.ListedRound // the latest
	Earlier     bool                  // there are rounds before those
	Returned    form.Returned
}

// Proposal is a target that somebody proposes.
type Proposal struct {
	CoachID golf.PlayerID
	Coach   string
	Target  float64
}

// NewLessonsPage makes the page.
func NewLessonsPage(page layout.Page, q LessonsInput) LessonsPage {
	page.Title, page.Here = "Lessons and practice", paths.Coaching
	page.Foot = "Notes are shared between the player and every coach who is let in, unless they say private. When a coach's access ends, shared notes stay with the player and private ones with the coach. How to swing is for a qualified coach to teach; stop where it hurts."
	l := LessonsPage{Page: page, Own: q.Whose.Own, Heading: "Lessons and practice", AllRounds: q.Whose.Rounds(), Player: fmt.Sprint(q.Whose.Player), Coach: fmt.Sprint(q.Me)}
	l.Acts = []components.Link{{Name: "Months side by side", At: paths.Comparison{Whose: q.Whose}.Months()}, {Name: "All rounds", At: q.Whose.Rounds()},
		{Name: "A report to take away", At: q.Whose.Report()}, {Name: "Handicap estimate", At: q.Whose.Handicap()}}
	if l.Own {
		l.Lede = ownLede(q)
	} else {
		if !q.Visit.IsZero() {
			from := golf.DateOf(q.Visit)
			since := paths.Comparison{Whose: q.Whose}.With(golf.Span{To: from.AddDays(-1)}, golf.Span{From: from})
			l.Acts = append([]components.Link{{Name: "Since you looked, beside before", At: since.Months()}}, l.Acts...)
		}
		l.Page.Title, l.Heading = q.Name, q.Name
		l.At = fmt.Sprintf("%s. Target %s.", words.LongDay(q.Today), words.Plain(q.Target))
		l.Lede = sinceLede(q)
		for _, r := range q.Rounds {
			row := r.Row(q.Whose)
			row.New = r.New && !q.Visit.IsZero() // at the first look all are
			l.Rounds = append(l.Rounds, row)
		}
	}
	for _, n := range q.Notes {
		card := notes.NewCard(n, q.Whose, false, q.Returned)
		if n.Open() {
			l.Questions = append(l.Questions, card)
		} else {
			l.Notes = append(l.Notes, card)
		}
	}
	l.forms(q)
	for _, a := range q.Assignments {
		card := assignmentCard(a, q)
		if a.Done {
			l.Done = append(l.Done, card)
		} else {
			l.Practice = append(l.Practice, card)
		}
	}
	return l
}

func (l *LessonsPage) forms(q LessonsInput) {
	back := q.Returned
	lesson, target := form.Note{Day: form.DayOf(q.Today)}, form.Number{}
	if back.Lesson != nil {
		lesson = *back.Lesson
	}
	if back.Target != nil {
		target = *back.Target
	}
	l.Lesson = LessonForm{At: q.Whose.Notes(), CanHide: !q.Whose.Own, Private: lesson.Private, Open: back.Lesson != nil,
		Day:  components.Filled(components.Field{Name: "day", ID: "lesson_day", Label: "Day of the lesson", Type: "date"}, lesson.Day),
		Body: components.FilledArea(components.Area{Name: "body", ID: "lesson", Label: "A lesson", Hint: "Lines that begin with a hyphen become a list."}, lesson.Body)}
	l.Lesson.Wrong = components.Summed(l.Lesson.Day, l.Lesson.Body.Field())
	l.Target = TargetPart{Now: words.Plain(q.Target), AnswerAt: q.Whose.AnswerTarget(),
		Field: components.Filled(components.Field{Name: "target", Label: "Propose a target", Mode: "decimal", Hint: "68 to 110, for 18 holes of par 72."}, target)}
	l.Target.Wrong = components.Summed(l.Target.Field).Saying("The target is not proposed.")
	if !q.Whose.Own {
		l.Target.At = q.Whose.Target()
	}
	for _, p := range q.Proposals {
		l.Target.Proposed = append(l.Target.Proposed, ProposedTarget{fmt.Sprint(p.CoachID), p.Coach, words.Plain(p.Target)})
	}
	l.Give = assignForm(q)
}

// assignForm is where the coach says what to practise.
func assignForm(q LessonsInput) AssignForm {
	typed := form.Assignment{Due: form.DayOf(q.Today.AddDays(7))}
	if q.Returned.Assignment != nil {
		typed = *q.Returned.Assignment
	}
	f := AssignForm{At: q.Whose.Assignments(), Open: q.Returned.Assignment != nil, Fields: []components.Field{
		components.Filled(components.Field{Name: "what", Label: "What to practise"}, typed.What),
		components.Filled(components.Field{Name: "amount", Label: "How much", Hint: "As 40 putts, or 20 minutes."}, typed.Amount),
		components.Filled(components.Field{Name: "pass_mark", Label: "Pass mark", Hint: "As 32 of 40."}, typed.PassMark),
		components.Filled(components.Field{Name: "due", Label: "By when", Type: "date"}, typed.Due),
	}}
	f.Wrong = components.Summed(f.Fields...)
	return f
}

// ownLede says what waits for the player.
func ownLede(q LessonsInput) string {
	fresh, open := 0, 0
	for _, n := range q.Notes {
		fresh += words.Tally(n.Unread)
	}
	for _, a := range q.Assignments {
		open += words.Tally(!a.Done)
	}
	text := "Nothing new from a coach"
	if fresh > 0 {
		text = words.Capital(words.Spelled(fresh)) + words.OneOrMany(fresh, " note has", " notes have") + " something new for you"
	}
	switch {
	case !q.Coached && len(q.Notes)+len(q.Assignments) == 0:
		return "No coach yet. Let one in, or set yourself something to practise."
	case open == 0:
		return text + ", and nothing to practise."
	default:
		return text + fmt.Sprintf(", and %s to practise.", words.OneOrMany(open, "one thing", words.Spelled(open)+" things"))
	}
}

// sinceLede sums up for a coach what came since the visit before.
func sinceLede(q LessonsInput) string {
	var fresh []figures.ListedRound
	for _, r := range q.Rounds {
		if r.New && len(r.Round.Holes) > 0 {
			fresh = append(fresh, r)
		}
	}
	since := "Since you last looked, on " + q.Visit.Format("Monday 2 January")
	switch {
	case q.Visit.IsZero() && len(fresh) == 0:
		return "No round has been entered yet."
	case q.Visit.IsZero():
		return fmt.Sprintf("Your first look. Over the last %s: %s", words.OneOrMany(len(fresh), "round", words.Spelled(len(fresh))+" rounds"), summed(fresh))
	case len(fresh) == 0:
		return since + ": no round."
	}
	if q.Earlier && len(fresh) == len(q.Rounds) {
		return fmt.Sprintf("%s: %s rounds or more. Over the last %s: %s", since, words.Spelled(len(fresh)), words.Spelled(len(fresh)), summed(fresh))
	}
	var scores []string
	for _, r := range slices.Backward(fresh) {
		scores = append(scores, fmt.Sprintf("%.0f", r.Account.Score))
	}
	return fmt.Sprintf("%s: %s, %s. %s", since, words.OneOrMany(len(fresh), "one round", words.Spelled(len(fresh))+" rounds"), words.List(scores), summed(fresh))
}

// summed says what some rounds lost, where most of it, and their doubles.
func summed(rounds []figures.ListedRound) string {
	var lost account.Split
	holes, doubles, compound := 0, 0, 0
	for _, r := range rounds {
		holes += len(r.Round.Holes)
		lost.Add(r.Account.Lost)
		doubles += len(r.Account.Doubles)
		compound += r.Account.Counts.Compound
	}
	worst := lost.Worst()
	per18 := lost.Total * 18 / float64(holes)
	text := fmt.Sprintf("%s for 18 holes over target, most %s", words.StrokeCount(per18), words.Where(worst))
	if per18 < .05 {
		text = fmt.Sprintf("%s for 18 holes under target", words.StrokeCount(-per18))
	}
	switch {
	case doubles == 0:
		return text + "; no double."
	case compound == 0:
		return text + fmt.Sprintf("; %s %s, none compound.", words.Spelled(doubles), words.OneOrMany(doubles, "double", "doubles"))
	default:
		return text + fmt.Sprintf("; %s %s, %s compound.", words.Spelled(doubles), words.OneOrMany(doubles, "double", "doubles"), words.OneOrMany(words.Tally(doubles == compound), "all", words.Spelled(compound)))
	}
}
