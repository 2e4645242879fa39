package statement

import (
	"slices"
	"testing"
	"time"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// lost is a round of 18 holes that lost strokes off the tee and on the approach.
func lost(tee, approach float64) figures.ListedRound {
	return figures.ListedRound{ID: 1, Card: 18, Target: 79, Round: golf.Round{Holes: make([]golf.Hole, 18)},
		Account: account.Account{Score: 79 + tee + approach, Expected: 79, Lost: account.Split{Tee: tee, Approach: approach, Total: tee + approach}, Counts: account.Counts{Holes: 18}}}
}

func TestRoundsPage(t *testing.T) {
	own, coach := paths.Whose{Player: 7, Own: true}, paths.Whose{Player: 7}
	unentered := figures.ListedRound{ID: 2, Card: 18, Target: 79}
	narrow := Narrow{Courses: []string{"Harrow Fen"}}
	chosen := Narrow{Courses: []string{"Harrow Fen"}, From: golf.Date{Year: 2026, Month: time.May, Day: 2}}
	var twelve []figures.ListedRound
	for range 12 {
		twelve = append(twelve, lost(0, 1.5))
	}
	for _, c := range []struct {
		name, heading, here, lede string
		in                        RoundsInput
	}{
		{"empty", "Rounds", "/rounds", "No rounds yet. Enter the first one from its card and your notes.", RoundsInput{Whose: own}},
		{"empty, to a coach", "Rounds of Robin", "/coaching", "No rounds yet.", RoundsInput{Whose: coach, Name: "Robin"}},
		{"none chosen", "Rounds", "/rounds", "No rounds on that course and those days.", RoundsInput{Whose: own, Narrow: chosen}},
		{"one without holes", "Rounds", "/rounds", "1 round. No shots have been entered yet.", RoundsInput{Whose: own, Rounds: []figures.ListedRound{unentered}, Narrow: narrow}},
		{"one", "Rounds", "/rounds", "1 round. In it, most was lost on the approach: 2.0 per 18 holes.", RoundsInput{Whose: own, Rounds: []figures.ListedRound{lost(1, 2)}, Narrow: narrow}},
		{"two", "Rounds", "/rounds", "2 rounds. Over the last two, most was lost off the tee: 2.0 per 18 holes.", RoundsInput{Whose: own, Rounds: []figures.ListedRound{lost(1, 2), lost(3, 0)}, Narrow: narrow}},
		{"nothing lost", "Rounds", "/rounds", "1 round. Lately no part of the game has lost strokes against the target.", RoundsInput{Whose: own, Rounds: []figures.ListedRound{lost(-1, -2)}, Narrow: narrow}},
		{"many", "Rounds of Robin", "/coaching", "12 rounds. Over the last ten, most was lost on the approach: 1.5 per 18 holes.", RoundsInput{Whose: coach, Name: "Robin", Rounds: twelve, Narrow: narrow}},
	} {
		p := NewRoundsPage(layout.Page{}, c.in)
		if p.Heading != c.heading || p.Here != c.here || p.Lede != c.lede || p.Own != c.in.Whose.Own || len(p.Rows) != len(c.in.Rounds) {
			t.Errorf("%s: %q, %q, %q, %d rows", c.name, p.Heading, p.Here, p.Lede, len(p.Rows))
		}
		if (p.Foot != "") != (len(c.in.Rounds) > 0) || p.Any != (len(c.in.Narrow.Courses) > 0) || p.Narrowed != c.in.Narrow.chosen() {
			t.Errorf("%s: foot %q, any %v, narrowed %v", c.name, p.Foot, p.Any, p.Narrowed)
		}
	}
}

func TestNewsOfTheRounds(t *testing.T) {
	today := golf.Date{Year: 2026, Month: time.May, Day: 2}
	for _, c := range []struct {
		name string
		in   RoundsInput
		want []components.Link
	}{
		{"nothing", RoundsInput{}, nil},
		{"a coach asks", RoundsInput{Waiting: []string{"Ines"}}, []components.Link{{Name: "Ines is waiting for you to approve them as your coach.", At: "/coaching"}}},
		{"one note", RoundsInput{Unread: 1}, []components.Link{{Name: "1 note has something new from a coach.", At: "/players/7/lessons"}}},
		{"two notes", RoundsInput{Unread: 2}, []components.Link{{Name: "2 notes have something new from a coach.", At: "/players/7/lessons"}}},
		{"practice to come", RoundsInput{DueWhat: "Ten putts", Due: today.AddDays(1)}, []components.Link{{Name: "Ten putts: to practise by tomorrow.", At: "/players/7/lessons#practice"}}},
		{"practice overdue", RoundsInput{DueWhat: "Ten putts", Due: today.AddDays(-1)}, []components.Link{{Name: "Ten putts: practice overdue by 1 day.", At: "/players/7/lessons#practice"}}},
	} {
		c.in.Whose, c.in.Today = paths.Whose{Player: 7, Own: true}, today
		if got := c.in.news(); !slices.Equal(got, c.want) {
			t.Errorf("%s: %+v", c.name, got)
		}
	}
}

func TestTheListIsNarrowed(t *testing.T) {
	p := NewRoundsPage(layout.Page{}, RoundsInput{Narrow: Narrow{Course: "Saltmarsh Links", To: golf.Date{Year: 2026, Month: time.May, Day: 2}, Courses: []string{"Harrow Fen", "Saltmarsh Links"}}})
	if want := []components.Choice{{Name: "any course"}, {Value: "Harrow Fen", Name: "Harrow Fen"}, {Value: "Saltmarsh Links", Name: "Saltmarsh Links", Chosen: true}}; !slices.Equal(p.Courses, want) {
		t.Errorf("%+v", p.Courses)
	}
	if p.From.Value != "" || p.To.Value != "2026-05-02" {
		t.Errorf("from %q to %q", p.From.Value, p.To.Value)
	}
}
