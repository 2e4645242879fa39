package practice

import (
	"fmt"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/practice"
	"strokeledger/web/chart"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// TakenPage is a plan as it was taken: what it promised, beside what came since.
type TakenPage struct {
	layout.Page
	Heading string
	Place   string // what it stands on
	Lede    string // what came in its first part
	Axis    components.Axis
	Items   []TakenRow
	Months  string // address of the comparison
	Plan    string // address of the plan of today
	Log     string // address of the log
	Remove  string // where it is removed; empty for a coach
}

// TakenRow is something that the plan sets to practise.
type TakenRow struct {
	Name     string
	Band     string
	Promised Amount
	Came     Amount // zero for what cuts across the parts, and without rounds on both sides
	Word     string // how sure what came is, or why that is not told
	Drill    components.Link
	Mark     string
	Done     string // sessions since, of how many minutes
	Carry    string // address of the drill beside the course; empty with too few sessions
	Again    string // when to look at the months
}

// Amount is strokes for 18 holes with where they lie.
type Amount struct {
	Bar     chart.Bar
	Whisker chart.Whisker
	Strokes string // empty when not known
	Between string
}

// TakenInput is what the page of a taken plan is made of.
type TakenInput struct {
	Whose       paths.Whose
	ID          int64
	Name        string // the player's, for a coach
	Day         golf.Date
	First, Last golf.Date
	Rounds      int
	Target      float64
	Minutes     int
	Units       form.Units
	Kept        analysis.KeptPlan
	Since       analysis.Since
	Done        map[string][]analysis.SessionResult // sessions since, by the key of their drill
}

// NewTakenPage makes the page.
func NewTakenPage(page layout.Page, in TakenInput) TakenPage {
	page.Title, page.Here = "Plan of "+words.ShortDay(in.Day), layout.Here(in.Whose, in.Whose.Lessons())
	page.Foot = "Both are strokes for 18 holes against one golfer, who averages the target of the plan. A plan looks first at what was worst in its rounds, and the worst is in part bad luck: some of what comes back would have come back without practice."
	if !in.Whose.Own {
		page.Title += ", " + in.Name
	}
	p := TakenPage{Page: page, Heading: page.Title, Lede: in.lede(), Plan: in.Whose.Plan(), Log: in.Whose.Log(),
		Place: fmt.Sprintf("It stands on %s, %s to %s, with a target of %s and %d minutes a week. Since then: %s.", words.SpelledPlural(in.Rounds, "round", "rounds"), words.ShortDay(in.First), words.ShortDay(in.Last),
			words.Plain(in.Target), in.Minutes, words.SpelledPlural(in.Since.Rounds, "round", "rounds"))}
	spans := golf.Comparison{Spans: []golf.Span{{From: in.First, To: in.Last}, {From: in.Last.AddDays(1)}}}
	p.Months = paths.Comparison{Whose: in.Whose, Comparison: spans}.Months()
	if in.Whose.Own {
		p.Remove = in.Whose.RemovePlan(in.ID)
	}
	scale := in.scale()
	p.Axis = components.NewAxis(scale, words.Tick)
	for _, k := range in.Kept.Items {
		p.Items = append(p.Items, in.row(scale, k))
	}
	return p
}

// part is what came in the part of an item; unknown for what cuts across the parts.
func (in TakenInput) part(k analysis.KeptItem) analysis.PartSince {
	if k.Kind != practice.OfPart {
		return analysis.PartSince{}
	}
	return in.Since.Parts[k.Part]
}

// scale holds every bar with its interval.
func (in TakenInput) scale() chart.Scale {
	values := []float64{0}
	for _, k := range in.Kept.Items {
		values = append(values, k.WinBack, k.Interval.Low, k.Interval.High)
		if s := in.part(k); s.Known {
			values = append(values, s.Won, s.Interval.Low, s.Interval.High)
		}
	}
	return chart.NewScale(values...)
}

// name is what an item is called.
func (in TakenInput) name(k analysis.KeptItem) string {
	return PlanInput{}.name(analysis.PlanCandidate{Candidate: practice.Candidate{Kind: k.Kind, Part: k.Part}})
}

// lede says what came in the first part of the plan.
func (in TakenInput) lede() string {
	for _, k := range in.Kept.Items {
		s := in.part(k)
		switch {
		case k.Kind != practice.OfPart:
			continue
		case !s.Known:
			return fmt.Sprintf("%s was expected to win back %s. No round has been played since, so nothing can be won back yet.", in.name(k), words.StrokeCount(k.WinBack))
		case s.Won < 0:
			return fmt.Sprintf("%s was expected to win back %s; since then %s more are lost there.%s", in.name(k), words.StrokeCount(k.WinBack), tenth(-s.Won), sureOf(s))
		default:
			return fmt.Sprintf("%s was expected to win back %s; %s won back so far.%s", in.name(k), words.StrokeCount(k.WinBack), tenth(s.Won), sureOf(s))
		}
	}
	return "What the plan has won back so far."
}

// sureOf says how sure what came is, as a sentence of its own.
func sureOf(s analysis.PartSince) string {
	switch {
	case s.Thin.Any():
		return " " + words.Capital(words.Thin(s.Thin)) + "."
	case s.Word == 0:
		return ""
	default:
		return " " + words.Capital(words.Certainty(s.Word)) + "."
	}
}

func (in TakenInput) row(scale chart.Scale, k analysis.KeptItem) TakenRow {
	r := TakenRow{Name: in.name(k), Promised: amountOf(scale, k.WinBack, k.Interval.Low, k.Interval.High, true), Drill: components.Link{At: in.Whose.Drill(k.Drill.Key), Name: k.Drill.Name}, Done: in.done(k)}
	if in.carries(k) {
		r.Carry = r.Drill.At + "#carry"
	}
	if k.Kind == practice.OfPart {
		r.Band = lower(words.Band(k.Band, in.Units))
		r.Again = in.again(k)
	}
	if k.Mark.Pass > 0 {
		r.Mark = markWords(k.Mark)
	}
	switch s := in.part(k); {
	case k.Kind != practice.OfPart:
		r.Word = "counted in its parts"
	case !s.Known:
		r.Word = "no round since"
	default:
		r.Came = amountOf(scale, s.Won, s.Interval.Low, s.Interval.High, s.Sure)
		if s.Word != 0 {
			r.Word = words.Certainty(s.Word)
		} else if s.Thin.Any() {
			r.Word = words.Thin(s.Thin)
		}
	}
	return r
}

func amountOf(scale chart.Scale, x, low, high float64, sure bool) Amount {
	a := Amount{Bar: scale.Bar(x), Strokes: words.Signed(x, 1)}
	if sure {
		a.Whisker, a.Between = scale.Whisker(0, low, high), fmt.Sprintf("%s to %s", words.Signed(low, 1), words.Signed(high, 1))
	}
	return a
}

// carries reports whether the drill of an item is set beside the course.
func (in TakenInput) carries(k analysis.KeptItem) bool {
	sessions := 0
	for _, r := range in.Done[k.Drill.Key] {
		_, of := r.Made()
		sessions += words.Tally(of > 0)
	}
	return !k.Drill.NoMark && sessions >= analysis.CarrySessions
}

// done says how often the drill of an item was done since.
func (in TakenInput) done(k analysis.KeptItem) string {
	all := in.Done[k.Drill.Key]
	if len(all) == 0 {
		return "not done yet"
	}
	minutes, passed, judged := 0, 0, 0
	for _, r := range all {
		minutes, passed, judged = minutes+r.Minutes, passed+words.Tally(r.Passed), judged+words.Tally(r.Judged)
	}
	text := words.Plural(len(all), "session", "sessions")
	if minutes > 0 {
		text += fmt.Sprintf(", %d min", minutes)
	}
	if judged > 0 {
		text += fmt.Sprintf(", %d passed", passed)
	}
	return text
}

// again says when the months may show the gain, and how many rounds there are.
func (in TakenInput) again(k analysis.KeptItem) string {
	switch {
	case k.Again == 0:
		return "Rounds alone will not show the gain; the drill will."
	case in.Since.Rounds >= k.Again:
		return fmt.Sprintf("Measure now: %d rounds were enough for an even chance, and %d have been played.", k.Again, in.Since.Rounds)
	default:
		return fmt.Sprintf("Measure again after %d rounds: %d to go until there is an even chance that Months shows the whole gain as leaning or clear.", k.Again, k.Again-in.Since.Rounds)
	}
}
