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
	"strokeledger/web/form"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// Roster is a coach's pupils: what waits, then a line each.
type Roster struct {
	Lede   string      // how much waits
	Queue  []QueueItem // what stands open of the queue
	Rest   string      // what is folded away of it; empty for nothing
	Folded []QueueItem
	Rows   []RosterRow
	Heads  []components.Link // the columns, each sorts by itself
	Axis   components.Axis   // of every part of every pupil
	Choice RosterChoice
	Aside  string // how the list is sorted
	None   string // says that no pupil matches; empty when one does
	Squad  string // address of the pupils of the group side by side
}

// RosterChoice is the form that sorts and narrows the list, and the groups.
type RosterChoice struct {
	Open   bool // the list is sorted or narrowed
	Sorts  []components.Choice
	Shows  []components.Choice
	Name   components.Field
	Groups []components.Choice // the coach's own; empty without any
	Group  string              // the chosen one, which can be renamed; empty for all
	Rename components.Field    // its new name
	Wrong  components.Summary  // what is wrong with that
	Links  []components.Link   // a group each, and all
}

// RosterPupil is what a line of a roster is made of.
type RosterPupil struct {
	ID        golf.PlayerID
	Name      string
	Target    float64      // a score for 18 holes of par 72
	Month     int          // rounds this month
	NewRounds int          // entered since the coach's visit before, and not opened by the coach
	NewRound  golf.RoundID // the latest of them
	Changed   int          // other rounds, corrected since then
	Lessons   []NearLesson // with the coach, the earliest first
	Asked     []Question   // not answered yet, the earliest first
	Unsent    []UnsentRound
	Unread    int       // other notes with something that the coach has not read
	Results   int       // of practice, since the coach's visit before
	Due       golf.Date // of what is due first; zero for no practice
	DueWhat   string    // what that is; empty for no practice
	DueID     int64
	Since     golf.Date // first day that the coach sees; zero for everything
	Begun     golf.Date // when the pupil let the coach in
	Archived  bool      // the coach has put the pupil away
	Groups    []string  // of the coach's

	analysis.RosterRow // the latest round, and the form over the last ten
}

// anyNew reports whether anything is new since the coach's visit before.
func (p *RosterPupil) anyNew() bool {
	return p.NewRounds+p.Changed+len(p.Asked)+p.Unread+p.Results > 0
}

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

// loses is how many strokes a round a part of the game, or all of it, loses to the
// pupil's target; minus infinity without a round.
func (p *RosterPupil) loses(c golf.Category) float64 {
	if p.Form.Rounds == 0 {
		return math.Inf(-1)
	}
	return p.Form.Lost[c]
}

// RosterInput is what a roster is made of.
type RosterInput struct {
	Pupils []RosterPupil // by name
	Askers []Asker       // who wait for a word of the reader's, who asked first before others
	Today  golf.Date
	At     paths.Roster // how it is sorted and narrowed

	Renamed *form.Groups // a new name of the group that was refused; nil for none
}

// RenamedGroup is another name for a group, as it came back from the form.
type RenamedGroup struct {
	From string
	To   form.Groups
}

// rosterOrder is a way to sort pupils, who come sorted by name.
type rosterOrder struct {
	key, name string
	compare   func(a, b *RosterPupil, today golf.Date) int
}

// byNeed puts pupils first who have a lesson today, then those who asked, who have one
// tomorrow, or who wrote, then those who played, then those
// whose game changed clearly or whose practice is late, then those who have gone
// quiet, then the others; of equals those who played last.
func byNeed(a, b *RosterPupil, today golf.Date) int {
	return cmp.Or(cmp.Compare(a.first(today), b.first(today)), compareAny(b.Results, a.Results), b.Last.Compare(a.Last))
}

// first is a pupil's place in the queue.
func (p *RosterPupil) first(today golf.Date) need {
	if all := p.queue(today); len(all) > 0 {
		return all[0].need
	}
	return needs
}

// compareAny compares whether there are any.
func compareAny(a, b int) int { return words.Tally(a > 0) - words.Tally(b > 0) }

// rosterOrders lists the ways to sort, the usual one first.
func rosterOrders() []rosterOrder {
	losing := func(c golf.Category) func(a, b *RosterPupil, _ golf.Date) int {
		return func(a, b *RosterPupil, _ golf.Date) int { return cmp.Compare(b.loses(c), a.loses(c)) }
	}
	all := []rosterOrder{
		{"", "what needs a look", byNeed},
		{"name", "name", func(*RosterPupil, *RosterPupil, golf.Date) int { return 0 }},
		{"round", "latest round", func(a, b *RosterPupil, _ golf.Date) int { return b.Last.Compare(a.Last) }},
		{"over", "strokes a round", losing(0)},
	}
	for _, c := range golf.Categories {
		all = append(all, rosterOrder{c.String(), "strokes lost " + words.Where(c), losing(c)})
	}
	return append(all, rosterOrder{"doubles", "doubles", func(a, b *RosterPupil, _ golf.Date) int { return cmp.Compare(b.Form.Doubles, a.Form.Doubles) }})
}

