package coach

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/chart"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// Roster is a coach's list of pupils, a row each.
type Roster struct {
	Lede    string // who played since the coach last looked, and whose game changed most
	Rows    []RosterRow
	Sorts   []components.Link   // ways to sort the list
	Sort    string              // the chosen one, as the form that narrows the list sends it on; empty for the usual
	Name    components.Field    // part of the names of the pupils to show
	Shows   []components.Choice // which pupils can be shown
	Aside   string              // how the list is sorted
	None    string              // says that no pupil matches; empty when one does
	Squad   string              // address of the pupils side by side
	Caption string              // what the levels are
}

// RosterRow is one pupil.
type RosterRow struct {
	Name, At string              // the pupil, and the address of their lessons and practice
	Last     string              // day of the latest round, or that there is none
	Over     string              // how many rounds the levels are over, and from when; empty without one
	Since    string              // from which day on the coach sees rounds; empty for everything
	Score    string              // of that round, and of how many holes unless 18; empty for none
	Month    string              // how many rounds this month
	Target   string              // a score for 18 holes of par 72
	Parts    []figures.PartLevel // what each part of the game plays to
	Doubles  string              // for 18 holes over the last ten rounds; empty without a round
	Compound string              // share of the doubles that are compound; empty without a double
	New      []string            // what is new since the coach last looked, with counts; none when nothing is
	Due      string              // what to practise and by when; that none is set; without the day when late
	Late     string              // by how many days practice is late; empty when not
}

// RosterPupil is what a row is made of.
type RosterPupil struct {
	ID        golf.PlayerID
	Name      string
	Target    float64   // a score for 18 holes of par 72
	Month     int       // rounds this month
	NewRounds int       // entered since the coach last looked
	Changed   int       // other rounds, corrected since then
	Questions int       // not answered yet
	Unread    int       // notes with something that the coach has not read
	Results   int       // of practice, since the coach last looked
	Due       golf.Date // of what is due first; zero for no practice
	DueWhat   string    // what that is; empty for no practice
	Since     golf.Date // first day that the coach sees; zero for everything

	analysis.RosterRow // the latest round, and the form over the last ten
}

// anyNew reports whether anything is new since the coach last looked.
func (p *RosterPupil) anyNew() bool { return p.NewRounds+p.Changed+p.Questions+p.Unread+p.Results > 0 }

// late is by how many days practice is late; 0 when it is not.
func (p *RosterPupil) late(today golf.Date) int {
	if p.DueWhat == "" {
		return 0
	}
	return max(0, words.DaysBetween(p.Due, today))
}

// worse counts the parts of the game that have clearly got worse.
func (p *RosterPupil) worse() int {
	n := 0
	for _, c := range golf.Categories {
		if p.Form.Moved(c) == compare.Worse {
			n++
		}
	}
	return n
}

// gap is how many strokes a part of the game plays above the pupil's target;
// minus infinity when there are too few rounds.
func (p *RosterPupil) gap(c golf.Category) float64 {
	if !p.Form.Now[c].Known() {
		return math.Inf(-1)
	}
	return p.Form.Now[c].Level.Value - p.Target
}

// RosterInput is what a roster is made of.
type RosterInput struct {
	Pupils []RosterPupil // by name
	Today  golf.Date
	At     paths.Roster // how it is sorted and narrowed
}

// rosterOrder is a way to sort pupils, who come sorted by name.
type rosterOrder struct {
	key, name string
	compare   func(a, b *RosterPupil, today golf.Date) int
}

// byNeed puts pupils first who asked or replied, then those who played, then
// those who practised, then those whose practice is late or whose game got
// worse, then those who played last.
func byNeed(a, b *RosterPupil, today golf.Date) int {
	return cmp.Or(cmp.Compare(b.Questions, a.Questions), compareAny(b.Unread, a.Unread), compareAny(b.NewRounds, a.NewRounds), compareAny(b.Changed, a.Changed), compareAny(b.Results, a.Results),
		cmp.Compare(b.late(today), a.late(today)), cmp.Compare(b.worse(), a.worse()), b.Last.Compare(a.Last))
}

// compareAny compares whether there are any.
func compareAny(a, b int) int { return words.Tally(a > 0) - words.Tally(b > 0) }

// rosterOrders lists the ways to sort, the usual one first.
func rosterOrders() []rosterOrder {
	all := []rosterOrder{
		{"", "what needs attention", byNeed},
		{"round", "latest round", func(a, b *RosterPupil, _ golf.Date) int { return b.Last.Compare(a.Last) }},
		{"name", "name", func(*RosterPupil, *RosterPupil, golf.Date) int { return 0 }},
	}
	for _, c := range golf.Categories {
		all = append(all, rosterOrder{c.String(), c.String() + " above target", func(a, b *RosterPupil, _ golf.Date) int { return cmp.Compare(b.gap(c), a.gap(c)) }})
	}
	return append(all, rosterOrder{"doubles", "doubles", func(a, b *RosterPupil, _ golf.Date) int { return cmp.Compare(b.Form.Doubles, a.Form.Doubles) }})
}

