package coach

import (
	"slices"

	"strokeledger/analysis/golf"
	"strokeledger/web/words"
)

// DrillDone is a drill that the player did without being set it.
type DrillDone struct {
	Name     string
	Sessions []DrillSession // the earliest first
}

// practised are what is to be practised, what the player did unasked from one day to
// another, and last what is done, since a page may not hold all.
func practised(in ReportInput, first, last golf.Date) []AssignmentCard {
	var open, done []AssignmentCard
	for _, a := range in.Assignments {
		card := newAssignmentCard(a, LessonsInput{Whose: in.Months.At.Whose, Today: in.Today})
		if a.Done {
			done = append(done, card)
		} else {
			open = append(open, card)
		}
	}
	for _, d := range in.Drills {
		open = append(open, d.between(first, last)...)
	}
	return append(open, done...)
}

// between is the card of the sessions from one day to another; none without one.
func (d DrillDone) between(first, last golf.Date) []AssignmentCard {
	done := slices.Clone(d.Sessions)
	done = slices.DeleteFunc(done, func(s DrillSession) bool { return s.Day.Compare(first) < 0 || s.Day.Compare(last) > 0 })
	if len(done) == 0 {
		return nil
	}
	return []AssignmentCard{{
		What:    d.Name,
		Facts:   []string{words.Plural(len(done), "session", "sessions"), "not set by anybody"},
		Results: rowsOf(done),
	}}
}

// rowsOf are the results of sessions.
func rowsOf(done []DrillSession) []ResultRow {
	var all []ResultRow
	for _, s := range done {
		all = append(all, ResultRow{Day: words.ShortDay(s.Day), Result: s.Result, Passed: s.Passed})
	}
	return all
}
