package coach

import (
	"fmt"
	"slices"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/notes"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// LessonsPage is where a coach and a pupil write to each other and see the
// practice: the player's own page, or a coach's page of the pupil.
type LessonsPage struct {
	layout.Page
	Heading   string // the pupil's name, to a coach
	At        string // today and the pupil's target, to a coach; empty to the player
	Lede      string // what is new, and to a coach how the pupil played
	Own       bool   // the reader is the player
	Acts      []components.Link
	Questions []notes.Card         // not answered yet, the latest first
	Notes     []notes.Card         // the others, the latest first
	Next      ArrangedPart         // lessons to come
	Lesson    LessonForm           // where a lesson is written up
	Target    TargetPart           // shown to a coach, and to the player while one is proposed
	Practice  []AssignmentCard     // not done yet, the first due first
	Done      []AssignmentCard     // the latest first
	Assign    figures.PracticeForm // where practice is set
	Rounds    []figures.RoundRow   // the latest, to a coach; none to the player
	AllRounds string               // address of the list of rounds
	Coach     string               // id of the reader, as the form that ends access sends it
	Player    string               // id of the player, likewise
}

// LessonForm is the form that writes up a lesson.
type LessonForm struct {
	At      string // where it is sent
	Day     components.Field
	Body    components.Area
	CanHide bool   // it may be private: the reader is a coach
	Share   string // on the button that lets the other read it
	Phrases []notes.PhraseKey
	Open    bool // shown opened, since something in it was wrong
	Wrong   components.Summary
}

// TargetPart is the player's target and those that coaches propose.
type TargetPart struct {
	Now       string           // the target, a score for 18 holes of par 72
	Proposed  []ProposedTarget // not answered yet; to a coach only the coach's own
	ProposeAt string           // where the form that proposes one is sent; empty to the player
	Field     components.Field // of that form
	Wrong     components.Summary
	AnswerAt  string // where the player's answer is sent
}

// ProposedTarget is a target that a coach proposes.
type ProposedTarget struct {
	Coach  string // id, as the player's answer sends it
	Who    string // the coach's name
	Target string // a score for 18 holes of par 72
}

// LessonsInput is what the page is made of.
type LessonsInput struct {
	Whose       paths.Whose
	Me          golf.PlayerID // the reader
	Name        string        // the player's
	Target      float64       // the player's, a score for 18 holes of par 72
	Coached     bool          // a coach has access
	Today       golf.Date
	Boundary    golf.Distance // where the player's short game ends
	Units       form.Units    // of the reader
	Visit       time.Time     // when the coach's previous visit ended; zero for none
	Notes       []notes.Note
	Assignments []Assignment
	Proposals   []Proposal
	Phrases     []notes.Phrase        // of the coach who reads; none to the player
	Lessons     []ArrangedLesson      // that were arranged, the earliest first
	Coaches     []LessonCoach         // of the player; none to a coach
	Rounds      []figures.ListedRound // the latest first; none to the player
	Earlier     bool                  // there are rounds before those
	Returned    form.Returned         // a form that came back, since something in it was wrong
	Others      []figures.OtherPupil  // other pupils of the reader; none to the player
}

// Proposal is a target that a coach proposes.
type Proposal struct {
	CoachID golf.PlayerID
	Coach   string  // name
	Target  float64 // a score for 18 holes of par 72
}

// NewLessonsPage makes the page.
func NewLessonsPage(page layout.Page, in LessonsInput) LessonsPage {
	page.Title, page.Here = "Lessons and practice", layout.Here(in.Whose, in.Whose.Lessons())
	page.Foot = "The player and every coach with access can read the notes, unless they are marked private. When a coach’s access ends, shared notes stay with the player and private ones with the coach. Swing instruction is a qualified coach’s job. Stop practising if anything hurts."
	l := LessonsPage{Page: page, Own: in.Whose.Own, Heading: "Lessons and practice", AllRounds: in.Whose.Rounds(), Player: fmt.Sprint(in.Whose.Player), Coach: fmt.Sprint(in.Me),
		Next: NewArrangedPart(in.arranged()), Lesson: newLessonForm(in), Target: newTargetPart(in), Assign: newAssignForm(in)}
	l.Acts = []components.Link{{Name: "What to practise", At: in.Whose.Plan()}, {Name: "Log of practice", At: in.Whose.Log()}, {Name: "Months side by side", At: paths.Comparison{Whose: in.Whose}.Months()}, {Name: "All rounds", At: in.Whose.Rounds()},
		{Name: "A report to print", At: in.Whose.Report()}, {Name: "Handicap estimate (unofficial)", At: in.Whose.Handicap()}}
	if l.Own {
		l.Lede = ownLede(in)
	} else {
		l.forCoach(in)
	}
	for _, n := range in.Notes {
		card := notes.NewCard(n, in.Whose, false, in.Returned).Offer(n, l.Lesson.Phrases)
		if n.Open() {
			l.Questions = append(l.Questions, card)
		} else {
			l.Notes = append(l.Notes, card)
		}
	}
	for _, a := range in.Assignments {
		card := newAssignmentCard(a, in)
		if a.Done {
			l.Done = append(l.Done, card)
		} else {
			l.Practice = append(l.Practice, card)
		}
	}
	return l
}

// arranged is what the part about lessons to come is made of.
func (in LessonsInput) arranged() ArrangedInput {
	return ArrangedInput{Whose: in.Whose, Me: in.Me, Name: in.Name, Today: in.Today, Lessons: in.Lessons, Coaches: in.Coaches, Returned: in.Returned}
}

// unwritten is the day of the earliest lesson that took place and that the reader cannot
// read about; today where there is none.
func (in LessonsInput) unwritten() golf.Date {
	for _, l := range in.Lessons {
		if !l.Written && l.Day.Compare(in.Today) <= 0 {
			return l.Day
		}
	}
	return in.Today
}

// latestShown is how many of a pupil's rounds a coach sees on the page.
const latestShown = 12

// firstNew is the day on which the earliest round was played that was entered since
// the previous visit; zero for none.
func firstNew(latestFirst []figures.ListedRound) golf.Date {
	for _, r := range slices.Backward(latestFirst) {
		if r.New == figures.Entered {
			return r.Round.Date
		}
	}
	return golf.Date{}
}

// forCoach adds what only a coach sees: the pupil's name and latest rounds, and
// what is new since the previous visit.
func (l *LessonsPage) forCoach(in LessonsInput) {
	if from := firstNew(in.Rounds); !from.IsZero() && !in.Visit.IsZero() {
		since := paths.Comparison{Whose: in.Whose}.With(golf.Span{To: from.AddDays(-1)}, golf.Span{From: from})
		l.Acts = append([]components.Link{{Name: fmt.Sprintf("Rounds from %s on, against those before", words.NearDay(from, in.Today)), At: since.Months()}}, l.Acts...)
	}
	l.Acts = append(l.Acts, components.Link{Name: "Enter a round for " + in.Name, At: in.Whose.WalkedRounds()})
	l.Page.Title, l.Heading = in.Name, in.Name
	l.At = fmt.Sprintf("%s. Target %s.", words.LongDay(in.Today), words.Plain(in.Target))
	l.Lede = sinceLede(in, l.Page.Since)
	for _, r := range in.Rounds[:min(len(in.Rounds), latestShown)] {
		row := r.Row(in.Whose)
		if in.Visit.IsZero() {
			row.New = "" // on a first visit all are
		}
		l.Rounds = append(l.Rounds, row)
	}
}
