package coach

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"strokeledger/analysis"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/chart"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/notes"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// OverviewPage is what a coach needs to know of a pupil before a lesson.
type OverviewPage struct {
	layout.Page
	Lede      string
	Questions []notes.Card // not answered yet
	Next      ArrangedPart // lessons to come
	Leaks     LeakTable
	Lesson    string          // what is compared, or why nothing is
	Changes   figures.Changes // since the last lesson; not known without one
	Visit     string          // what came since the coach was last here
	Practice  []PracticeLine  // not done yet, the first due first
	Doubles   DoublesPart
	Season    figures.Season // shown where there is a round
	Played    bool           // there is a round
	Note      LessonForm     // where a note is written
	Latest    []notes.Card   // the latest notes
	Groups    components.Field
	GroupsAt  string // where the form of the groups is sent
	Wrong     components.Summary
	Arrange   bool   // that form came back
	ArchiveAt string // where the form that puts the pupil away is sent
	Away      bool   // the pupil is archived
	Lessons   string // address of lessons and practice
	Walked    string // address where a round is entered for the pupil
	Enter     string // that link
	Beside    string // address of the pupil beside golfers of the same score
}

// OverviewInput is what an overview is made of.
type OverviewInput struct {
	Whose       paths.Whose
	Name        string // the pupil's
	Target      float64
	Units       form.Units // of the reader
	Today       golf.Date
	Visit       time.Time // when the coach's previous visit ended; zero for none
	Pupil       RosterPupil
	Notes       []notes.Note // the latest first
	Me          golf.PlayerID
	Phrases     []notes.Phrase   // of the coach
	Lessons     []ArrangedLesson // that were arranged, the earliest first
	Assignments []Assignment
	Marks       []figures.MarkedDay
	Overview    analysis.Overview // worked out for the last lesson, and for the practice of Figured
	Returned    form.Returned
}

// LastLesson is the day of the latest lesson that was written up; zero for none.
func LastLesson(all []notes.Note) golf.Date {
	var last golf.Date
	for _, n := range all {
		if n.Lesson && n.Day.Compare(last) > 0 {
			last = n.Day
		}
	}
	return last
}

// mostFigured is of how many practices the figure is shown before and since.
const mostFigured = 4

// Figured are the practices whose figure is shown before and since.
func Figured(all []Assignment) []Assignment {
	var figured []Assignment
	for _, a := range all {
		if !a.Done && a.Figure != "" && len(figured) < mostFigured {
			figured = append(figured, a)
		}
	}
	return figured
}

// NewOverviewPage makes the page.
func NewOverviewPage(page layout.Page, in OverviewInput) OverviewPage {
	page.Title, page.Here, page.BodyClass = in.Name, layout.Here(in.Whose, in.Whose.Lessons()), "overview-page"
	page.Foot = fmt.Sprintf("Fixed golfer: every round is compared with %s golfer, whatever the course. Strokes are for 18 holes; holes entered as a score alone do not count. The pupil can see that you opened this page.", words.A(in.Target))
	o := OverviewPage{Page: page, Lessons: in.Whose.Lessons(), Beside: in.Whose.Beside(), GroupsAt: in.Whose.Groups(), ArchiveAt: in.Whose.Archive(), Away: in.Pupil.Archived,
		Note: newLessonForm(LessonsInput{Whose: in.Whose, Name: in.Name, Today: in.Today, Returned: in.Returned, Lessons: in.Lessons, Phrases: in.Phrases}), Visit: in.since()}
	o.Next = NewArrangedPart(ArrangedInput{Whose: in.Whose, Me: in.Me, Name: in.Name, Today: in.Today, Lessons: in.Lessons, Returned: in.Returned})
	o.Note.Open, o.Walked, o.Enter = true, in.Whose.WalkedRounds(), "Enter a round for "+in.Name
	typed := form.WriteGroups(in.Pupil.Groups)
	if o.Arrange = in.Returned.Groups != nil; o.Arrange {
		typed = *in.Returned.Groups
	}
	o.Groups = components.Filled(components.Field{Name: "groups", Label: "Groups", Hint: "Your own, with commas between them: Tuesday six, Juniors. The pupil does not see them."}, typed)
	o.Wrong = components.Summed(o.Groups)
	for _, n := range in.Notes {
		if c := notes.NewCard(n, in.Whose, false, in.Returned).Offer(n, o.Note.Phrases); n.Open() {
			o.Questions = append(o.Questions, c)
		} else if len(o.Latest) < overviewNotes {
			o.Latest = append(o.Latest, c)
		}
	}
	if o.Played = len(in.Overview.Line) > 0; o.Played {
		o.figures(in)
	}
	o.practice(in)
	o.Lede = in.lede()
	return o
}

// overviewNotes is how many of the latest notes an overview shows.
const overviewNotes = 3

// figures are the parts that need a round.
func (o *OverviewPage) figures(in OverviewInput) {
	all := in.comparison(in.Overview.Sheet.Columns)
	o.Season = figures.NewSeason(all)
	o.Leaks, o.Doubles = newLeakTable(in), newDoublesPart(in)
	o.Lesson = "No lesson has been written up yet. Once one is, this part compares the rounds before it with those since."
	switch between := in.Overview.Lesson; {
	case between.Known():
		o.Changes = figures.NewChanges(in.comparison([]compare.Column{*between.Before, *between.Since}))
		o.Lesson = o.Changes.Aside
	case !between.Day.IsZero():
		o.Lesson = fmt.Sprintf("There are not yet rounds both before the lesson of %s and since.", words.ShortDay(between.Day))
	}
}

