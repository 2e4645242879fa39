package play

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/words"
)

// Advised is what a coach says of a hole, with what the proposal costs the player.
type Advised struct {
	ID       int64
	Written  time.Time
	Coach    string // the coach's name
	Mine     bool   // the reader wrote it
	Day      golf.Date
	Note     string // may be empty
	Proposes bool
	Club     string // empty on a par 3
	Side     float64
	Long     float64
	Safe     analysis.Side // proposed as the safe side of the green; 0 for none
	Taken    bool
	Declined bool
	Price    *analysis.TakenAim // nil where it is not known
}

// AdviceView is what coaches say of a hole, and where a coach says it.
type AdviceView struct {
	Heading string
	Cards   []AdviceCard
	Form    *AdviceForm // nil for the player
}

// AdviceCard is what one coach says.
type AdviceCard struct {
	By       string // “Ines Moreno, 14 Sep 2026”
	Note     string
	Proposal string // in words; empty for none
	Cost     string
	State    string // what became of the proposal
	AnswerAt string // empty where there is nothing to answer
	ID       string
	Written  string // which version of it the answer is about
	Take     string // button; empty when it is taken
	Decline  string // button; empty when it is declined
}

// AdviceForm is where a coach writes.
type AdviceForm struct {
	At       string
	Said     bool // something is kept, so that it can be removed
	Summary  components.Summary
	Note     components.Area
	Proposes bool // a club and an aim can be proposed: the hole is drawn
	Club     components.Field
	Clubs    []components.Choice
	Side     components.Field
	To       components.Field
	Tos      []components.Choice
	Flag     bool // the aim is by the flag, so that it may be long or short as well
	Long     components.Field
	Way      components.Field
	Ways     []components.Choice
	Safe     components.Field
	Safes    []components.Choice
}

// newAdviceView makes the part of a hole's page; nil when there is nothing to show.
func newAdviceView(m measure, in HoleInput) *AdviceView {
	v := &AdviceView{Heading: "What your coach says"}
	if !in.Whose.Own {
		v.Heading, v.Form = "A note and a proposal", newAdviceForm(m, in)
	}
	for _, a := range in.Advice {
		v.Cards = append(v.Cards, newAdviceCard(m, in, a))
	}
	if in.Whose.Own && len(v.Cards) == 0 {
		return nil
	}
	return v
}

func newAdviceCard(m measure, in HoleInput, a Advised) AdviceCard {
	c := AdviceCard{By: a.Coach + ", " + words.ShortDay(a.Day), Note: a.Note}
	if !a.asks() {
		return c
	}
	c.Proposal = "Proposes " + a.proposal(m) + "."
	if a.Proposes {
		c.Cost = a.cost(in.Plan, in.Drawn)
	}
	if a.Safe != 0 && in.Drawn {
		c.Cost = strings.TrimSpace(c.Cost + " " + a.missed(in))
	}
	switch {
	case a.Taken && in.Whose.Own:
		c.State = "Accepted: it is in your plan and on the card."
	case a.Taken:
		c.State = "Accepted: it is in the plan."
	case a.Declined && in.Whose.Own:
		c.State = "Declined: it is not in your plan."
	case a.Declined:
		c.State = "Declined."
	case !in.Whose.Own:
		c.State = "Not answered yet."
	}
	if in.Whose.Own && (a.canStand(in.Drawn) || a.Taken) {
		c.AnswerAt, c.ID, c.Written = in.Whose.AnswerAdvice(in.Course, in.Hole.Number), fmt.Sprint(a.ID), fmt.Sprint(a.Written.UnixMicro())
		if !a.Taken {
			c.Take = "Take it into my plan"
		}
		if !a.Declined {
			c.Decline = a.otherwise()
		}
	}
	return c
}

// aim is the proposal in words: hybrid, aim 6 yd right of the middle.
func (a Advised) aim(m measure) string {
	if a.Club == "" {
		return "an aim " + m.byFlag(a.Side, a.Long)
	}
	return "the " + a.Club + ", " + m.ofMiddle(a.Side)
}

// stands says what stands in the plan in place of the best aim; empty for nothing.
func (in HoleInput) stands(m measure) string {
	for _, a := range in.Advice {
		if a.Taken && in.Plan.Taken != nil {
			return fmt.Sprintf("In the plan, as %s proposes: %s, %s strokes.", a.Coach, a.aim(m), strokes(in.Plan.Taken.Aim.Cost))
		}
	}
	return ""
}

