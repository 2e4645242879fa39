// Package practice holds the pages that say what to practise and how: the plan, and
// a page for each drill.
package practice

import (
	"fmt"
	"strings"

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

// PlanPage is what is worth practising, the most important first.
type PlanPage struct {
	layout.Page
	Heading    string
	Place      string // the rounds that it stands on
	Lede       string
	Latest     string // address of the plan of the latest rounds; empty where this is it
	Few        string // that the rounds are few; empty otherwise
	Axis       components.Axis
	Candidates []CandidateRow
	Minutes    string // what the minutes add up to
	Boxes      *PencilBoxes
	Cautions   []string
	Lessons    string // address of lessons and practice
	Months     string // address of the months
	Log        string // address of the log
	Beside     string // address of the player beside golfers of the same score
	Take       string // where the plan is taken; empty for a coach, and with too few rounds
	Settings   string // where the minutes are set; empty for a coach
	Taken      []components.Link
	RunOut     string // address of the run-out book
	StartLine  string // address of the start line
}

// CandidateRow is something to practise.
type CandidateRow struct {
	ID      string // its place on the page
	Place   int    // 1 is the most important
	Name    string // of the part of the game, or what cuts across the parts
	Band    string // the dearest of the part; empty for what cuts across
	Bar     chart.Bar
	Whisker chart.Whisker
	Strokes string // to win back for 18 holes
	Between string // its 95 % interval
	Sure    string
	Minutes string
	Why     string
	Dearest []components.Link
	Drill   components.Link
	Mark    string // what to reach; empty for a drill without a mark
	Chances string // how often the target's golfer passes, and how often the player
	Again   string // when to look at the months
}

// PlanInput is what the page of a plan is made of.
type PlanInput struct {
	Whose   paths.Whose
	Name    string // the player's, for a coach
	Target  float64
	Minutes int
	Units   form.Units
	Today   golf.Date
	Taken   []TakenDay // plans that were taken, the latest first
	Span    golf.Span  // that was asked for; zero for none
	analysis.Plan
}

// NewPlanPage makes the page.
func NewPlanPage(page layout.Page, in PlanInput) PlanPage {
	page.Title, page.Here = "Practice plan", layout.Here(in.Whose, in.Whose.Lessons())
	page.Foot = "Fixed golfer: every round is compared with one golfer, who averages the target on the reference course. Parts are ordered by what is clearly weaker than the rest of the game, then by what would be won back. Marks come from the same golfer. Strokes are for 18 holes."
	p := PlanPage{Page: page, Heading: "Practice plan, " + words.ShortDay(in.Today), Cautions: cautions, Lessons: in.Whose.Lessons(), Months: paths.Comparison{Whose: in.Whose}.Months(), Log: in.Whose.Log(), Beside: in.Whose.Beside(), RunOut: in.Whose.RunOut(), StartLine: in.Whose.StartLine()}
	for _, t := range in.Taken {
		p.Taken = append(p.Taken, components.Link{At: in.Whose.TakenPlan(t.ID), Name: fmt.Sprintf("Plan of %s, on %s", words.ShortDay(t.Day), words.Plural(t.Rounds, "round", "rounds"))})
	}
	if in.Whose.Own {
		p.Settings = paths.Account
	}
	if in.Span != (golf.Span{}) {
		p.Latest = in.Whose.Plan()
	}
	if len(in.Candidates) == 0 {
		p.Lede = in.none()
		return p
	}
	p.Place = fmt.Sprintf("%s, %s to %s. %s over %s for 18 holes.", words.Capital(words.SpelledPlural(in.Game.Rounds, "round", "rounds")), words.ShortDay(in.First), words.ShortDay(in.Last),
		words.StrokeCount(in.Game.Level-in.Target), words.Plain(in.Target))
	if in.Game.Level <= in.Target {
		p.Place = fmt.Sprintf("%s, %s to %s. At or under %s for 18 holes.", words.Capital(words.SpelledPlural(in.Game.Rounds, "round", "rounds")), words.ShortDay(in.First), words.ShortDay(in.Last), words.Plain(in.Target))
	}
	p.Lede = in.lede()
	if in.Thin.Any() {
		p.Few = words.Capital(words.Thin(in.Thin)) + ". Until then: play, note the distances, and do a drill as a test."
	}
	scale := in.scale()
	p.Axis = components.NewAxis(scale, words.Tick)
	total := 0
	for i, c := range in.Candidates {
		p.Candidates = append(p.Candidates, in.row(scale, i+1, c))
		total += c.Minutes
	}
	p.Boxes = in.boxes()
	p.Minutes = fmt.Sprintf("%d minutes a week", total)
	if in.Whose.Own && !in.Thin.Any() && in.Span == (golf.Span{}) {
		p.Take = in.Whose.Plans()
	}
	return p
}

// none says why there is no plan.
func (in PlanInput) none() string {
	if in.Whose.Own {
		return "Enter a round shot by shot, and this page says what to practise."
	}
	return in.Name + " has not shared a round with its shots yet."
}

// lede says what is worth most.
func (in PlanInput) lede() string {
	first := in.Candidates[0]
	name := in.name(first)
	if first.Kind == practice.OfPart {
		name = fmt.Sprintf("%s, above all %s,", words.Capital(first.Part.String()), lower(words.Band(first.Band, in.Units)))
	}
	text := fmt.Sprintf("%s is worth most: about %s to win back.", name, words.StrokeCount(first.WinBack))
	switch first.Sure {
	case practice.Clear:
		return text + " It is clearly weaker than the rest of " + in.game() + "."
	case practice.Leaning:
		return text + " It is probably weaker than the rest of " + in.game() + "."
	}
	for _, c := range in.Candidates {
		if c.Sure == practice.Leaning {
			return fmt.Sprintf("%s Of the parts, %s is probably weaker than the rest of %s.", text, withArticle(c.Part), in.game())
		}
	}
	return text + " No part stands out: each is as large as for any golfer with " + in.score() + "."
}

// withArticle names a part of the game inside a sentence.
func withArticle(c golf.Category) string {
	switch c {
	case golf.Putting:
		return "putting"
	case golf.TeeShots:
		return "the tee shot"
	default:
		return "the " + c.String()
	}
}

func (in PlanInput) game() string {
	if in.Whose.Own {
		return "your game"
	}
	return "the game of " + in.Name
}

func (in PlanInput) score() string {
	if in.Whose.Own {
		return "your score"
	}
	return "that score"
}

// place is where a candidate stands on the page.
func (in PlanInput) place(c analysis.PlanCandidate) string {
	if c.Kind == practice.OfPart {
		return paths.PlanPlace(c.Part)
	}
	return "plan-" + strings.ReplaceAll(c.Kind.String(), " ", "-")
}

// name is what a candidate is called.
func (in PlanInput) name(c analysis.PlanCandidate) string {
	switch c.Kind {
	case practice.Compounding:
		return "One mistake after another"
	case practice.ShortSide:
		return "The short side"
	case practice.ShortMisses:
		return "Six feet and in, on a double"
	default:
		return words.Capital(c.Part.String())
	}
}

// scale holds every bar with its interval.
func (in PlanInput) scale() chart.Scale {
	values := []float64{0}
	for _, c := range in.Candidates {
		values = append(values, c.WinBack, c.Interval.Low, c.Interval.High)
	}
	return chart.NewScale(values...)
}
