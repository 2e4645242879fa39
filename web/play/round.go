package play

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/aim"
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// RoundInput is what the plan of a round is made of.
type RoundInput struct {
	Whose  paths.Whose
	Player string // the player's name
	Course golf.CourseID
	Name   string // of the course, with its tees
	Card   []golf.CardHole
	As     analysis.PlaysAs
	Target float64
	Unit   golf.Unit
	Today  golf.Date
	Drawn  int                       // how many holes are drawn
	Plans  map[int]analysis.HolePlan // of those that are worked out

	Compare []components.Link // rounds that can be compared with it
	Advice  map[int][]Advised // what coaches say of its holes
}

// RoundPage is the plan of a round, with the card to carry.
type RoundPage struct {
	layout.Page
	Heading  string
	At       string
	Lede     string
	Thin     string
	Progress string // how far it is, while it is worked out; empty when it is done
	Sub      []components.Link
	First    []PlanFirst
	Nines    []PlanNine
	Saved    string // strokes a round
	Best     string // the end of the axis
	Card     CarryCard
	CardOnly bool
	CardAt   string
	PlanAt   string
	Draw     string            // where holes are drawn
	Empty    bool              // no hole is drawn
	Compare  []components.Link // rounds that can be compared with the plan
	Said     []Said            // what coaches say of its holes
	Taken    string            // where the plan is a coach's proposal; empty for nowhere
	own      bool              // it is the reader's own
}

// PlanFirst is a hole where the plan matters.
type PlanFirst struct {
	Saves string
	Hole  components.Link
	Aim   string
	Why   string
}

// PlanNine is nine lines of the plan with their sum.
type PlanNine struct {
	Name       string // Out or In; empty for a course of no more than nine holes
	Lines      []PlanLine
	Par, Yards string
	Saved      string
}

// PlanLine is one hole of the plan.
type PlanLine struct {
	Number, Par, Yards string
	At                 string
	Club, Aim, Safe    string
	Bar                string // how long its bar is
	Saved              string // empty for a hole that is not drawn
	Matters            bool
	Draw               string // where it is drawn; empty for a drawn one
}

// firstMost is how many holes are named where it matters.
const firstMost = 5

// NewRoundPage makes the page.
func NewRoundPage(page layout.Page, in RoundInput) RoundPage {
	page.Title, page.Here = "Plan of the round", layout.Here(in.Whose, in.Whose.Play())
	page.BodyClass = "round-plan"
	page.Explained = "aims"
	page.Foot = "Written notes are normally allowed under the Rules. Ask the committee about distance devices, green maps and advice during a round. What an aim saves is an average; one shot says nothing about the aim."
	p := RoundPage{Page: page, Heading: "Plan of the round, " + in.Name, Sub: subLinks(in.Whose, in.Course, in.Whose.RoundPlan(in.Course)),
		CardAt: in.Whose.CarryCard(in.Course), PlanAt: in.Whose.RoundPlan(in.Course), Draw: paths.Pictures(in.Course), Empty: in.Drawn == 0, Compare: in.Compare, own: in.Whose.Own}
	p.At = in.at()
	m := measure{in.Unit}
	p.Card, p.Said = newCarryCard(m, in), said(m, in)
	if p.Empty {
		p.Lede = "No hole of this course is drawn yet, so there is nothing to plan."
		return p
	}
	if len(in.Plans) < in.Drawn {
		p.Progress = fmt.Sprintf("%d of %d drawn holes are worked out. The page updates by itself.", len(in.Plans), in.Drawn)
	}
	p.Thin = thinAs(in.As, in.Target)
	p.lines(m, in)
	p.first(m, in)
	p.Taken = takenSaid(in)
	return p
}

// Alone is the page with nothing but the card to carry.
func (p RoundPage) Alone() RoundPage {
	p.CardOnly, p.Title, p.Heading, p.BodyClass = true, "Card to carry", "Card to carry", "carry-page"
	if p.own && p.Progress == "" {
		p.Script, p.Card.Needed = "carry.js", strings.Join(layout.EntryFiles(), " ")
	}
	return p
}

func (in RoundInput) at() string {
	par, length := 0, golf.Distance(0)
	for _, h := range in.Card {
		par, length = par+h.Par, length+h.Length
	}
	return fmt.Sprintf("Par %d, %s yd. %s Made %s.", par, words.Grouped(int(length.Yards()+.5)), asWords(in.Whose, in.Player, in.As), words.ShortDay(in.Today))
}

// savedOf is what the plan of a hole saves, as it is printed: nothing where the aim
// does not matter, since the plan is then as good as any. What the player took of a
// coach saves what it saves, even if that is less than nothing.
func savedOf(plan analysis.HolePlan) float64 {
	gain := 0.0
	if a := plan.Advice.Approach; a != nil {
		gain = saved(a.Flag.Cost, plan.Stands().Aim.Cost)
	} else {
		gain = saved(plan.Advice.Straight().Straight.Cost, plan.Stands().Aim.Cost)
	}
	if !matters(gain) && plan.Taken == nil {
		return 0
	}
	return gain
}

