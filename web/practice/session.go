package practice

import (
	"fmt"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/practice"
	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
)

// SessionForm is where a session of a drill is entered, or one that is kept is
// changed.
type SessionForm struct {
	At       string // where it is sent
	Entered  string // names the session
	Name     string // of the session among those that wait to be sent
	Needed   string // files that the page needs without a connection; empty where no script helps
	State    string // what became of it
	Keys     []TryKey
	Tries    string    // as they are sent
	Shown    []TryMark // in order, then those still to play
	Count    string    // how many tries so far
	Goal     string    // of how many, empty when there is no mark
	So       string    // what came of them so far
	Undo     string    // on the key that takes the last one back; empty without one
	Marks    []TryMark // one of each kind, for the script
	Rows     []CountRow
	Each     components.Field // how many balls from each place
	Feet     *components.Field
	Day      components.Field
	Minutes  components.Field
	Note     components.Field
	Wrong    components.Summary
	Conflict string // what another window saved in the meantime; empty for nothing
	Save     string // on the button
	Remove   string // where the form that removes it is sent; empty for a new one
}

// TryKey is a key for what became of a try.
type TryKey struct {
	Letter string
	Class  string
	Name   string
	Sign   string // an arrow; empty for none
}

// TryMark is a try in the row of tries.
type TryMark struct {
	Letter string // empty for one still to play
	Sign   string // name of its picture
	Said   string
}

// CountRow is a place with a count.
type CountRow struct {
	From  string
	Field components.Field
	Of    string
	Less  string // key
	More  string // key
}

// SessionInput is what the form of a session is made of.
type SessionInput struct {
	At       string
	Typed    form.Session
	Kept     string // what another window saved in the meantime
	Remove   string
	Offline  bool // the page may be used without a connection
	Changing bool // a session that is kept is changed
}

// AskOf says what is written down of a drill.
func AskOf(d analysis.DrillFor, today golf.Date) form.DrillAsk {
	ask := form.DrillAsk{Stations: len(d.Drill.Stations), MinFeet: d.MinFeet, MaxFeet: d.MaxFeet, Today: today}
	switch d.Written {
	case practice.Sides:
		ask.Keys = []golf.Outcome{golf.TryMade, golf.TryLeft, golf.TryRight, golf.TryShort, golf.TryLong}
	case practice.Run:
		ask.Keys = []golf.Outcome{golf.TryMade, golf.TryMissed}
	case practice.Notes:
		ask.Stations = 0
	}
	return ask
}

// FirstSession is the form of a session before anything is typed.
func FirstSession(d analysis.DrillFor, entered string, today golf.Date) form.Session {
	s := form.Session{Entered: entered, Day: form.DayOf(today)}
	if d.MaxFeet > 0 {
		s.Feet = form.NumberOf(d.Feet)
	}
	if ask := AskOf(d, today); ask.Keys == nil && ask.Stations > 0 {
		s.Each, s.Counts = form.WholeOf(goal(d)/ask.Stations), make([]form.Whole, ask.Stations)
	}
	return s
}

// goal is how many tries a session of a drill is for.
func goal(d analysis.DrillFor) int {
	if d.Mark.Sessions < 2 {
		return d.Mark.Tries
	}
	set := d.Set()
	return (d.Mark.Tries/d.Mark.Sessions + set - 1) / set * set
}

// newSessionForm makes the form of a drill.
func newSessionForm(d analysis.DrillFor, in SessionInput, units form.Units, today golf.Date) *SessionForm {
	t, ask := in.Typed, AskOf(d, today)
	f := &SessionForm{At: in.At, Entered: t.Entered, Name: d.Name, Remove: in.Remove, Conflict: in.Kept, Save: "Save the session",
		Day:     components.Filled(components.Field{Name: "day", Label: "Day", Type: "date"}, t.Day),
		Minutes: components.Filled(components.Field{Name: "minutes", Label: "Minutes", Mode: "numeric", Hint: "May be left empty."}, t.Minutes),
		Note:    components.Filled(components.Field{Name: "note", Label: "Note", Hint: "In one line. May be left empty."}, t.Note)}
	if ask.Keys == nil && ask.Stations == 0 {
		f.Note.Label, f.Note.Hint = "What you saw", "In one line, up to 200 characters."
	}
	if in.Offline {
		f.Needed = strings.Join(layout.EntryFiles(), " ")
	}
	if in.Changing {
		f.Save = "Save the changes"
	}
	if ask.MaxFeet > 0 {
		feet := components.Filled(components.Field{Name: "feet", Label: fmt.Sprintf("From, %g to %g ft", ask.MinFeet, ask.MaxFeet), Mode: "decimal"}, t.Feet)
		f.Feet, f.Name = &feet, fmt.Sprintf("%s, %s ft", d.Name, t.Feet.Text)
	}
	switch {
	case ask.Keys != nil:
		f.tries(d, t, ask)
	case ask.Stations > 0:
		f.counts(d, t, units)
	}
	f.sum(t)
	return f
}

