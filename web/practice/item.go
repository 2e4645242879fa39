package practice

import (
	"fmt"

	"math"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/web/words"
)

// Item is what a plan sets to practise.
type Item struct {
	What   string // the drill, with from where it is played
	Amount string
	Mark   string // empty for a drill without one
	Drill  string // key of the drill
	Feet   float64
}

// ItemsOf are what a plan sets to practise, in its order.
func ItemsOf(plan analysis.Plan) []Item {
	var all []Item
	for _, c := range plan.Candidates {
		i := Item{What: c.Drill.Name, Amount: fmt.Sprintf("%d minutes a week", c.Minutes), Drill: c.Drill.Key}
		if c.Drill.MaxFeet > 0 {
			i.Feet = c.Drill.Stations[0].Distance.Feet()
			i.What += fmt.Sprintf(", %g ft", i.Feet)
		}
		if c.Mark.Pass > 0 {
			i.Mark = markWords(c.Mark)
		}
		all = append(all, i)
	}
	return all
}

// ItemOf is a drill as something to practise.
func ItemOf(d analysis.DrillFor) Item {
	i := Item{What: d.Name, Drill: d.Key, Feet: d.Feet}
	if d.Feet > 0 {
		i.What += fmt.Sprintf(", %g ft", d.Feet)
	}
	if d.Mark.Pass > 0 {
		i.Mark = markWords(d.Mark)
	}
	return i
}

// Session is a session of a drill in a line.
type Session struct {
	Day    golf.Date
	Result string // what counted, with the level where the tries leave it narrow
	Passed string // "passed", "not yet", or empty without a mark
}

// SessionsSince are the sessions of a drill since a day, the earliest first; feet is
// from where, 0 for anywhere.
func SessionsSince(d analysis.DrillFor, day golf.Date, feet float64) []Session {
	var all []Session
	for _, r := range d.Results {
		if r.Day.Compare(day) < 0 || feet > 0 && r.Feet != feet {
			continue
		}
		s := Session{Day: r.Day, Result: r.Note, Passed: passedWord(r)}
		if counted, of := r.Made(); of > 0 {
			s.Result = fmt.Sprintf("%d of %d", counted, of)
			if !d.NoMark && r.Read.Tells() {
				s.Result += fmt.Sprintf(", level %s", words.Plain(math.Round(r.Read.Level)))
			}
		}
		all = append(all, s)
	}
	return all
}

// CameTo says in a few words what came of a drill, from counts by station, none for a
// drill that is not counted.
func CameTo(name string, counted, tried []int) string {
	made, of := 0, 0
	for i := range tried {
		made, of = made+counted[i], of+tried[i]
	}
	if of == 0 {
		return name
	}
	return fmt.Sprintf("%s, %d of %d", name, made, of)
}

// TakenDay is a plan that was taken on a day.
type TakenDay struct {
	ID     int64
	Day    golf.Date
	Rounds int
}

// cautions stand with every plan. Common practice.
var cautions = []string{
	"Warm up first. Stop if anything hurts, and see a doctor or physiotherapist.",
	"Limit full swings: 60 to 90 a session is plenty, with days off in between (common practice).",
	"Make sure nobody is in the line of fire, on the range or around a green.",
	"If there is lightning about, leave the course or range.",
	"For help with a swing, see a qualified coach.",
}
