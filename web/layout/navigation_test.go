package layout

import (
	"strings"
	"testing"

	"strokeledger/web/paths"
)

// printed is a line of the navigation as text: what the page belongs to has a
// star, what a second line says more of a plus.
func printed(all []Destination) string {
	sign := map[string]string{"page": "*", "true": "+", "": ""}
	var names []string
	for _, d := range all {
		names = append(names, sign[d.Current]+d.Name)
	}
	return strings.Join(names, " ")
}

func TestNavigation(t *testing.T) {
	practice := paths.Whose{Player: 7, Own: true}.Lessons()
	for name, c := range map[string]struct {
		here              string
		coach             bool
		main, own, beside string
	}{
		"a player enters":             {paths.NewRound, false, "*Enter Rounds Months Practice Play", "", "Coach Notices"},
		"a player's courses":          {paths.Courses, false, "*Enter Rounds Months Practice Play", "", "Coach Notices"},
		"a player practises":          {practice, false, "Enter Rounds Months *Practice Play", "", "Coach Notices"},
		"a player prepares a round":   {paths.Whose{Player: 7, Own: true}.Play(), false, "Enter Rounds Months Practice *Play", "", "Coach Notices"},
		"a player lets a coach in":    {paths.Coaching, false, "Enter Rounds Months Practice Play", "", "*Coach Notices"},
		"a player's help":             {paths.Help, false, "Enter Rounds Months Practice Play", "", "Coach Notices"},
		"a coach's pupils":            {paths.Coaching, true, "*Pupils Group lesson Own game", "", "Notices"},
		"a coach's group":             {paths.Squad, true, "Pupils *Group lesson Own game", "", "Notices"},
		"a coach's own rounds":        {paths.Rounds, true, "Pupils Group lesson +Own game", "Enter *Rounds Months Practice Play", "Notices"},
		"a coach's own practice":      {practice, true, "Pupils Group lesson +Own game", "Enter Rounds Months *Practice Play", "Notices"},
		"a coach's own courses":       {paths.Courses, true, "Pupils Group lesson +Own game", "*Enter Rounds Months Practice Play", "Notices"},
		"a coach's account":           {paths.Account, true, "Pupils Group lesson Own game", "", "Notices"},
		"a page that belongs nowhere": {"", true, "Pupils Group lesson Own game", "", "Notices"},
	} {
		p := Page{Player: "Robin", ID: 7, Here: c.here, Teaches: c.coach}
		if got := printed(p.Navigation()); got != c.main {
			t.Errorf("%s: %s", name, got)
		}
		if got := printed(p.OwnGame()); got != c.own {
			t.Errorf("%s: own game: %s", name, got)
		}
		if got := printed(p.BesideName()); got != c.beside {
			t.Errorf("%s: beside the name: %s", name, got)
		}
		if a := p.AccountAt(); a.At != paths.Account || a.Name != "Robin" || (a.Current == "page") != (c.here == paths.Account) {
			t.Errorf("%s: account: %v", name, a)
		}
	}
}

// What a page fetches first is what its reader sees first.
func TestFonts(t *testing.T) {
	if got := strings.Join(Page{}.Fonts(), " "); got != "book-400.woff2 book-700.woff2" {
		t.Error(got)
	}
	if got := strings.Join(Page{BodyClass: "entry-page"}.Fonts(), " "); got != "book-700.woff2 column-400.woff2" {
		t.Error(got)
	}
}