// cost sets a proposal beside the best aim, as both are printed.
func (a Advised) cost(plan analysis.HolePlan, drawn bool) string {
	switch {
	case !drawn:
		return "The hole is no longer drawn, so its cost is not known."
	case a.Price == nil && (a.Club == "") != (plan.Advice.Approach != nil):
		return "The hole has a new par, so its cost is not known."
	case a.Price == nil:
		return fmt.Sprintf("The %s is no longer one of the clubs for the tee, so its cost is not known.", a.Club)
	}
	plan.Taken = nil
	best := plan.Stands().Aim.Cost
	more := saved(a.Price.Aim.Cost, best)
	text := fmt.Sprintf("It costs %s strokes on average, the best aim %s", strokes(a.Price.Aim.Cost), strokes(best))
	switch {
	case more > 0:
		return fmt.Sprintf("%s: %s more.", text, strokes(more))
	case more < 0:
		return fmt.Sprintf("%s: %s less.", text, strokes(-more))
	default:
		return text + ": the same."
	}
}

// Written reads when what an answer is about was written; what is no time is no version.
func Written(text string) time.Time {
	micro, _ := strconv.ParseInt(text, 10, 64)
	return time.UnixMicro(micro)
}

// newAdviceForm makes the form of a coach.
func newAdviceForm(m measure, in HoleInput) *AdviceForm {
	f := in.form(m.unit)
	v := &AdviceForm{At: in.Whose.HoleAdvice(in.Course, in.Hole.Number), Said: in.Said(), Proposes: in.Drawn, Flag: in.Plan.Advice.Approach != nil}
	v.Note = components.FilledArea(components.Area{Name: "note", ID: "advice-note", Label: "Note", Hint: fmt.Sprintf("At most %d letters. The pupil reads it here and on the plan of the round.", golf.MaxHoleNote)}, f.Note)
	from, unit := "the middle", m.unit.String()
	v.Clubs = []components.Choice{{Value: "", Name: "Nothing", Chosen: f.Club.Value == ""}}
	if v.Flag {
		from = "the flag"
	}
	for _, c := range AdviceClubs(in) {
		name := capital(c)
		if c == form.AnAim {
			name = "An aim"
		}
		v.Clubs = append(v.Clubs, components.Choice{Value: c, Name: name, Chosen: f.Club.Value == c})
	}
	v.Club = components.Filled(components.Field{Name: "club", Label: "Propose"}, f.Club)
	v.Side = components.Filled(components.Field{Name: "side", Label: fmt.Sprintf("From %s, %s", from, unit), Mode: "numeric", Hint: "Leave empty for none."}, f.Side)
	v.To = components.Filled(components.Field{Name: "to", Label: "Which side"}, f.To)
	v.Long = components.Filled(components.Field{Name: "long", Label: "Long or short, " + unit, Mode: "numeric", Hint: "Leave empty for neither."}, f.Long)
	v.Way = components.Filled(components.Field{Name: "way", Label: "Which way"}, f.Way)
	v.Safe, v.Safes = safeField(in, f)
	v.Tos, v.Ways = picks(f.To.Value, "left", "right"), picks(f.Way.Value, "short", "long")
	fields := []components.Field{v.Note.Field(), v.Club, v.Side, v.To}
	if v.Flag {
		fields = append(fields, v.Long, v.Way)
	}
	v.Summary = components.Summed(append(fields, v.Safe)...)
	return v
}

// picks are choices by name, and none.
func picks(chosen string, all ...string) []components.Choice {
	list := []components.Choice{{Name: "–", Chosen: chosen == ""}}
	for _, name := range all {
		list = append(list, components.Choice{Value: name, Name: capital(name), Chosen: name == chosen})
	}
	return list
}

// Said reports whether the reader has said something of the hole.
func (in HoleInput) Said() bool {
	return slices.ContainsFunc(in.Advice, func(a Advised) bool { return a.Mine })
}

// form is what the coach typed, or what is kept of it.
func (in HoleInput) form(unit golf.Unit) form.HoleAdvice {
	if in.Form != nil {
		return *in.Form
	}
	for _, a := range in.Advice {
		if a.Mine {
			club := a.Club
			if a.Proposes && club == "" {
				club = form.AnAim
			}
			return form.HoleAdviceOf(a.Note, club, a.Safe.String(), a.Side, a.Long, unit)
		}
	}
	return form.HoleAdvice{}
}

// AdviceClubs are the clubs that can be proposed on a hole; on a par 3 an aim alone,
// and nothing where the hole is not drawn.
func AdviceClubs(in HoleInput) []string {
	switch {
	case !in.Drawn:
		return nil
	case in.Plan.Advice.Approach != nil:
		return []string{form.AnAim}
	}
	var all []string
	for _, c := range in.Plan.Advice.Clubs {
		all = append(all, c.Club.Name)
	}
	return all
}
