package play

import (
	"fmt"
	"math"

	"strokeledger/analysis"
	"strokeledger/analysis/aim"
	"strokeledger/analysis/forecast"
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// ChanceInput is what the page of the chance of a target is made of.
type ChanceInput struct {
	Whose   paths.Whose
	Player  string // the player's name, for a coach
	Course  golf.CourseID
	Name    string // of the course, with its tees
	Card    []golf.CardHole
	Target  float64                   // of 18 holes
	As      form.Number               // level of the parts of the game that are tried; the target where none was asked for
	Drawn   int                       // how many holes are drawn
	Clubs   []aim.Club                // for the tee, among which the plan's aims choose
	Planned bool                      // the plan's aims are played
	Taken   map[int]analysis.OtherAim // what stands in the plan in place of the best aim, by hole
	Working bool                      // it is being worked out
	Two     [2]string                 // changes that the reader asked for together, by their names
	forecast.Chance
}

// Together are two changes of an address; none where they are no two changes.
func Together(names [2]string) [][2]forecast.Change {
	var pair [2]forecast.Change
	for i, name := range names {
		for _, c := range forecast.Changes {
			if c.String() == name {
				pair[i] = c
			}
		}
	}
	if pair[0] == 0 || pair[1] == 0 || pair[0] == pair[1] {
		return nil
	}
	return [][2]forecast.Change{pair}
}

// ChancePage is how likely the target is on a course.
type ChancePage struct {
	layout.Page
	Heading string
	At      string
	Lede    string
	Thin    string
	Sub     []components.Link
	Aims    []components.Link // straight, or the plan's
	Scores  ScorePicture
	Range   *ChanceRange // nil where nothing is known of the player
	Each    []ScoreChance
	Average string
	Axis    components.Axis
	Ifs     []IfRow
	Pairs   []IfRow
	Asked   []AskedChange // the two changes that may be asked for together
	AskAt   string
	As      components.Field // the level of the parts of the game
	Wrong   components.Summary
	Aiming  string // plan where the plan's aims are played
	Takes   string
	Plan    string // the plan of practice
	Target  string
	Empty   bool
}

// ScorePicture shows how often each score comes.
type ScorePicture struct {
	Label   string
	Columns []ScoreColumn
	Ticks   []CurveTick
	Rule    string // the place of the target
	Mean    string
	Said    string // of a hundred, at the target
	Better  string
}

// ScoreColumn is a score.
type ScoreColumn struct {
	X, Y, Width, Height string
	Reached             bool
}

// ChanceRange is the chance with where it may lie.
type ChanceRange struct {
	Said  string
	Label string
	Low   string // places, percent of the width
	High  string
	Now   string
	LowIs string
	HiIs  string
	Ticks []CurveTick
}

// ScoreChance is how many rounds of a hundred are a score or better.
type ScoreChance struct {
	Score, Of string
	Target    bool
}

// IfRow is a change with what it would do.
type IfRow struct {
	Name, Strokes, Before, After string
	From, To                     string // places of the two chances
}

// AskedChange is a choice of a change.
type AskedChange struct {
	components.Field
	Choices []components.Choice
}

// The frame of the picture of scores, in its own units.
const (
	scoreWide, scoreHigh = 400.0, 180.0
	scoreFoot            = 150.0
	scoreLeft            = 8.0
)

// NewChancePage makes the page.
func NewChancePage(page layout.Page, in ChanceInput) ChancePage {
	target := scoreOf(in.Chance.Target)
	page.Title, page.Here = "Chance of "+target, layout.Here(in.Whose, in.Whose.Play())
	page.Explained = "aims"
	page.Foot = "The simulated golfer plays each part of the game at its own level, with good and bad days. A bad shot makes the next one harder only through where it leaves the ball. A golfer who presses after a mistake makes more doubles than these rounds show. The range is how far the chance would move with another run of rounds like these. It comes from resampling them: as many as there are, each drawn whole, some twice and some not at all, again and again. About 95 samples in 100 give a chance within it." + in.clubsSaid()
	if in.Working {
		target = scoreOf(in.Target)
	}
	p := ChancePage{Page: page, Heading: "Chance of " + target + ", " + in.Name, Target: target, Sub: subLinks(in.Whose, in.Course, in.Whose.Chance(in.Course)), Plan: in.Whose.Plan(), Empty: in.Rounds == 0}
	if in.Working {
		p.Lede, p.Title = "Simulating about 20,000 rounds, and as many again for each change. This takes a few seconds; the page updates by itself.", "Chance of "+target
		return p
	}
	if p.Empty {
		p.Lede = "This course has no holes yet, so no round can be played on it."
		return p
	}
	p.At, p.Lede = in.at(), in.lede(target)
	if in.Thin.Any() {
		p.Thin = fmt.Sprintf("%s. Until then the golfer of the target plays, and there is no range.", capital(words.Thin(in.Thin)))
	}
	if in.Drawn > 0 {
		p.Aims = []components.Link{{Name: "Aimed straight", At: in.Whose.Chance(in.Course), Here: !in.Planned}, {Name: "The plan’s aims", At: in.Whose.Chance(in.Course) + "?aims=plan", Here: in.Planned}}
	}
	p.Scores, p.Each = in.scores(target), in.each()
	p.Range = in.between(target)
	p.Average = fmt.Sprintf("Average %.1f. A round without a double: %s in 100.", in.Mean, hundred(in.NoDoubles))
	p.ifs(in)
	p.asked(in)
	p.Takes = in.takes()
	return p
}

func scoreOf(x float64) string { return fmt.Sprintf("%.0f", math.Floor(x+.5)) }

// hundred is a share as a number of rounds of a hundred.
func hundred(share float64) string { return fmt.Sprintf("%.0f", math.Round(100*share)) }

func (in ChanceInput) lede(target string) string {
	who, would := "Playing as you do now", "would be"
	switch {
	case in.Thin.Any():
		who, would = "For a golfer who averages "+words.Plain(in.Target), isOrAre(in.Chance.Chance)
	case !in.Whose.Own:
		who = "As " + in.Player + " plays now"
	}
	text := fmt.Sprintf("%s, about %s in 100 here %s %s or better.", who, roundsOf(in.Chance.Chance), would, target)
	if len(in.WhatIf) > 0 && in.WhatIf[0].Chance > in.Chance.Chance {
		text += fmt.Sprintf(" %s it would be %s.", ifSentence(in.WhatIf[0].Change, in.as()), hundred(in.WhatIf[0].Chance))
	}
	return text
}

func roundsOf(share float64) string {
	n := int(math.Round(100 * share))
	return words.Plural(n, "round", "rounds")
}

func isOrAre(share float64) string {
	return words.OneOrMany(int(math.Round(100*share)), "is", "are")
}

func (p *ChancePage) ifs(in ChanceInput) {
	for _, v := range chanceScale.Ticks() {
		tick := components.Tick{X: chanceScale.Across(v), Text: hundred(v)}
		if v > .01 && v < .99 {
			tick.Class = "roomy-tick"
		}
		p.Axis.Ticks = append(p.Axis.Ticks, tick)
		if v > 0 {
			p.Axis.Grid = append(p.Axis.Grid, chanceScale.Across(v))
		}
	}
	p.Axis.Zero = chanceScale.Across(0)
	row := func(w forecast.WhatIf, name string) IfRow {
		return IfRow{name, words.Signed(w.Strokes, 1), hundred(in.Chance.Chance), hundred(w.Chance), chanceScale.Across(in.Chance.Chance), chanceScale.Across(w.Chance)}
	}
	for _, w := range in.WhatIf {
		p.Ifs = append(p.Ifs, row(w, ifName(w.Change, in.as())))
	}
	for _, w := range in.pairs() {
		p.Pairs = append(p.Pairs, row(w, ifName(w.Change, in.as())+", and "+lowerFirst(ifName(w.Second, in.as()))))
	}
}

// as is the level at which the parts of the game are tried.
func (in ChanceInput) as() float64 { return AskedLevel(in.As, in.Target) }

// AskedLevel is a level that was asked for; the target where none was, or where it
// cannot be read.
func AskedLevel(asked form.Number, target float64) float64 {
	if !asked.Sound() || asked.Value == 0 {
		return target
	}
	return asked.Value
}

// asked offers another level for the parts of the game, and any two changes together.
func (p *ChancePage) asked(in ChanceInput) {
	p.AskAt = in.Whose.Chance(in.Course)
	p.As = components.Field{Name: "as", Label: "Parts of the game as a golfer of", Value: in.As.Text, Mode: "decimal", Hint: form.TargetRange(), Problem: in.As.Problem}
	if p.As.Value == "" {
		p.As.Value = words.Plain(in.Target)
	}
	p.Wrong = components.Summed(p.As).Saying("Not worked out yet.")
	if in.Planned {
		p.Aiming = "plan"
	}
	for i, label := range []string{"One change", "and another"} {
		a := AskedChange{Field: components.Field{Name: []string{"one", "two"}[i], Label: label}}
		for k, w := range in.WhatIf {
			name := w.Change.String()
			a.Choices = append(a.Choices, components.Choice{Value: name, Name: ifName(w.Change, in.as()), Chosen: name == in.Two[i] || in.Two[i] == "" && k == i})
		}
		if len(a.Choices) > 1 {
			p.Asked = append(p.Asked, a)
		}
	}
}

// pairsMost is how many pairs of changes are listed, the best, besides the one that was
// asked for.
const pairsMost = 5

func (in ChanceInput) pairs() []forecast.WhatIf {
	asked := Together(in.Two)
	var all []forecast.WhatIf
	for i, w := range in.Chance.Pairs {
		wanted := len(asked) > 0 && (asked[0] == [2]forecast.Change{w.Change, w.Second} || asked[0] == [2]forecast.Change{w.Second, w.Change})
		if i < pairsMost || wanted {
			all = append(all, w)
		}
	}
	return all
}

// takes says what makes the target even odds.
func (in ChanceInput) takes() string {
	t := in.Chance.Takes
	switch {
	case t.Already:
		return "The odds are already even or better."
	case !t.Known:
		return "Improving one part alone would not make it even odds."
	default:
		return fmt.Sprintf("The smallest single step to even odds is %s at %.0f: %s a round, and then %s in 100.", partWords(t.Part), t.Level, words.StrokeCount(-t.Strokes), hundred(t.Chance))
	}
}

func partWords(c golf.Category) string {
	switch c {
	case golf.Putting:
		return "putting"
	case golf.TeeShots:
		return "the tee shots"
	default:
		return "the " + c.String()
	}
}
