package statement

import (
	"fmt"

	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// RoundsPage lists a player's rounds as a book, a page a month, the latest
// first.
type RoundsPage struct {
	layout.Page
	Heading  string            // names the player, for a coach
	At       string            // address of the list, which the form that narrows it asks
	Own      bool              // the reader is the player
	News     []components.Link // what is waiting for the player, with its address
	Lede     string            // how the latest rounds went
	BookName string            // “The book of 2026”
	Book     figures.RoundBook // without a month when there is no round
	Older    components.Link   // the months before; its name is empty for none
	Filter   RoundsFilter
	Prints   []components.Link // the book of each year on the page, for paper

	New        string // address that begins a round
	Export     string // address of all shots as a file
	Everything string // address of everything the player has here, as one file
	Import     string // address that imports a file
}

// RoundsFilter is the form that narrows the list.
type RoundsFilter struct {
	Any      bool   // the player has a round, shown or not
	Narrowed bool   // not all rounds are shown, so the form stands open
	Summary  string // “Filter: any course, any month”
	Courses  []components.Choice
	From, To []components.Choice
}

// RoundsInput is what the list of rounds is made of.
type RoundsInput struct {
	Whose   paths.Whose
	Name    string                // the player's, for a coach
	Rounds  []figures.ListedRound // the latest first, all of Leaf's days
	Narrow  Narrow
	Leaf    Leaf
	Cut     bool      // not all of Leaf's rounds were read, for there are too many
	Unread  int       // notes with something new for the player
	Waiting []string  // people who asked to be the player's coach and are not approved yet
	Walked  int       // rounds that a coach entered and that wait for the player
	Lesson  string    // when the next lesson is, in a line; empty for none
	Due     golf.Date // day by which DueWhat is to be practised
	DueWhat string    // the first thing to practise; empty for nothing
	Today   golf.Date
}

// news is what is waiting for the player.
func (in RoundsInput) news() []components.Link {
	var all []components.Link
	for _, name := range in.Waiting {
		all = append(all, components.Link{Name: name + " is waiting for you to approve them as your coach.", At: paths.Coaching})
	}
	if in.Unread > 0 {
		all = append(all, components.Link{Name: fmt.Sprintf("%s something new from a coach.", words.Plural(in.Unread, "note has", "notes have")), At: in.Whose.Lessons()})
	}
	if in.Walked > 0 {
		all = append(all, components.Link{Name: words.Capital(words.SpelledPlural(in.Walked, "round that a coach entered waits", "rounds that a coach entered wait")) + " for you.", At: in.Whose.WalkedRounds()})
	}
	if in.Lesson != "" {
		all = append(all, components.Link{Name: in.Lesson, At: in.Whose.NextLesson()})
	}
	if in.DueWhat != "" {
		when := "to practise by " + words.DueDay(in.Due, in.Today)
		if late := words.DaysBetween(in.Due, in.Today); late > 0 {
			when = "practice overdue by " + words.Plural(late, "day", "days")
		}
		all = append(all, components.Link{Name: fmt.Sprintf("%s: %s.", in.DueWhat, when), At: in.Whose.Lessons() + "#practice"})
	}
	return all
}

// NewRoundsPage makes the list of rounds, for the player or for a coach.
func NewRoundsPage(page layout.Page, in RoundsInput) RoundsPage {
	page.Title, page.Here = "Rounds", paths.Rounds
	p := RoundsPage{Page: page, Heading: "Rounds", Own: in.Whose.Own, At: in.Whose.Rounds(), News: in.news(), Filter: newRoundsFilter(in.Narrow),
		New: paths.NewRound, Export: paths.Export, Everything: paths.Everything, Import: paths.Import}
	if !p.Own {
		p.Here, p.Heading = layout.Here(in.Whose, paths.Rounds), "Rounds of "+in.Name
	}
	p.Lede = roundsLede(in, p.Filter.Narrowed, page.Since)
	if len(in.Rounds) == 0 {
		return p
	}
	p.Book = figures.NewRoundBook(figures.BookInput{Whose: in.Whose, Rounds: in.Rounds, First: in.Leaf.First, Cut: in.Cut})
	p.Older = in.Leaf.older(in.Whose, in.Narrow)
	for _, year := range in.Leaf.Years {
		p.BookName = fmt.Sprintf("The book of %d", year)
		p.Prints = append(p.Prints, components.Link{Name: fmt.Sprintf("Print the year %d", year), At: in.Whose.YearBook(year)})
	}
	if n := len(in.Leaf.Years); n > 1 {
		p.BookName = fmt.Sprintf("The books of %d and %d", in.Leaf.Years[n-1], in.Leaf.Years[0])
	}
	p.Foot = "A plus is strokes lost, a minus is strokes won back. Target here: each round is compared with the golfer who averages its target on the holes played. The parts of a line add up to what is over the target. A score in brackets has a hole that was picked up."
	return p
}

// newRoundsFilter fills in the form that narrows the list.
func newRoundsFilter(n Narrow) RoundsFilter {
	f := RoundsFilter{Any: len(n.Courses) > 0, Narrowed: n.chosen(), Summary: "Filter: any course, any month"}
	f.Courses = []components.Choice{{Value: "", Name: "any course", Chosen: n.Course == ""}}
	for _, c := range n.Courses {
		f.Courses = append(f.Courses, components.Choice{Value: c, Name: c, Chosen: c == n.Course})
	}
	f.From, f.To = monthChoices("the first round", n.Months, n.From), monthChoices("the latest", n.Months, n.To)
	if f.Narrowed {
		f.Summary = "Filter"
	}
	return f
}
