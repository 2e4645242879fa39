package layout

import (
	"slices"

	"strokeledger/web/paths"
)

// Destination is an entry of the navigation.
type Destination struct {
	At, Name string
	Count    int    // of what is new there; 0 for nothing
	Current  string // value of aria-current: page where the page belongs to it, true where a line below says more, empty elsewhere
}

// Navigation is the first line of where a signed-in person can go from every
// page: the own game, or for somebody who has pupils the pupils, then the own game.
func (p Page) Navigation() []Destination {
	if !p.Teaches {
		return p.marked(p.game())
	}
	own := Destination{At: paths.Rounds, Name: "Own game"}
	if len(p.OwnGame()) > 0 {
		own.Current = "true"
	}
	return append(p.marked([]Destination{{At: paths.Coaching, Name: "Pupils"}, {At: paths.Squad, Name: "Group lesson"}}), own)
}

// OwnGame is the second line, which somebody who has pupils finds on the pages of
// the own game.
func (p Page) OwnGame() []Destination {
	own := p.marked(p.game())
	if !p.Teaches || !slices.ContainsFunc(own, func(d Destination) bool { return d.Current != "" }) {
		return nil
	}
	return own
}

// BesideName is what stands beside the name of the person signed in.
func (p Page) BesideName() []Destination {
	if p.Teaches {
		return p.marked([]Destination{p.notices()})
	}
	return p.marked([]Destination{{At: paths.Coaching, Name: "Coach"}, p.notices()})
}

// notices leads to what the person was told.
func (p Page) notices() Destination {
	return Destination{At: paths.Notices, Name: "Notices", Count: p.Notices}
}

// AccountAt leads from the name to the account.
func (p Page) AccountAt() Destination {
	return p.marked([]Destination{{At: paths.Account, Name: p.Player}})[0]
}

// game is a player's own game.
func (p Page) game() []Destination {
	return []Destination{
		{At: paths.NewRound, Name: "Enter"}, {At: paths.Rounds, Name: "Rounds"}, {At: paths.MyMonths, Name: "Months"},
		{At: paths.Whose{Player: p.ID, Own: true}.Lessons(), Name: "Practice"},
		{At: paths.Whose{Player: p.ID, Own: true}.Play(), Name: "Play"},
	}
}

// marked says of each entry whether the page belongs to it. Courses are reached
// from where a round is entered.
func (p Page) marked(all []Destination) []Destination {
	here := p.Here
	if here == paths.Courses {
		here = paths.NewRound
	}
	for i := range all {
		if all[i].At == here {
			all[i].Current = "page"
		}
	}
	return all
}