// counts reports whether the plan of a hole is to be kept: it saves something, or the
// player took it of a coach.
func counts(plan analysis.HolePlan) bool { return plan.Taken != nil || matters(savedOf(plan)) }

// aimed is the club and the aim of a plan in words.
func aimed(m measure, plan analysis.HolePlan) (club, where string) {
	stands := plan.Stands()
	if plan.Advice.Approach != nil {
		return "", m.ofFlag(stands.Aim)
	}
	return stands.Club, m.side(stands.Aim.Side)
}

// straightAimed is what is as good where the aim does not matter.
func straightAimed(plan analysis.HolePlan) (club, where string) {
	if plan.Advice.Approach != nil {
		return "", "at the flag"
	}
	return plan.Advice.Straight().Club.Name, "middle"
}

func safe(plan analysis.HolePlan) string {
	all := plan.SafeSides()
	if len(all) == 0 {
		return "any"
	}
	return sides(all[:min(len(all), 2)])
}

// nines cuts a card into the front and the back.
func nines(card []golf.CardHole) (names []string, parts [][]golf.CardHole) {
	if len(card) <= 9 {
		return []string{"Holes"}, [][]golf.CardHole{card}
	}
	cut := slices.IndexFunc(card, func(h golf.CardHole) bool { return h.Number > 9 })
	if cut <= 0 {
		return []string{"Holes"}, [][]golf.CardHole{card}
	}
	return []string{"Out", "In"}, [][]golf.CardHole{card[:cut], card[cut:]}
}

// lines are the lines of the plan, with what adds up as it is printed.
func (p *RoundPage) lines(m measure, in RoundInput) {
	largest := aim.MattersFrom
	for _, plan := range in.Plans {
		largest = max(largest, savedOf(plan))
	}
	p.Best = strokes(largest)
	names, parts := nines(in.Card)
	total := 0.0
	for i, part := range parts {
		nine := PlanNine{Name: names[i]}
		sum, par, length := 0.0, 0, 0.0
		for _, h := range part {
			line := PlanLine{Number: fmt.Sprint(h.Number), Par: fmt.Sprint(h.Par), Yards: yards(h.Length.Yards()), At: in.Whose.HolePlan(in.Course, h.Number, "")}
			par, length = par+h.Par, length+h.Length.Yards()
			if plan, known := in.Plans[h.Number]; known {
				gain := savedOf(plan)
				line.fill(m, plan, gain, largest)
				sum += gain
			} else {
				line.Draw = paths.Picture(in.Course, h.Number)
			}
			nine.Lines = append(nine.Lines, line)
		}
		nine.Par, nine.Yards, nine.Saved = fmt.Sprint(par), words.Grouped(int(length+.5)), strokes(sum)
		p.Nines = append(p.Nines, nine)
		total += printedStep(sum)
	}
	p.Saved = strokes(total)
}

func (l *PlanLine) fill(m measure, plan analysis.HolePlan, gain, largest float64) {
	l.Matters = counts(plan)
	club, where := aimed(m, plan)
	if !l.Matters {
		club, where = straightAimed(plan)
	}
	l.Club, l.Aim, l.Safe, l.Saved = capital(club), where, safe(plan), strokes(gain)
	if gain > 0 {
		l.Bar = fmt.Sprintf("%s%%", tenth(100*gain/largest))
	}
}

// first names the holes where the plan saves most, and the sentence of the round.
func (p *RoundPage) first(m measure, in RoundInput) {
	var order []analysis.HolePlan
	total := 0.0
	for _, plan := range in.Plans {
		if gain := savedOf(plan); matters(gain) {
			order = append(order, plan)
		}
		total += savedOf(plan)
	}
	slices.SortFunc(order, func(a, b analysis.HolePlan) int {
		return cmp.Or(cmp.Compare(savedOf(b), savedOf(a)), cmp.Compare(a.Hole.Number, b.Hole.Number))
	})
	for _, plan := range order[:min(len(order), firstMost)] {
		p.First = append(p.First, planFirst(m, in, plan))
	}
	p.Lede = roundLede(order, total, in.Drawn)
	if printedStep(total) < 0 {
		p.Lede = fmt.Sprintf("With what a coach proposes, the plan costs %s a round more than the longest club down the middle.", words.StrokeCount(-total))
	}
}

func planFirst(m measure, in RoundInput, plan analysis.HolePlan) PlanFirst {
	club, where := aimed(m, plan)
	f := PlanFirst{Saves: strokes(savedOf(plan)), Hole: components.Link{Name: fmt.Sprintf("Hole %d", plan.Hole.Number), At: in.Whose.HolePlan(in.Course, plan.Hole.Number, "")}}
	switch {
	case club != "":
		f.Aim, f.Why = club+", "+where+".", teeAside(m, plan.Advice)
	default:
		f.Aim, f.Why = where+".", trouble(plan.Advice.Approach.Best.Shares, plan.Advice.Approach.Flag.Shares)
	}
	if plan.Taken != nil {
		f.Why = "As a coach proposes."
	}
	return f
}
