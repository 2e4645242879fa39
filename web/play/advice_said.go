package play

import (
	"fmt"
	"strings"

	"strokeledger/web/components"
	"strokeledger/web/words"
)

// Said is what coaches say of one hole, on the plan of the round.
type Said struct {
	Hole components.Link
	Text string
}

// said lists what coaches say of the holes of a course.
func said(m measure, in RoundInput) []Said {
	var all []Said
	for _, h := range in.Card {
		for _, a := range in.Advice[h.Number] {
			all = append(all, Said{components.Link{Name: fmt.Sprintf("Hole %d", h.Number), At: in.Whose.HolePlan(in.Course, h.Number, "") + "#advice"}, a.said(m)})
		}
	}
	return all
}

// said is a note and what is proposed, in words.
func (a Advised) said(m measure) string {
	parts := nonEmpty(a.Note)
	if a.asks() {
		state := "not answered yet"
		switch {
		case a.Taken && a.Proposes && a.Price == nil:
			state = "taken, but its cost is not known, so the best aim stands"
		case a.Taken:
			state = "taken"
		case a.Declined:
			state = "declined"
		}
		parts = append(parts, fmt.Sprintf("Proposes %s: %s.", a.proposal(m), state))
	}
	return strings.Join(parts, " ") + " " + a.Coach + ", " + words.ShortDay(a.Day) + "."
}

// takenSaid says of which holes the plan is what a coach proposed; empty for none.
func takenSaid(in RoundInput) string {
	var aims, sides []string
	more := 0.0
	for _, h := range in.Card {
		plan := in.Plans[h.Number]
		if plan.Taken != nil {
			aims = append(aims, "the "+ordinal(h.Number))
			best := plan
			best.Taken = nil
			more += saved(plan.Taken.Aim.Cost, best.Stands().Aim.Cost)
		}
		if plan.Safe != 0 {
			sides = append(sides, "the "+ordinal(h.Number))
		}
	}
	var all []string
	if len(aims) > 0 {
		all = append(all, fmt.Sprintf("On %s the proposal of a coach stands. Together the best aims there would cost %s less.", words.List(aims), strokes(more)))
	}
	if len(sides) > 0 {
		all = append(all, fmt.Sprintf("The safe side of the green on %s is the one that a coach proposed.", words.List(sides)))
	}
	return strings.Join(all, " ")
}

// changed says that an answer was not recorded, since the coach has said something else
// or removed it meanwhile; empty otherwise.
func (in HoleInput) changed() string {
	switch {
	case !in.Changed:
		return ""
	case len(in.Advice) == 0:
		return "Your answer is not recorded: your coach has removed the proposal since you opened this page."
	default:
		return "Your answer is not recorded: what your coach proposes has changed since you opened this page."
	}
}
