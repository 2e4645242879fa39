package practice

import (
	"cmp"
	"fmt"
	"slices"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// LogPage is every session of practice by week.
type LogPage struct {
	layout.Page
	Heading string
	Lede    string
	Weeks   []LogWeek
	Drills  []components.Link // where a session is written down; none for a coach
	Carry   []components.Link // to the drills that stand beside the course
	Plan    string            // address of the plan
}

// LogWeek is a week of the log, the latest first.
type LogWeek struct {
	Name    string // its Monday
	Sum     string // of its minutes, and how many sessions
	Minutes string
	Key     string // names the sum of the minutes
	Rows    []LogRow
}

// LogRow is a session.
type LogRow struct {
	Day     string
	Drill   components.Link // without an address where its drill is gone
	Result  string
	Passed  string
	Minutes string
	Note    string
	Change  string // where it is changed; empty for a coach, and for what was recorded in words
}

// LogInput is what the log is made of.
type LogInput struct {
	Whose   paths.Whose
	Name    string
	Minutes int // a week, that the player set
	Today   golf.Date
	Told    map[string]analysis.DrillFor // by key
	Words   []Recorded                   // what was recorded in words
}

// Recorded is a practice whose result is in words.
type Recorded struct {
	Day    golf.Date
	What   string
	Result string
	Passed bool
}

// logged is a row before it is worded.
type logged struct {
	day     golf.Date
	minutes int
	LogRow
}

// NewLogPage makes the page.
func NewLogPage(page layout.Page, in LogInput) LogPage {
	page.Title, page.Here = "Log of practice", layout.Here(in.Whose, in.Whose.Lessons())
	p := LogPage{Page: page, Heading: "Log of practice", Plan: in.Whose.Plan()}
	if !in.Whose.Own {
		p.Heading += ", " + in.Name
	}
	all := in.rows()
	for _, week := range weeksOf(all) {
		p.Weeks = append(p.Weeks, newWeek(week))
	}
	p.Lede, p.Carry = in.lede(all), in.carry()
	if in.Whose.Own {
		p.Drills = drillLinks(in.Whose, "")
	}
	return p
}

// carry are the drills with sessions enough to stand beside the course, by name.
func (in LogInput) carry() []components.Link {
	var all []components.Link
	for key, d := range in.Told {
		if d.StandsBeside() {
			all = append(all, components.Link{Name: d.Name, At: in.Whose.Drill(key) + "#carry"})
		}
	}
	slices.SortFunc(all, func(a, b components.Link) int { return cmp.Compare(a.Name, b.Name) })
	return all
}

// rows are all sessions, the latest first.
func (in LogInput) rows() []logged {
	var all []logged
	for key, d := range in.Told {
		for _, r := range d.Results {
			row := logged{day: r.Day, minutes: r.Minutes, LogRow: LogRow{Day: words.ShortDay(r.Day), Drill: components.Link{At: in.Whose.Drill(key), Name: r.Name}, Passed: passedWord(r), Note: r.Note}}
			if r.Feet > 0 {
				row.Drill.Name += fmt.Sprintf(", %s ft", words.Plain(r.Feet))
			}
			if counted, of := r.Made(); of > 0 {
				row.Result = fmt.Sprintf("%d of %d", counted, of)
			}
			if r.Minutes > 0 {
				row.Minutes = fmt.Sprint(r.Minutes)
			}
			if in.Whose.Own {
				row.Change = in.Whose.Session(r.ID)
			}
			all = append(all, row)
		}
	}
	for _, r := range in.Words {
		row := LogRow{Day: words.ShortDay(r.Day), Drill: components.Link{Name: r.What}, Result: r.Result}
		if r.Passed {
			row.Passed = "passed"
		}
		all = append(all, logged{day: r.Day, LogRow: row})
	}
	slices.SortStableFunc(all, func(a, b logged) int {
		return cmp.Or(b.day.Compare(a.day), cmp.Compare(a.Drill.Name, b.Drill.Name), cmp.Compare(a.Change, b.Change))
	})
	return all
}

// monday is the first day of the week of a day.
func monday(d golf.Date) golf.Date { return d.AddDays(-(int(d.Time().Weekday()) + 6) % 7) }

// weeksOf splits rows into weeks.
func weeksOf(all []logged) [][]logged {
	var weeks [][]logged
	for i, r := range all {
		if i == 0 || monday(r.day) != monday(all[i-1].day) {
			weeks = append(weeks, nil)
		}
		weeks[len(weeks)-1] = append(weeks[len(weeks)-1], r)
	}
	return weeks
}

func newWeek(rows []logged) LogWeek {
	first := monday(rows[0].day)
	w := LogWeek{Name: "Week of " + words.ShortDay(first), Key: "week-" + first.String()}
	total := 0
	for _, r := range rows {
		total += r.minutes
		w.Rows = append(w.Rows, r.LogRow)
	}
	w.Sum = words.Plural(len(rows), "session", "sessions")
	if total > 0 {
		w.Minutes = fmt.Sprint(total)
	}
	return w
}

// lede says how much there was lately.
func (in LogInput) lede(all []logged) string {
	if len(all) == 0 {
		if in.Whose.Own {
			return "No practice recorded yet. Open a drill, do it and save the session, and it appears here."
		}
		return in.Name + " has not recorded any practice yet."
	}
	sessions, minutes := 0, 0
	for _, r := range all {
		if monday(r.day) == monday(in.Today) {
			sessions, minutes = sessions+1, minutes+r.minutes
		}
	}
	return fmt.Sprintf("This week: %s, %d of %d minutes.", words.SpelledPlural(sessions, "session", "sessions"), minutes, in.Minutes)
}