// comparison is the comparison of some columns.
func (in OverviewInput) comparison(columns []compare.Column) figures.ComparisonInput {
	m := in.Overview.Months
	m.Sheet.Columns = columns
	at := paths.Comparison{Whose: in.Whose}
	for _, c := range columns {
		at.Spans = append(at.Spans, c.Span)
	}
	return figures.ComparisonInput{Months: m, At: at, Name: in.Name, Target: in.Target, Units: in.Units, Marks: in.marked()}
}

// marked are the marked days, the last lesson among them.
func (in OverviewInput) marked() []figures.MarkedDay {
	if day := in.Overview.Lesson.Day; !day.IsZero() {
		return append(slices.Clone(in.Marks), figures.MarkedDay{Day: day, What: "the lesson"})
	}
	return in.Marks
}

// lede says what waits, then what changed since the lesson, or where most is lost.
func (in OverviewInput) lede() string {
	var all []string
	if n := len(in.Pupil.Asked); n > 0 {
		all = append(all, words.Capital(words.OneOrMany(n, "a question waits", words.Spelled(n)+" questions wait"))+".")
	}
	switch between := in.Overview.Lesson; {
	case len(in.Overview.Line) == 0:
		all = append(all, words.NoRounds(in.Name, in.Pupil.Since))
	case between.Known() && figures.Sure(between.Since.Cells[0].Change.Word) != "":
		change := between.Since.Cells[0].Change
		way := "more"
		if change.Mean < 0 {
			way = "fewer"
		}
		all = append(all, fmt.Sprintf("Since the lesson of %s %s has lost %s %s a round, which is %s.", words.NearDay(between.Day, in.Today), in.Name, words.SpelledAmount(max(change.Mean, -change.Mean)), way, figures.Sure(change.Word)))
	case len(in.Overview.Leaks) > 0:
		dearest := in.Overview.Leaks[0]
		all = append(all, fmt.Sprintf("%s loses most here: %s, %s a round.", in.Name, lowerFirst(figures.RowName(dearest.Row, in.Units)), words.StrokeCount(figures.Tenth(dearest.Mean))))
	default:
		all = append(all, in.Name+" loses nothing to the target.")
	}
	return strings.Join(all, " ")
}

func lowerFirst(s string) string { return strings.ToLower(s[:1]) + s[1:] }

// since says what came since the coach was last here.
func (in OverviewInput) since() string {
	news := in.Pupil.news()
	switch {
	case in.Visit.IsZero():
		return "Your first visit."
	case len(news) == 0:
		return fmt.Sprintf("You last looked on %s; nothing is new since.", in.Visit.Format("2 January"))
	default:
		return fmt.Sprintf("You last looked on %s; since then: %s.", in.Visit.Format("2 January"), words.List(news))
	}
}

// lastTen is the comparison of the ten rounds before the last ten with these.
func lastTen(whose paths.Whose) paths.Comparison {
	return paths.Comparison{Whose: whose}.With(golf.Span{Last: compare.FormRounds, Before: true}, golf.Span{Last: compare.FormRounds})
}

// LeakTable is the dearest bands.
type LeakTable struct {
	Aside   string
	Caption string
	Axis    components.Axis
	Rows    []LeakRow // none where nothing is lost
}

// LeakRow is one band.
type LeakRow struct {
	Name, At string // the band, and the shots behind its figure
	Shots    string
	Bar      chart.Bar
	Whisker  chart.Whisker
	Figure   string
	Between  string // its 95% interval; empty with too few rounds
	Sure     string // clear or leaning; "could be chance" otherwise
}

func newLeakTable(in OverviewInput) LeakTable {
	rounds := len(in.Overview.Latest.Rounds)
	over := "The last " + words.OneOrMany(rounds, "round", words.Spelled(rounds)+" rounds")
	t := LeakTable{Axis: components.NewAxis(partScale, words.Tick), Caption: fmt.Sprintf("%s, strokes a round against %s golfer, with the interval of 95%%", over, words.A(in.Target)),
		Aside: fmt.Sprintf("%s. Chosen from %s as the costliest, so each is likely a little less.", over, words.Plural(in.Overview.Bands, "band", "bands"))}
	for _, l := range in.Overview.Leaks {
		row := LeakRow{Name: figures.RowName(l.Row, in.Units), At: lastTen(in.Whose).BehindRow(2, l.Row.String()), Shots: words.Plural(l.Shots, "shot", "shots"), Bar: partScale.Bar(l.Mean), Figure: words.Signed(l.Mean, 1), Sure: figures.Sure(l.Sure)}
		if l.HasInterval() {
			row.Whisker = partScale.Whisker(l.Mean, l.Interval.Low, l.Interval.High)
			row.Between = words.Signed(l.Interval.Low, 1) + " to " + words.Signed(l.Interval.High, 1)
		}
		if row.Sure == "" {
			row.Sure = "could be chance"
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}