// sum sums up what is wrong with the form.
func (f *SessionForm) sum(t form.Session) {
	all := []components.Field{}
	if f.Feet != nil {
		all = append(all, *f.Feet)
	}
	if len(f.Rows) > 0 {
		all = append(all, f.Each)
	}
	for _, r := range f.Rows {
		all = append(all, r.Field)
	}
	f.Wrong = components.Summed(append(all, f.Day, f.Minutes, f.Note)...)
	f.Wrong.Add("tally", "", t.Tries.Problem)
	f.Wrong.Add("tally", "", t.Nothing)
}

var tryKeys = map[golf.Outcome]TryKey{
	golf.TryMade:   {Class: "made-key", Name: "Made"},
	golf.TryMissed: {Class: "missed-key", Name: "Missed"},
	golf.TryLeft:   {Class: "left-key", Name: "Left", Sign: "←"},
	golf.TryRight:  {Class: "right-key", Name: "Right", Sign: "→"},
	golf.TryShort:  {Class: "short-key", Name: "Short", Sign: "↓"},
	golf.TryLong:   {Class: "long-key", Name: "Long", Sign: "↑"},
}

func markOf(o golf.Outcome) TryMark {
	return TryMark{Letter: o.Letter(), Sign: "try-" + o.String(), Said: o.String()}
}

var stillToPlay = TryMark{Sign: "try-open", Said: "to play"}

// tries fills in tries in order.
func (f *SessionForm) tries(d analysis.DrillFor, t form.Session, ask form.DrillAsk) {
	f.Tries, f.Count, f.So = t.Tries.Value.String(), fmt.Sprint(len(t.Tries.Value)), soFar(t.Tries.Value, ask.Keys)
	for _, o := range ask.Keys {
		key := tryKeys[o]
		key.Letter = o.Letter()
		f.Keys, f.Marks = append(f.Keys, key), append(f.Marks, markOf(o))
	}
	f.Marks = append(f.Marks, stillToPlay)
	for _, o := range t.Tries.Value {
		f.Shown = append(f.Shown, markOf(o))
	}
	for range goal(d) - len(t.Tries.Value) {
		f.Shown = append(f.Shown, stillToPlay)
	}
	if n := goal(d); n > 0 {
		f.Goal = fmt.Sprint(n)
	}
	if n := len(t.Tries.Value); n > 0 {
		f.Undo = t.Tries.Value[n-1].String()
	}
}

// soFar says how many tries there were of each kind.
func soFar(t golf.Tries, kinds []golf.Outcome) string {
	var parts []string
	for _, o := range kinds {
		if n := t.Count(o); n > 0 || o == golf.TryMade {
			parts = append(parts, fmt.Sprintf("%d %s", n, o))
		}
	}
	return strings.Join(parts, ", ")
}

// counts fills in a count for each place.
func (f *SessionForm) counts(d analysis.DrillFor, t form.Session, units form.Units) {
	f.Each = components.Filled(components.Field{Name: "each", Label: "Balls from each place", Mode: "numeric"}, t.Each)
	if len(d.Drill.Stations) == 1 {
		f.Each.Label = "Balls"
	}
	total := 0
	for i, s := range d.Drill.Stations {
		from := placeOf(d.Drill, s, units)
		name := form.CountName(i)
		field := components.Filled(components.Field{Name: name, Label: "Counted from " + lower(from), Mode: "numeric"}, t.Counts[i])
		f.Rows = append(f.Rows, CountRow{From: from, Field: field, Of: "of " + t.Each.Text, Less: fmt.Sprintf("less-%d", i), More: fmt.Sprintf("more-%d", i)})
		total += t.Counts[i].Value
	}
	f.Count, f.Goal = fmt.Sprint(total), fmt.Sprint(t.Each.Value*len(d.Drill.Stations))
}
