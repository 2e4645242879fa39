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

// RoundsPage lists a player's rounds.
type RoundsPage struct {
	layout.Page
	Heading string
	At      string            // address of the list
	Own     bool              // who looks is the player
	News    []components.Link // what waits for the player, with the address of each
	Lede    string
	Rows    []figures.RoundRow
	New     string
	Export  string
	Import  string

	Everything string // address of the whole account as one file
	Courses    []components.Choice
	From       components.Field
	To         components.Field
	Any        bool // the player has rounds, chosen or not
	Narrowed   bool // the list is not of all rounds
}

// Narrow is how the list was narrowed, and by which courses it may be.
type Narrow struct {
	Course   string
	From, To golf.Date
	Courses  []string
}

// chosen reports whether the list was narrowed at all.
func (n Narrow) chosen() bool { return n.Course != "" || !n.From.IsZero() || !n.To.IsZero() }

// RoundsInput says whose rounds are listed, and what else there is to say.
type RoundsInput struct {
	Whose   paths.Whose
	Name    string    // the player's
	Unread  int       // notes with something new for the player
	Waiting []string  // who accepted to be the player's coach and is not let in yet
	Due     golf.Date // when it is to be practised
	DueWhat string    // what is to be practised first; empty for nothing
	Today   golf.Date
}

// news is what waits for the player.
func (of RoundsInput) news() []components.Link {
	var all []components.Link
	for _, name := range of.Waiting {
		all = append(all, components.Link{Name: name + " waits for your word to be let in as your coach.", At: paths.Coaching})
	}
	if of.Unread > 0 {
		all = append(all, components.Link{Name: fmt.Sprintf("%s something new from a coach for you.", words.Plural(of.Unread, "note has", "notes have")), At: of.Whose.Lessons()})
	}
	if of.DueWhat != "" {
		when := "to practise by " + words.DueDay(of.Due, of.Today)
		if late := words.DaysBetween(of.Due, of.Today); late > 0 {
			when = "practice late by " + words.Plural(late, "day", "days")
		}
		all = append(all, components.Link{Name: fmt.Sprintf("%s: %s.", of.DueWhat, when), At: of.Whose.Lessons() + "#practice"})
	}
	return all
}

// NewRoundsPage makes the page, the latest first.
func NewRoundsPage(page layout.Page, of RoundsInput, all []figures.ListedRound, narrow Narrow) RoundsPage {
	page.Title, page.Here = "Rounds", paths.Rounds
	p := RoundsPage{Page: page, Heading: "Rounds", Own: of.Whose.Own, At: of.Whose.Rounds(), New: paths.NewRound, Export: paths.Export, Everything: paths.Everything, Import: paths.Import}
	if !p.Own {
		p.Here, p.Heading = layout.Here(of.Whose, paths.Rounds), "Rounds of "+of.Name
	}
	p.News = of.news()
	p.Any, p.Narrowed = len(narrow.Courses) > 0, narrow.chosen()
	p.Courses = []components.Choice{{Value: "", Name: "any course", Chosen: narrow.Course == ""}}
	for _, c := range narrow.Courses {
		p.Courses = append(p.Courses, components.Choice{Value: c, Name: c, Chosen: c == narrow.Course})
	}
	p.From = components.Field{Name: "from", Label: "From", Type: "date", Value: narrow.From.String()}
	p.To = components.Field{Name: "to", Label: "To", Type: "date", Value: narrow.To.String()}
	for _, l := range all {
		p.Rows = append(p.Rows, l.Row(of.Whose))
	}
	switch {
	case len(all) == 0 && narrow.chosen():
		p.Lede = "No round of that course and those days."
	case len(all) == 0 && !p.Own:
		p.Lede = "No rounds yet."
	case len(all) == 0:
		p.Lede = "No rounds yet. Enter the first from its card and your notes."
	default:
		p.Lede = fmt.Sprintf("%s. %s", words.Plural(len(all), "round", "rounds"), lately(all))
		p.Foot = "Positive is lost, negative won back. Target here: each round is compared with the golfer who averages its target on the holes played."
	}
	return p
}

// recent is how many rounds "lately" speaks of.
const recent = 10

// lately says where most was lost over the last rounds, for 18 holes.
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
		return "Nothing has been entered yet."
	}
	worst := lost.Worst()
	per18 := lost.Of(worst) * 18 / float64(holes)
	if per18 < .05 {
		return "Lately no part of the game has cost a stroke against its target."
	}
	over := "In it"
	if rounds > 1 {
		over = fmt.Sprintf("Over the last %s", words.Spelled(rounds))
	}
	return fmt.Sprintf("%s, most was lost %s: %.1f for 18 holes.", over, words.Where(worst), per18)
}
