// Package practice holds the pages that say what to practise and how: the plan, and
// a page for each drill.
package practice

import (
	"fmt"
	"math"
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

// TakenDay is a plan that was taken on a day.
type TakenDay struct {
	ID     int64
	Day    golf.Date
	Rounds int
}

// cautions stand with every plan. Common practice.
var cautions = []string{
	"Warm up first. Stop when something hurts, and see a professional about it.",
	"Limit full swings: 60 to 90 a session is plenty, with days off in between.",
	"Nobody stands in the line of fire, on the range or round a green.",
	"Leave the course and the range in lightning.",
	"How to swing is for a qualified coach to teach.",
}

// NewPlanPage makes the page.
func NewPlanPage(page layout.Page, in PlanInput) PlanPage {
	page.Title, page.Here = "Practice plan", layout.Here(in.Whose, in.Whose.Lessons())
	page.Foot = "Fixed golfer: every round is compared with one golfer, who averages the target on the reference course. Parts are ordered by what is clearly weaker than the rest of the game, then by what would be won back. Marks come from the same golfer. Strokes are for 18 holes."
	p := PlanPage{Page: page, Heading: "Practice plan, " + words.ShortDay(in.Today), Cautions: cautions, Lessons: in.Whose.Lessons(), Months: paths.Comparison{Whose: in.Whose}.Months(), Log: in.Whose.Log(), RunOut: in.Whose.RunOut(), StartLine: in.Whose.StartLine()}
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

func (in PlanInput) row(scale chart.Scale, place int, c analysis.PlanCandidate) CandidateRow {
	r := CandidateRow{ID: in.place(c), Place: place, Name: in.name(c), Bar: scale.Bar(c.WinBack), Whisker: scale.Whisker(0, c.Interval.Low, c.Interval.High),
		Strokes: words.Signed(c.WinBack, 1), Between: fmt.Sprintf("%s to %s", words.Signed(c.Interval.Low, 1), words.Signed(c.Interval.High, 1)),
		Minutes: fmt.Sprint(c.Minutes), Why: in.why(c), Drill: components.Link{At: in.Whose.Drill(c.Drill.Key), Name: c.Drill.Name}, Again: in.again(c)}
	if c.Kind == practice.OfPart {
		r.Band = lower(words.Band(c.Band, in.Units))
		r.Sure = sureWords[c.Sure]
	} else {
		r.Sure = "counted in its parts too"
	}
	for _, s := range c.Dearest {
		r.Dearest = append(r.Dearest, components.Link{At: in.Whose.Round(s.Round) + paths.Shot(s.Hole, s.Shot), Name: fmt.Sprintf("%s, hole %d", words.NearDay(s.Day, in.Today), s.Hole)})
	}
	if c.Mark.Pass > 0 {
		r.Mark, r.Chances = markWords(c.Mark), in.chances(c.Mark, max(c.Today, in.Target))
	}
	return r
}

var sureWords = [...]string{practice.Usual: "as large as for any golfer of this score", practice.Leaning: "leaning", practice.Clear: "clear"}

// why says what the loss stands beside.
func (in PlanInput) why(c analysis.PlanCandidate) string {
	switch c.Kind {
	case practice.Compounding:
		return fmt.Sprintf("What one error after another cost on doubles, beyond what it costs %s golfer. Practise the plain shot back into play.", words.A(in.Target))
	case practice.ShortSide:
		return "What too little green added to chips: aim at the side with room."
	case practice.ShortMisses:
		return "Missed putts of 6 ft or less are the ones that keep a double on the card."
	}
	e := in.Game.Parts[c.Part]
	return fmt.Sprintf("%s %s here for 18 holes; a golfer with %s usually loses %s.", in.loses(), amount(e.Mean), in.score(), amount(e.Usual))
}

func (in PlanInput) loses() string {
	if in.Whose.Own {
		return "You lose"
	}
	return in.Name + " loses"
}

// amount is a loss in a sentence that says loses: what is won back is less than
// nothing.
func amount(x float64) string { return strings.TrimPrefix(words.Signed(x, 1), "+") }

// again says when the months may show what was won.
func (in PlanInput) again(c analysis.PlanCandidate) string {
	switch {
	case c.Kind != practice.OfPart:
		return ""
	case c.Again == 0:
		return "Rounds alone will not show the gain; the drill will."
	default:
		return fmt.Sprintf("After %d more rounds it is even odds that the months call the gain at least leaning.", c.Again)
	}
}

func markWords(m practice.Mark) string {
	text := fmt.Sprintf("%d of %d", m.Pass, m.Tries)
	if m.Sessions > 1 {
		text += fmt.Sprintf(" over %s", words.SpelledPlural(m.Sessions, "session", "sessions"))
	}
	return text
}

// chances says how often a mark is passed. today is the level of the player.
func (in PlanInput) chances(m practice.Mark, today float64) string {
	who := "you today"
	if !in.Whose.Own {
		who = in.Name + " today"
	}
	text := fmt.Sprintf("%s passes it %d times in 100", words.Capital(words.A(in.Target)), hundredths(m.Target))
	if today > in.Target {
		text += fmt.Sprintf(", %s %d", who, hundredths(m.Today))
	}
	if !m.Tells {
		text += ". One session cannot tell the two apart"
	}
	return text + "."
}

func hundredths(x float64) int { return int(math.Round(100 * x)) }

// after is what stands behind one of several links.
func after(i, of int) string {
	if i < of-1 {
		return ", "
	}
	return "."
}

func lower(s string) string { return strings.ToLower(s[:1]) + s[1:] }
