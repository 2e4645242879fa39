package coach

import (
	"fmt"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/words"
)

// Assignment is something to practise, as a page is asked to show it.
type Assignment struct {
	ID       int64
	By       string // who gave it; empty when the account is gone
	Mine     bool   // who looks gave it
	What     string
	Amount   string
	PassMark string
	Due      golf.Date
	Done     bool
	Results  []AssignmentResult
}

// AssignmentResult is one practice.
type AssignmentResult struct {
	ID     int64
	Day    golf.Date
	Result string
	Passed bool
}

// AssignForm is where something to practise is given.
type AssignForm struct {
	At     string
	Fields []components.Field
	Open   bool
	Wrong  components.Summary
}

// AssignmentCard is something to practise, with what came of it.
type AssignmentCard struct {
	ID, What string
	Facts    []string // how much, pass mark, who gave it
	Due      string
	Late     string
	Results  []ResultRow
	Passed   string // of the results
	Record   *RecordForm
	TickOff  string // where it is ticked off; empty for a coach
	TickText string
	TickTo   string
	Remove   string // empty for others' assignments
}

// ResultRow is one practice.
type ResultRow struct{ Day, Result, Passed, Remove string }

// RecordForm is where a practice is recorded.
type RecordForm struct {
	At     string
	Day    components.Field
	Result components.Field
	Passed string // id of the box
	Open   bool
	Wrong  components.Summary
}

func assignmentCard(a Assignment, q LessonsInput) AssignmentCard {
	c := AssignmentCard{ID: fmt.Sprintf("practice-%d", a.ID), What: a.What}
	for _, f := range []struct{ before, text string }{{"", a.Amount}, {"passed with ", a.PassMark}, {"given by ", a.By}} {
		if f.text != "" {
			c.Facts = append(c.Facts, f.before+f.text)
		}
	}
	switch late := words.DaysBetween(a.Due, q.Today); {
	case a.Done:
		c.Due = "ticked off"
	case late > 0:
		c.Late = "late " + words.Plural(late, "day", "days")
	default:
		c.Due = "by " + words.DueDay(a.Due, q.Today)
	}
	passed := 0
	for _, r := range a.Results {
		row := ResultRow{Day: words.ShortDay(r.Day), Result: r.Result, Passed: words.OneOrMany(words.Tally(r.Passed), "passed", "not passed")}
		if q.Whose.Own {
			row.Remove = q.Whose.RemoveResult(a.ID, r.ID)
		}
		passed += words.Tally(r.Passed)
		c.Results = append(c.Results, row)
	}
	if n := len(a.Results); n > 0 {
		c.Passed = fmt.Sprintf("%d of %d passed", passed, n)
	}
	if a.Mine || q.Whose.Own {
		c.Remove = q.Whose.RemoveAssignment(a.ID)
	}
	if q.Whose.Own {
		c.record(a, q)
	}
	return c
}

// record is where the player says what came of it.
func (c *AssignmentCard) record(a Assignment, q LessonsInput) {
	c.TickOff, c.TickText, c.TickTo = q.Whose.TickOff(a.ID), "Tick it off", "yes"
	if a.Done {
		c.TickText, c.TickTo = "Not done after all", ""
		return
	}
	typed := q.Returned.ResultOf(a.ID, form.DayOf(q.Today))
	c.Record = &RecordForm{At: q.Whose.Results(a.ID), Passed: "passed-" + c.ID, Open: !typed.Sound(),
		Day:    components.Filled(components.Field{Name: "day", ID: "day-" + c.ID, Label: "Day", Type: "date"}, typed.Day),
		Result: components.Filled(components.Field{Name: "result", ID: "result-" + c.ID, Label: "What came of it", Hint: "As 33 of 40."}, typed.Result)}
	c.Record.Wrong = components.Summed(c.Record.Day, c.Record.Result)
}