// rosterShows lists which pupils can be shown, the usual ones first.
var rosterShows = []struct {
	key, name string
	holds     func(p *RosterPupil, today golf.Date) bool
}{
	{"", "all but archived", func(*RosterPupil, golf.Date) bool { return true }},
	{"new", "with something new", func(p *RosterPupil, _ golf.Date) bool { return p.anyNew() }},
	{"late", "with late practice", func(p *RosterPupil, today golf.Date) bool { return p.late(today) > 0 }},
	{"worse", "with a part that got clearly worse", func(p *RosterPupil, _ golf.Date) bool { return p.worse() > 0 }},
	{"target", "with a part clearly above target", func(p *RosterPupil, _ golf.Date) bool {
		return slices.ContainsFunc(golf.Categories, func(c golf.Category) bool { return p.Form.Now[c].Known() && p.Form.Now[c].Low.Value > p.Target })
	}},
	{"quiet", "without a round for four weeks", func(p *RosterPupil, today golf.Date) bool { return p.still(today) > 0 }},
	{archived, "archived", func(*RosterPupil, golf.Date) bool { return true }},
}

// archived shows archived pupils, whom every other choice leaves out.
const archived = "archived"

// partScale is the axis of a part of a game on every roster, in strokes a round.
var partScale = chart.Scale{Low: -2.25, High: 4.25, Step: 2}

// NewRoster makes the list.
func NewRoster(in RosterInput) Roster {
	ros := Roster{Squad: paths.SquadOf(in.At.Group), Axis: components.NewAxis(partScale, words.Tick)}
	queue := queueOf(in)
	ros.Lede, ros.Queue = queueLede(queue, in), queue
	if len(queue) > queueShown {
		ros.Queue, ros.Folded = queue[:queueShown], queue[queueShown:]
		ros.Rest = restOf(ros.Folded)
	}
	orders := rosterOrders()
	order, holds := orders[0], rosterShows[0].holds
	for _, o := range orders {
		if o.key == in.At.Sort {
			order = o
		}
	}
	for _, s := range rosterShows {
		if s.key == in.At.Show {
			holds = s.holds
		}
	}
	ros.Choice = newRosterChoice(in, orders)
	ros.heads(in)
	ros.Aside = "Sorted by " + order.name + "."
	if in.At.Group != "" {
		ros.Aside = in.At.Group + ". " + ros.Aside
	}
	ros.rows(in, order, holds)
	return ros
}

// heads are the heads of the columns, each of which sorts by itself.
func (ros *Roster) heads(in RosterInput) {
	for _, h := range [][2]string{{"name", "Pupil"}, {"round", "Last round"}, {"over", "A round"}, {golf.TeeShots.String(), "Tee"}, {golf.Approach.String(), "Approach"}, {golf.ShortGame.String(), "Short game"}, {golf.Putting.String(), "Putting"}, {"", "What is new"}} {
		ros.Heads = append(ros.Heads, components.Link{Name: h[1], At: in.At.By(h[0]).Address(), Here: h[0] == in.At.Sort})
	}
}

// rows adds the pupils that match, in their order.
func (ros *Roster) rows(in RosterInput, order rosterOrder, holds func(*RosterPupil, golf.Date) bool) {
	var shown []*RosterPupil
	for i := range in.Pupils {
		p := &in.Pupils[i]
		if p.Archived == (in.At.Show == archived) && holds(p, in.Today) && p.isIn(in.At.Group) && strings.Contains(strings.ToLower(p.Name), strings.ToLower(in.At.Name)) {
			shown = append(shown, p)
		}
	}
	slices.SortStableFunc(shown, func(a, b *RosterPupil) int { return order.compare(a, b, in.Today) })
	if len(shown) == 0 {
		ros.None = "No pupils match."
	}
	for _, p := range shown {
		ros.Rows = append(ros.Rows, newRosterRow(p, in.Today))
	}
}

// isIn reports whether a pupil is in a group of the coach's; everybody is in none.
func (p *RosterPupil) isIn(group string) bool { return group == "" || slices.Contains(p.Groups, group) }

// newRosterChoice makes the form that sorts and narrows the list.
func newRosterChoice(in RosterInput, orders []rosterOrder) RosterChoice {
	c := RosterChoice{Open: in.At.Sort+in.At.Show+in.At.Name+in.At.Group != "", Name: components.Field{Name: "name", Label: "Name", Value: in.At.Name},
		Rename: components.Field{Name: "to", ID: "rename", Label: fmt.Sprintf("Another name for %s", in.At.Group), Value: in.At.Group}}
	if in.Renamed != nil {
		c.Rename = components.Filled(c.Rename, *in.Renamed)
		c.Wrong = components.Summed(c.Rename).Saying("The group keeps its name.")
	}
	for _, o := range orders {
		c.Sorts = append(c.Sorts, components.Choice{Value: o.key, Name: o.name, Chosen: o.key == in.At.Sort})
	}
	for _, s := range rosterShows {
		c.Shows = append(c.Shows, components.Choice{Value: s.key, Name: s.name, Chosen: s.key == in.At.Show})
	}
	names := GroupNames(in.Pupils)
	if len(names) == 0 {
		return c
	}
	c.Groups = append(c.Groups, components.Choice{Name: "all pupils", Chosen: in.At.Group == ""})
	c.Links = append(c.Links, components.Link{Name: "All", At: in.At.Of("").Address(), Here: in.At.Group == ""})
	for _, name := range names {
		here := name == in.At.Group
		if here {
			c.Group = name
		}
		c.Groups = append(c.Groups, components.Choice{Value: name, Name: name, Chosen: here})
		c.Links = append(c.Links, components.Link{Name: name, At: in.At.Of(name).Address(), Here: here})
	}
	return c
}

// GroupNames are the groups of some pupils, each once and in order.
func GroupNames(pupils []RosterPupil) []string {
	var all []string
	for i := range pupils {
		all = append(all, pupils[i].Groups...)
	}
	slices.SortFunc(all, func(a, b string) int {
		return cmp.Or(cmp.Compare(strings.ToLower(a), strings.ToLower(b)), cmp.Compare(a, b))
	})
	return slices.Compact(all)
}
