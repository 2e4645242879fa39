package pages

import (
	"fmt"
	"math"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
	"strokeledger/web/components"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// Rounds lists a player's rounds.
type Rounds struct {
	layout.Page
	Heading string
	At      string   // address of the list
	Own     bool     // who looks is the player
	News    []Preset // what waits for the player, with the address of each
	Lede    string
	Rows    []RoundRow
	New     string
	Export  string
	Import  string

	Everything string // address of the whole account as one file
	Courses    []Choice
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

// RoundRow is one round of the list.
type RoundRow struct {
	At, Date, Course, Score, Target                 string
	Tee, Approach, ShortGame, Putting, Lost, Double string
	Worst                                           string // the part that cost most, in words
	Open                                            string // how many holes are missing
	New                                             bool   // since a coach last looked
}

// ListedRound is what a row is made of.
type ListedRound struct {
	ID      golf.RoundID
	Round   golf.Round
	Card    int // holes on the card
	Target  float64
	Account account.Account
	New     bool // since a coach last looked
}

// RoundsOf says whose rounds are listed, and what else there is to say.
type RoundsOf struct {
	Whose   paths.Whose
	Name    string     // the player's
	Unread  int        // notes with something new for the player
	Waiting []string   // who accepted to be the player's coach and is not let in yet
	Due     Assignment // what is to be practised first; none without a What
	Today   golf.Date
}

// news is what waits for the player.
func (of RoundsOf) news() []Preset {
	var all []Preset
	for _, name := range of.Waiting {
		all = append(all, Preset{Name: name + " waits for your word to be let in as your coach.", At: paths.Coaching})
	}
	if of.Unread > 0 {
		all = append(all, Preset{Name: fmt.Sprintf("%s something new from a coach for you.", plural(of.Unread, "note has", "notes have")), At: of.Whose.Lessons()})
	}
	if of.Due.What != "" {
		when := "to practise by " + dueDay(of.Due.Due, of.Today)
		if late := daysFrom(of.Due.Due, of.Today); late > 0 {
			when = "practice late by " + plural(late, "day", "days")
		}
		all = append(all, Preset{Name: fmt.Sprintf("%s: %s.", of.Due.What, when), At: of.Whose.Lessons() + "#practice"})
	}
	return all
}

// NewRounds makes the page, the latest first.
func NewRounds(page layout.Page, of RoundsOf, all []ListedRound, narrow Narrow) Rounds {
	page.Title, page.Here = "Rounds", paths.Rounds
	p := Rounds{Page: page, Heading: "Rounds", Own: of.Whose.Own, At: of.Whose.Rounds(), New: paths.NewRound, Export: paths.Export, Everything: paths.Everything, Import: paths.Import}
	if !p.Own {
		p.Here, p.Heading = here(of.Whose, paths.Rounds), "Rounds of "+of.Name
	}
	p.News = of.news()
	p.Any, p.Narrowed = len(narrow.Courses) > 0, narrow.chosen()
	p.Courses = []Choice{{"", "any course", narrow.Course == ""}}
	for _, c := range narrow.Courses {
		p.Courses = append(p.Courses, Choice{c, c, c == narrow.Course})
	}
	p.From = components.Field{Name: "from", Label: "From", Type: "date", Value: narrow.From.String()}
	p.To = components.Field{Name: "to", Label: "To", Type: "date", Value: narrow.To.String()}
	for _, l := range all {
		p.Rows = append(p.Rows, l.row(of.Whose))
	}
	switch {
	case len(all) == 0 && narrow.chosen():
		p.Lede = "No round of that course and those days."
	case len(all) == 0 && !p.Own:
		p.Lede = "No rounds yet."
	case len(all) == 0:
		p.Lede = "No rounds yet. Enter the first from its card and your notes."
	default:
		p.Lede = fmt.Sprintf("%s. %s", plural(len(all), "round", "rounds"), lately(all))
		p.Foot = "Positive is lost, negative won back. Target here: each round is compared with the golfer who averages its target on the holes played."
	}
	return p
}

// recent is how many rounds "lately" speaks of.
const recent = 10

// lately says where most was lost over the last rounds, for 18 holes.
func lately(all []ListedRound) string {
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
	worst := golf.TeeShots
	for _, c := range golf.Categories {
		if lost.Of(c) > lost.Of(worst) {
			worst = c
		}
	}
	per18 := lost.Of(worst) * 18 / float64(holes)
	if per18 < .05 {
		return "Lately no part of the game has cost a stroke against its target."
	}
	over := "In it"
	if rounds > 1 {
		over = fmt.Sprintf("Over the last %s", spelled(rounds))
	}
	return fmt.Sprintf("%s, most was lost %s: %.1f for 18 holes.", over, where(worst), per18)
}

// worstPart says which part cost most, with what it cost as printed.
func worstPart(parts []float64) string {
	worst := 0
	for i := range parts {
		if parts[i] > parts[worst] {
			worst = i
		}
	}
	if parts[worst] < .05 {
		return "no part lost"
	}
	return fmt.Sprintf("%s %s", golf.Categories[worst], signed(parts[worst], 1))
}

func (l ListedRound) row(whose paths.Whose) RoundRow {
	a := l.Account
	r := RoundRow{At: whose.Round(l.ID), New: l.New, Date: l.Round.Date.Time().Format("2 Jan 2006"), Course: joined(l.Round.Course, l.Round.Tee), Target: plain(l.Target)}
	if left := l.Card - len(l.Round.Holes); left > 0 {
		r.Open = plural(left, "hole", "holes") + " open"
	}
	if len(l.Round.Holes) == 0 {
		r.Score = "not entered"
		return r
	}
	r.Score = fmt.Sprintf("%.0f", math.Round(a.Score))
	// as the statement prints them, so that a row adds up where nothing is
	// undetailed
	target := math.Round((a.Expected-a.Lost.Course)*10) / 10
	total := math.Round(a.Score*10)/10 - target
	parts := stat.RoundedTo([]float64{a.Lost.Tee, a.Lost.Approach, a.Lost.ShortGame, a.Lost.Putting, a.Lost.Undetailed + a.Lost.Course}, .1, total)
	r.Tee, r.Approach, r.ShortGame, r.Putting = signed(parts[0], 1), signed(parts[1], 1), signed(parts[2], 1), signed(parts[3], 1)
	r.Lost, r.Double = signed(total, 1), fmt.Sprint(len(a.Doubles))
	r.Worst = worstPart(parts[:len(golf.Categories)])
	return r
}