// rosterShows lists which pupils can be shown, all first.
var rosterShows = []struct {
	key, name string
	holds     func(p *RosterPupil, today golf.Date) bool
}{
	{"", "all pupils", func(*RosterPupil, golf.Date) bool { return true }},
	{"new", "with something new", func(p *RosterPupil, _ golf.Date) bool { return p.anyNew() }},
	{"late", "with late practice", func(p *RosterPupil, today golf.Date) bool { return p.late(today) > 0 }},
	{"worse", "with a part that got clearly worse", func(p *RosterPupil, _ golf.Date) bool { return p.worse() > 0 }},
	{"target", "with a part clearly above target", func(p *RosterPupil, _ golf.Date) bool {
		return slices.ContainsFunc(golf.Categories, func(c golf.Category) bool { return p.Form.Now[c].Known() && p.Form.Now[c].Low.Value > p.Target })
	}},
}

// NewRoster makes the list.
func NewRoster(in RosterInput) Roster {
	ros := Roster{Sort: in.At.Sort, Lede: rosterLede(in.Pupils), Squad: paths.Squad,
		Name:    components.Field{Name: "name", Label: "Name", Value: in.At.Name},
		Caption: "Plays to: the level of each part of the game over the last ten rounds and the ten before, with a 95% interval; the dashed line is the pupil’s target"}
	orders := rosterOrders()
	order, holds := orders[0], rosterShows[0].holds
	for _, o := range orders {
		here := o.key == in.At.Sort
		if here {
			order = o
		}
		ros.Sorts = append(ros.Sorts, components.Link{Name: o.name, At: in.At.By(o.key).Address(), Here: here})
	}
	for _, s := range rosterShows {
		if s.key == in.At.Show {
			holds = s.holds
		}
		ros.Shows = append(ros.Shows, components.Choice{Value: s.key, Name: s.name, Chosen: s.key == in.At.Show})
	}
	ros.Aside = "Sorted by " + order.name + "."
	if order.key == "" {
		ros.Aside = "First come pupils who asked or replied, then those who entered rounds or practised since you last looked, then those whose practice is late or whose game got clearly worse."
	}
	ros.rows(in, order, holds)
	return ros
}

// rows adds the pupils that match, in their order.
func (ros *Roster) rows(in RosterInput, order rosterOrder, holds func(*RosterPupil, golf.Date) bool) {
	var shown []*RosterPupil
	var levels []figures.PartLevelInput // of all pupils, so that every choice has the same scale
	for i := range in.Pupils {
		p := &in.Pupils[i]
		for _, c := range golf.Categories {
			levels = append(levels, partLevel(&p.Form, c, p.Target))
		}
		if holds(p, in.Today) && strings.Contains(strings.ToLower(p.Name), strings.ToLower(in.At.Name)) {
			shown = append(shown, p)
		}
	}
	slices.SortStableFunc(shown, func(a, b *RosterPupil) int { return order.compare(a, b, in.Today) })
	if len(shown) == 0 {
		ros.None = "No pupils match."
	}
	scale := figures.LevelScale(levels)
	for _, p := range shown {
		ros.Rows = append(ros.Rows, newRosterRow(p, in.Today, scale))
	}
}

// partLevel is what a part of the game plays to in a form, beside a target.
func partLevel(f *compare.Form, c golf.Category, target float64) figures.PartLevelInput {
	return figures.PartLevelInput{Part: c, Now: f.Now[c], Before: f.Before[c], Change: f.Changes[c], Target: target}
}

func newRosterRow(p *RosterPupil, today golf.Date, scale chart.Range) RosterRow {
	r := RosterRow{Name: p.Name, At: paths.Whose{Player: p.ID}.Lessons(), Target: words.Plain(p.Target), Last: "no rounds yet", New: p.news()}
	if !p.Since.IsZero() {
		r.Since = "shared from " + words.NearDay(p.Since, today)
	}
	if p.Holes > 0 {
		r.Last, r.Score = words.NearDay(p.Last, today), words.Score(p.Score, p.Lifted)
		if p.Holes != 18 {
			r.Score += fmt.Sprintf("%s, target %s", words.OnHoles(p.Holes), words.Plain(p.HolesTarget))
		}
		r.Over = fmt.Sprintf("levels over %s from %s", words.Plural(p.Form.Rounds, "round", "rounds"), words.NearDay(p.From, today))
		r.Doubles = fmt.Sprintf("%.1f", p.Form.Doubles)
		if p.Form.Doubles > 0 {
			r.Compound = words.Percent(p.Form.Compound) + " compound"
		}
	}
	r.Month = words.Plural(p.Month, "round", "rounds") + " this month"
	for _, c := range golf.Categories {
		r.Parts = append(r.Parts, figures.NewPartLevel(partLevel(&p.Form, c, p.Target), scale))
	}
	switch late := p.late(today); {
	case p.DueWhat == "":
		r.Due = "none set"
	case late > 0:
		r.Due, r.Late = p.DueWhat, daysLate(late)
	default:
		r.Due = p.DueWhat + ", " + words.DueDay(p.Due, today)
	}
	return r
}
