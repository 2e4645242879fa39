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
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// Roster is a coach's pupils, a row each.
type Roster struct {
	Lede    string
	Rows    []RosterRow
	Sorts   []components.Link
	Sort    string // what a form sends on of it
	Name    components.Field
	Shows   []components.Choice
	Aside   string // how it is sorted
	None    string // why no row is shown
	Squad   string // address of the pupils side by side
	Caption string
}

// RosterRow is one pupil.
type RosterRow struct {
	Name, At  string
	Last      string // day of the latest round
	Score     string
	Month     string // rounds of this month
	Target    string
	Parts     []RosterPart
	Doubles   string
	Compound  string
	New       []string
	Due       string // what is to be practised, and by when
	Late      string
	NewThings bool
}

// RosterPart is what a part of the game plays to, now and before.
type RosterPart struct {
	Name     string
	Now, Was string
	Interval string
	Moved    string // better or worse, when that is likely more than luck
	Better   bool
	Dumb     Dumbbell
}

// Dumbbell is a level and the one before on a line of levels.
type Dumbbell struct {
	Known                        bool
	X, Low, High, Before, Target string
	HasBefore                    bool
}

// RosterPupil is what a row is made of.
type RosterPupil struct {
	ID        golf.PlayerID
	Name      string
	Target    float64
	Month     int // rounds of this month
	NewRounds int // since the coach last looked
	Questions int // nobody has answered
	Unread    int // notes with something new
	Results   int // of practice, since the coach last looked
	Due       golf.Date
	DueWhat   string // empty for no practice
	analysis.RosterRow
}

// anyNew reports whether something came since the coach last looked.
func (p *RosterPupil) anyNew() bool { return p.NewRounds+p.Questions+p.Unread+p.Results > 0 }

// late is by how many days practice is late, 0 when it is not.
func (p *RosterPupil) late(today golf.Date) int {
	if p.DueWhat == "" {
		return 0
	}
	return max(0, words.DaysBetween(p.Due, today))
}

// worse counts the parts of the game that have got worse.
func (p *RosterPupil) worse() int {
	n := 0
	for _, c := range golf.Categories {
		if p.Form.Moved(c) == compare.Worse {
			n++
		}
	}
	return n
}

// gap is how far a part of the game plays above the pupil's target; less than
// any where it is not told.
func (p *RosterPupil) gap(c golf.Category) float64 {
	if !p.Form.Now[c].Known() {
		return math.Inf(-1)
	}
	return p.Form.Now[c].Level.Value - p.Target
}

// RosterInput is what a roster is made of.
type RosterInput struct {
	Pupils []RosterPupil
	Today  golf.Date
	At     paths.Roster
}

// rosterOrder is a way to sort pupils.
type rosterOrder struct {
	key, name string
	compare   func(a, b *RosterPupil, today golf.Date) int
}

// rosterOrders lists the ways to sort, the usual one first.
func rosterOrders() []rosterOrder {
	all := []rosterOrder{
		{"", "what needs a look", func(a, b *RosterPupil, today golf.Date) int {
			return cmp.Or(cmp.Compare(b.Questions, a.Questions), words.OneIf(b.Unread > 0)-words.OneIf(a.Unread > 0), words.OneIf(b.NewRounds > 0)-words.OneIf(a.NewRounds > 0),
				words.OneIf(b.Results > 0)-words.OneIf(a.Results > 0), cmp.Compare(b.late(today), a.late(today)), cmp.Compare(b.worse(), a.worse()), b.Last.Compare(a.Last))
		}},
		{"round", "latest round", func(a, b *RosterPupil, _ golf.Date) int { return b.Last.Compare(a.Last) }},
		{"name", "name", func(*RosterPupil, *RosterPupil, golf.Date) int { return 0 }},
	}
	for _, c := range golf.Categories {
		all = append(all, rosterOrder{c.String(), c.String() + " above target", func(a, b *RosterPupil, _ golf.Date) int { return cmp.Compare(b.gap(c), a.gap(c)) }})
	}
	return append(all, rosterOrder{"doubles", "doubles", func(a, b *RosterPupil, _ golf.Date) int { return cmp.Compare(b.Form.Doubles, a.Form.Doubles) }})
}

// rosterShows lists which pupils may be shown, all first.
var rosterShows = []struct {
	key, name string
	holds     func(p *RosterPupil, today golf.Date) bool
}{
	{"", "all pupils", func(*RosterPupil, golf.Date) bool { return true }},
	{"new", "with something new", func(p *RosterPupil, _ golf.Date) bool { return p.anyNew() }},
	{"late", "whose practice is late", func(p *RosterPupil, today golf.Date) bool { return p.late(today) > 0 }},
	{"worse", "with a part that got worse", func(p *RosterPupil, _ golf.Date) bool { return p.worse() > 0 }},
	{"target", "with a part clearly above target", func(p *RosterPupil, _ golf.Date) bool {
		return slices.ContainsFunc(golf.Categories, func(c golf.Category) bool { return p.Form.Now[c].Known() && p.Form.Now[c].Low.Value > p.Target })
	}},
}

