package statement

import (
	"fmt"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// RoundsPage lists a player's rounds, the latest first.
type RoundsPage struct {
	layout.Page
	Heading  string            // names the player, for a coach
	At       string            // address of the list, which the form that narrows it asks
	Own      bool              // the reader is the player
	News     []components.Link // what is waiting for the player, with its address
	Lede     string            // how many rounds, and where most was lost lately
	Rows     []figures.RoundRow
	Any      bool // the player has a round, shown or not, so that the list can be narrowed
	Narrowed bool // not all rounds are shown
	Courses  []components.Choice
	From, To components.Field

	New        string // address that begins a round
	Export     string // address of all shots as a file
	Everything string // address of everything the player has here, as one file
	Import     string // address that imports a file
}

// Narrow is how the list is narrowed.
type Narrow struct {
	Course   string    // empty for any
	From, To golf.Date // zero for no limit
	Courses  []string  // every course that the player has a round on
}

// chosen reports whether the list is narrowed at all.
func (n Narrow) chosen() bool { return n.Course != "" || !n.From.IsZero() || !n.To.IsZero() }

// RoundsInput is what the list of rounds is made of.
type RoundsInput struct {
	Whose   paths.Whose
	Name    string // the player's, for a coach
	Rounds  []figures.ListedRound
	Narrow  Narrow
	Unread  int       // notes with something new for the player
	Waiting []string  // people who asked to be the player's coach and are not approved yet
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
	p := RoundsPage{Page: page, Heading: "Rounds", Own: in.Whose.Own, At: in.Whose.Rounds(), News: in.news(),
		New: paths.NewRound, Export: paths.Export, Everything: paths.Everything, Import: paths.Import}
	if !p.Own {
		p.Here, p.Heading = layout.Here(in.Whose, paths.Rounds), "Rounds of "+in.Name
	}
	p.narrow(in.Narrow)
	for _, l := range in.Rounds {
		p.Rows = append(p.Rows, l.Row(in.Whose))
	}
	switch {
	case len(in.Rounds) == 0 && p.Narrowed:
		p.Lede = "No rounds on that course and those days."
	case len(in.Rounds) == 0 && !p.Own:
		p.Lede = "No rounds yet."
	case len(in.Rounds) == 0:
		p.Lede = "No rounds yet. Enter the first one from its card and your notes."
	default:
		p.Lede = fmt.Sprintf("%s. %s", words.Plural(len(in.Rounds), "round", "rounds"), lately(in.Rounds))
		p.Foot = "A plus is strokes lost, a minus is strokes won back. Target here: each round is compared with the golfer who averages its target on the holes played."
	}
	return p
}

// narrow fills in the form that narrows the list.
func (p *RoundsPage) narrow(n Narrow) {
	p.Any, p.Narrowed = len(n.Courses) > 0, n.chosen()
	p.Courses = []components.Choice{{Value: "", Name: "any course", Chosen: n.Course == ""}}
	for _, c := range n.Courses {
		p.Courses = append(p.Courses, components.Choice{Value: c, Name: c, Chosen: c == n.Course})
	}
	p.From = components.Field{Name: "from", Label: "From", Type: "date", Value: n.From.String()}
	p.To = components.Field{Name: "to", Label: "To", Type: "date", Value: n.To.String()}
}

// recent is how many rounds "lately" speaks of.
const recent = 10

// lately says where most was lost over the latest rounds with shots, per 18 holes.
func lately(all []figures.ListedRound) string {
	var lost account.Split
	rounds, holes := 0, 0
	for _, l := range all {
		if detailed := l.Account.Counts.Holes; detailed > 0 && rounds < recent {
			rounds++
			holes += detailed
			lost.Add(l.Account.Lost)
		}
	}
	if holes == 0 {
		return "No shots have been entered yet."
	}
	worst := lost.Worst()
	per18 := lost.Of(worst) * 18 / float64(holes)
	if per18 < .05 {
		return "Lately no part of the game has lost strokes against the target."
	}
	over := "In it"
	if rounds > 1 {
		over = fmt.Sprintf("Over the last %s", words.Spelled(rounds))
	}
	return fmt.Sprintf("%s, most was lost %s: %.1f per 18 holes.", over, words.Where(worst), per18)
}
