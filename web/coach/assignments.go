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
	By       string // who set it; empty when that account was deleted
	Mine     bool   // the reader set it
	What     string // what to practise, never empty
	Amount   string // how much; may be empty
	PassMark string // what counts as a pass; may be empty
	Figure   string // that it is to move, as the months write it; empty for none
	Given    golf.Date
	Due      golf.Date
	Done     bool
	Results  []AssignmentResult // the earliest first
	Drill    string             // key of its drill; empty for none
	Feet     float64            // from where that is played; 0 for one that cannot be moved
	SetUp    string             // of a drill of the author's own; empty for any other
	Sessions []DrillSession     // of its drill since it was set, the earliest first
}

// DrillSession is a session of the drill of an assignment.
type DrillSession struct {
	Day    golf.Date
	Result string // "12 of 20", with the level where that is sure enough
	Passed string // "passed", "not yet", or empty without a mark
}

// AssignmentResult is the result of one practice.
type AssignmentResult struct {
	ID     int64
	Day    golf.Date
	Result string
	Passed bool // it reached the pass mark
}

// AssignmentCard is something to practise, with its results.
type AssignmentCard struct {
	ID       string // place on the page
	What     string
	Facts    []string // how much, pass mark, who set it; those that are known
	Due      string   // by when, or that it is done; empty when late
	Late     string   // by how many days; empty when not
	Results  []ResultRow
	Passed   string          // how many of the results passed; empty without results
	Record   *RecordForm     // nil for a coach, and once it is done
	DoneAt   string          // where the form that marks it as done is sent; empty for a coach
	DoneText string          // on the button of that form
	DoneTo   string          // what that form sends: "yes", or empty to mark it as not done
	Remove   string          // where the form that removes it is sent; empty for what others set for others
	Drill    components.Link // to its drill; without an address for none
	SetUp    string          // of a drill of the author's own
}

// ResultRow is the result of one practice.
type ResultRow struct {
	Day    string
	Result string
	Passed string // "passed" or "not passed"
	Remove string // where the form that removes it is sent; empty for a coach
}

// RecordForm is the form that records a practice.
type RecordForm struct {
	At     string // where it is sent
	Day    components.Field
	Result components.Field
	Passed string // id of the box that says it reached the pass mark
	Open   bool   // shown opened, since something in it was wrong
	Wrong  components.Summary
}

// newAssignmentCard makes a card of the player of the page.
func newAssignmentCard(a Assignment, in LessonsInput) AssignmentCard {
	c := AssignmentCard{ID: practiceID(a.ID), What: a.What}
	for _, f := range []struct{ before, text string }{{"", a.Amount}, {"pass mark ", a.PassMark}, {"set by ", a.By}} {
		if f.text != "" {
			c.Facts = append(c.Facts, f.before+f.text)
		}
	}
	switch late := words.DaysBetween(a.Due, in.Today); {
	case a.Done:
		c.Due = "done"
	case late > 0:
		c.Late = daysLate(late)
	default:
		c.Due = "by " + words.DueDay(a.Due, in.Today)
	}
	if a.Mine || in.Whose.Own {
		c.Remove = in.Whose.RemoveAssignment(a.ID)
	}
	c.results(a, in)
	if a.Drill != "" {
		c.drill(a, in)
	}
	if in.Whose.Own {
		c.forms(a, in)
	}
	return c
}

// drill leads to the drill, and tells of its sessions since.
func (c *AssignmentCard) drill(a Assignment, in LessonsInput) {
	c.SetUp, c.Drill = a.SetUp, components.Link{At: in.Whose.DrillFrom(a.Drill, a.Feet), Name: "How it is done, and every session"}
	if in.Whose.Own && !a.Done {
		c.Drill.Name = "Do it and write it down"
	}
	c.Results = append(c.Results, rowsOf(a.Sessions)...)
	passed := 0
	for _, s := range a.Sessions {
		passed += words.Tally(s.Passed == "passed")
	}
	if n := len(a.Results) + len(a.Sessions); len(a.Sessions) > 0 {
		for _, r := range a.Results {
			passed += words.Tally(r.Passed)
		}
		c.Passed = fmt.Sprintf("%d of %d passed", passed, n)
	}
}

// practiceID is the place of a practice on its page.
func practiceID(id int64) string { return fmt.Sprintf("practice-%d", id) }

// daysLate says by how many days practice is late.
func daysLate(n int) string { return words.Plural(n, "day", "days") + " late" }

func (c *AssignmentCard) results(a Assignment, in LessonsInput) {
	passed := 0
	for _, r := range a.Results {
		row := ResultRow{Day: words.ShortDay(r.Day), Result: r.Result, Passed: "not passed"}
		if r.Passed {
			row.Passed = "passed"
			passed++
		}
		if in.Whose.Own {
			row.Remove = in.Whose.RemoveResult(a.ID, r.ID)
		}
		c.Results = append(c.Results, row)
	}
	if n := len(a.Results); n > 0 {
		c.Passed = fmt.Sprintf("%d of %d passed", passed, n)
	}
}

// forms are where the player records a practice, and marks all of it as done.
func (c *AssignmentCard) forms(a Assignment, in LessonsInput) {
	c.DoneAt, c.DoneText, c.DoneTo = in.Whose.TickOff(a.ID), "Mark as done", "yes"
	if a.Done {
		c.DoneText, c.DoneTo = "Mark as not done", ""
		return
	}
	if a.Drill != "" {
		return
	}
	typed := in.Returned.ResultOf(a.ID, form.DayOf(in.Today))
	c.Record = &RecordForm{At: in.Whose.Results(a.ID), Passed: "passed-" + c.ID, Open: !typed.Sound(),
		Day:    components.Filled(components.Field{Name: "day", ID: "day-" + c.ID, Label: "Day", Type: "date"}, typed.Day),
		Result: components.Filled(components.Field{Name: "result", ID: "result-" + c.ID, Label: "Result", Hint: "For example, 33 of 40."}, typed.Result)}
	c.Record.Wrong = components.Summed(c.Record.Day, c.Record.Result)
}