// NewRoster makes the list.
func NewRoster(q RosterInput) Roster {
	ros := Roster{Sort: q.At.Sort, Lede: rosterLede(q.Pupils), Squad: paths.Squad,
		Name:    components.Field{Name: "name", Label: "Name", Value: q.At.Name},
		Caption: "Plays to: the golfer whose part of the game this is, over the last ten rounds and the ten before, with the interval of 95 %; each pupil’s own target as the dashed rule"}
	orders := rosterOrders()
	order, holds := orders[0], rosterShows[0].holds
	for _, o := range orders {
		here := o.key == q.At.Sort
		if here {
			order = o
		}
		ros.Sorts = append(ros.Sorts, components.Link{Name: o.name, At: q.At.By(o.key).Address(), Here: here})
	}
	for _, s := range rosterShows {
		if s.key == q.At.Show {
			holds = s.holds
		}
		ros.Shows = append(ros.Shows, components.Choice{Value: s.key, Name: s.name, Chosen: s.key == q.At.Show})
	}
	ros.Aside = "First by " + order.name + "."
	if order.key == "" {
		ros.Aside = "First who asked or answered, then who has played or practised since you looked, then whose practice is late or whose game got worse."
	}
	var shown []*RosterPupil
	for i := range q.Pupils {
		p := &q.Pupils[i]
		if holds(p, q.Today) && strings.Contains(strings.ToLower(p.Name), strings.ToLower(q.At.Name)) {
			shown = append(shown, p)
		}
	}
	slices.SortStableFunc(shown, func(a, b *RosterPupil) int { // they come by name
		return order.compare(a, b, q.Today)
	})
	if len(shown) == 0 {
		ros.None = "No pupil of that choice."
	}
	scale := rosterScale(q.Pupils)
	for _, p := range shown {
		ros.Rows = append(ros.Rows, p.row(q.Today, scale))
	}
	return ros
}

// rosterScale holds every level of every pupil.
func rosterScale(pupils []RosterPupil) chart.Range {
	var values []float64
	for i := range pupils {
		p := &pupils[i]
		for _, c := range golf.Categories {
			if p.Form.Now[c].Known() {
				values = append(values, p.Form.Now[c].Low.Value, p.Form.Now[c].High.Value, p.Target)
			}
			if p.Form.Now[c].Known() && p.Form.Before[c].Known() {
				values = append(values, p.Form.Before[c].Value)
			}
		}
	}
	return chart.NewRange(5, values...)
}

func (p *RosterPupil) row(today golf.Date, scale chart.Range) RosterRow {
	r := RosterRow{Name: p.Name, At: paths.Whose{Player: p.ID}.Lessons(), Target: words.Plain(p.Target), Last: "no round yet", New: p.news(), NewThings: p.anyNew()}
	if p.Holes > 0 {
		r.Last, r.Score = words.NearDay(p.Last, today), fmt.Sprintf("%.0f", math.Round(p.Score))
		if p.Holes != 18 {
			r.Score += " on " + words.Plural(p.Holes, "hole", "holes")
		}
		r.Doubles = fmt.Sprintf("%.1f", p.Form.Doubles)
		if p.Form.Doubles > 0 {
			r.Compound = words.Percent(p.Form.Compound) + " compound"
		}
	}
	r.Month = words.Plural(p.Month, "round", "rounds") + " this month"
	for _, c := range golf.Categories {
		r.Parts = append(r.Parts, p.part(c, scale))
	}
	switch late := p.late(today); {
	case p.DueWhat == "":
		r.Due = "none set"
	case late > 0:
		r.Due, r.Late = p.DueWhat, "late "+words.Plural(late, "day", "days")
	default:
		r.Due = p.DueWhat + ", " + words.DueDay(p.Due, today)
	}
	return r
}

func (p *RosterPupil) part(c golf.Category, scale chart.Range) RosterPart {
	now := p.Form.Now[c]
	part := RosterPart{Name: words.Capital(c.String()), Now: words.Thin(now.Thin())}
	if !now.Known() {
		return part
	}
	part.Now, part.Interval = words.Level(now.Level), words.LevelRange(now)
	part.Dumb = Dumbbell{Known: true, X: scale.Across(now.Level.Value), Low: scale.Across(now.Low.Value), High: scale.Across(now.High.Value), Target: scale.Across(p.Target)}
	if p.Form.Before[c].Known() {
		before := p.Form.Before[c]
		part.Was, part.Dumb.HasBefore, part.Dumb.Before = "was "+words.Level(before), true, scale.Across(before.Value)
		part.Moved = map[compare.Past]string{compare.Better: "better", compare.Worse: "worse"}[p.Form.Moved(c)]
		part.Better = p.Form.Moved(c) == compare.Better
	}
	return part
}
