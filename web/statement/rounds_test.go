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
	return figures.ListedRound{ID: 1, Card: 18, Target: 79, Round: golf.Round{Date: mayDay, Holes: make([]golf.Hole, 18)},
		Account: account.Account{Score: 79 + tee + approach, Expected: 79, Lost: account.Split{Tee: tee, Approach: approach, Total: tee + approach}, Counts: account.Counts{Holes: 18}}}
}

var mayDay = golf.Date{Year: 2026, Month: time.May, Day: 2}

func month(year int, m time.Month) golf.Date { return golf.Date{Year: year, Month: m, Day: 1} }

func TestRoundsPage(t *testing.T) {
	own, coach := paths.Whose{Player: 7, Own: true}, paths.Whose{Player: 7}
	unentered := figures.ListedRound{ID: 2, Card: 18, Target: 79, Round: golf.Round{Date: mayDay}}
	nine, other := lost(0, 3), lost(0, 4)
	nine.Round.Holes, other.Target = nine.Round.Holes[:9], 82
	narrow := Narrow{Courses: []string{"Harrow Fen"}}
	chosen := Narrow{Courses: []string{"Harrow Fen"}, From: month(2026, time.May)}
	var twelve []figures.ListedRound
	for i := range 12 {
		l := lost(1, 2)
		l.Round.Date = mayDay.AddDays(-i - i/10)
		twelve = append(twelve, l)
	}
	for _, c := range []struct {
		name, heading, here, lede string
		in                        RoundsInput
	}{
		{"empty", "Rounds", "/rounds", "No rounds yet. Enter the first one from its card and your notes.", RoundsInput{Whose: own}},
		{"empty, to a coach", "Rounds of Robin", "/coaching", "Robin has not entered a round yet.", RoundsInput{Whose: coach, Name: "Robin"}},
		{"none chosen", "Rounds", "/rounds", "No rounds on that course in those months.", RoundsInput{Whose: own, Narrow: chosen}},
		{"none before", "Rounds", "/rounds", "No rounds before May 2026.", RoundsInput{Whose: own, Narrow: Narrow{Before: month(2026, time.May)}}},
		{"some before", "Rounds", "/rounds", "Rounds before June 2026.", RoundsInput{Whose: own, Rounds: twelve, Narrow: Narrow{Before: month(2026, time.June)}}},
		{"one without holes", "Rounds", "/rounds", "1 round. No shots have been entered yet.", RoundsInput{Whose: own, Rounds: []figures.ListedRound{unentered}, Narrow: narrow}},
		{"one", "Rounds", "/rounds", "The last round, of 2 May 2026: four over your 79, three of them off the tee and one on the approach.", RoundsInput{Whose: own, Rounds: []figures.ListedRound{lost(3, 1)}, Narrow: narrow}},
		{"more than all", "Rounds", "/rounds", "The last two rounds, 2 May 2026: two over your 79 each, most of it off the tee.", RoundsInput{Whose: own, Rounds: []figures.ListedRound{lost(4, -2), lost(4, -2)}, Narrow: narrow}},
		{"level", "Rounds", "/rounds", "The last round, of 2 May 2026: level with your 79.", RoundsInput{Whose: own, Rounds: []figures.ListedRound{lost(0, 0)}, Narrow: narrow}},
		{"under", "Rounds", "/rounds", "The last round, of 2 May 2026: three under your 79.", RoundsInput{Whose: own, Rounds: []figures.ListedRound{lost(-1, -2)}, Narrow: narrow}},
		{"half a round", "Rounds", "/rounds", "The last round, of 2 May 2026: six over your 79 for every 18 holes, most of it on the approach.", RoundsInput{Whose: own, Rounds: []figures.ListedRound{nine}, Narrow: narrow}},
		{"two targets", "Rounds", "/rounds", "The last two rounds, 2 May 2026: four over your target each, most of it on the approach.", RoundsInput{Whose: own, Rounds: []figures.ListedRound{lost(0, 4), other}, Narrow: narrow}},
		{"narrowed", "Rounds", "/rounds", "The last round of these, of 2 May 2026: level with your 79.", RoundsInput{Whose: own, Rounds: []figures.ListedRound{lost(0, 0)}, Narrow: chosen}},
		{"many, to a coach", "Rounds of Robin", "/coaching", "The last ten rounds, 23 Apr to 2 May 2026: three over Robin’s target of 79 each, two of them on the approach and one off the tee.", RoundsInput{Whose: coach, Name: "Robin", Rounds: twelve, Narrow: narrow}},
	} {
		if len(c.in.Rounds) > 0 {
			c.in.Leaf = Leaf{First: month(2026, time.May), Years: []int{2026}}
		}
		p := NewRoundsPage(layout.Page{}, c.in)
		if p.Heading != c.heading || p.Here != c.here || p.Lede != c.lede || p.Own != c.in.Whose.Own || (len(p.Book.Months) > 0) != (len(c.in.Rounds) > 0) {
			t.Errorf("%s: %q, %q, %q, %d months", c.name, p.Heading, p.Here, p.Lede, len(p.Book.Months))
		}
		if (p.Foot != "") != (len(c.in.Rounds) > 0) || p.Filter.Any != (len(c.in.Narrow.Courses) > 0) || p.Filter.Narrowed != c.in.Narrow.chosen() {
			t.Errorf("%s: foot %q, filter %+v", c.name, p.Foot, p.Filter)
		}
		if (p.BookName == "The book of 2026") != (len(c.in.Rounds) > 0) {
			t.Errorf("%s: %q", c.name, p.BookName)
		}
	}
}

// A page holds whole months, about twenty rounds, and leads to the rest.
func TestLeaves(t *testing.T) {
	count := func(months ...int) []MonthRounds { // from May 2026 backwards
		var all []MonthRounds
		for i, n := range months {
			all = append(all, MonthRounds{golf.DateOf(month(2026, time.May).Time().AddDate(0, -i, 0)), n, n})
		}
		return all
	}
	may := month(2026, time.May)
	onePlace := count(8, 8, 8)
	onePlace[1].Chosen = 0
	for _, c := range []struct {
		name            string
		narrow          Narrow
		first, from, to string
		years           []int
		older, at       string
	}{
		{"nothing", Narrow{}, "", "", "", nil, "", ""},
		{"all of it", Narrow{Months: count(3, 4)}, "2026-04-01", "2026-01-01", "2026-05-31", []int{2026}, "", ""},
		{"twenty", Narrow{Months: count(8, 8, 8, 1)}, "2026-04-01", "2026-01-01", "2026-05-31", []int{2026}, "March and older: 9 rounds", "/rounds?before=2026-04"},
		{"a full month", Narrow{Months: count(31, 2)}, "2026-05-01", "2026-01-01", "2026-05-31", []int{2026}, "April: 2 rounds", "/rounds?before=2026-05"},
		{"too few for a page", Narrow{Months: count(3, 31, 1)}, "2026-04-01", "2026-01-01", "2026-05-31", []int{2026}, "March: 1 round", "/rounds?before=2026-04"},
		{"into the year before", Narrow{Months: count(2, 2, 2, 2, 2, 5, 20)}, "2025-12-01", "2025-01-01", "2026-05-31", []int{2026, 2025}, "November: 20 rounds", "/rounds?before=2025-12"},
		{"the year before comes next", Narrow{Months: count(4, 4, 4, 4, 4, 5)}, "2026-01-01", "2026-01-01", "2026-05-31", []int{2026}, "December 2025: 5 rounds", "/rounds?before=2026-01"},
		{"before", Narrow{Months: count(8, 8, 8), Before: month(2026, time.April)}, "2026-03-01", "2026-01-01", "2026-03-31", []int{2026}, "", ""},
		{"from", Narrow{Months: count(8, 8, 8, 8), From: month(2026, time.March)}, "2026-04-01", "2026-03-01", "2026-05-31", []int{2026}, "March: 8 rounds", "/rounds?before=2026-04&since=2026-03"},
		{"to", Narrow{Months: count(8, 8, 8, 8), To: month(2026, time.March)}, "2026-02-01", "2026-01-01", "2026-03-31", []int{2026}, "", ""},
		{"a course", Narrow{Months: onePlace, Course: "Harrow Fen"}, "2026-03-01", "2026-01-01", "2026-05-31", []int{2026}, "", ""},
		{"none on it", Narrow{Months: []MonthRounds{{may, 3, 0}}, Course: "Quarry Hill"}, "", "", "", nil, "", ""},
	} {
		leaf := LeafOf(c.narrow)
		older := leaf.older(paths.Whose{Player: 7, Own: true}, c.narrow)
		if leaf.First.String() != c.first || leaf.From.String() != c.from || leaf.To.String() != c.to || !slices.Equal(leaf.Years, c.years) || older.Name != c.older || older.At != c.at {
			t.Errorf("%s: %+v, %+v", c.name, leaf, older)
		}
	}
}

// The pages of a list hold every round once, in order.
func TestLeavesFollowOneAnother(t *testing.T) {
	var months []MonthRounds
	for i := range 40 {
		n := i*7%13 + 1
		months = append(months, MonthRounds{golf.DateOf(month(2026, time.May).Time().AddDate(0, -i, 0)), n, n})
	}
	var seen []golf.Date
	for n := (Narrow{Months: months}); ; {
		leaf := LeafOf(n)
		for _, m := range months {
			if m.Month.Compare(leaf.First) >= 0 && m.Month.Compare(leaf.To) <= 0 {
				seen = append(seen, m.Month)
			}
		}
		if len(leaf.Older) == 0 {
			break
		}
		n.Before = leaf.First
	}
	if len(seen) != len(months) || seen[0] != months[0].Month || seen[39] != months[39].Month {
		t.Errorf("%d months of %d: %v", len(seen), len(months), seen)
	}
}

func TestYearBookPage(t *testing.T) {
	own := paths.Whose{Player: 7, Own: true}
	empty := NewYearBookPage(layout.Page{}, YearBookInput{Whose: own, Name: "Robin", Year: 2025})
	if empty.Lede != "No rounds in 2025." || empty.Heading != "The book of 2025" || empty.Back != "/rounds" || empty.BodyClass != "year-book" {
		t.Errorf("%+v", empty)
	}
	march := lost(1, 0)
	march.Round.Date = golf.Date{Year: 2026, Month: time.March, Day: 9}
	full := NewYearBookPage(layout.Page{}, YearBookInput{Whose: paths.Whose{Player: 7}, Name: "Robin", Year: 2026, Rounds: []figures.ListedRound{lost(3, 1), lost(1, 1), march}})
	if full.Lede != "Three rounds, in all +7 against the target." || full.Here != "/coaching" || full.Of != "Robin" {
		t.Errorf("%q, %q", full.Lede, full.Here)
	}
	if m := full.Book.Months; len(m) != 2 || m[0].Name != "March" || m[1].Rows[0].Over != "+2" {
		t.Errorf("%+v", m)
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
		{"a round that a coach entered", RoundsInput{Walked: 1}, []components.Link{{Name: "One round that a coach entered waits for you.", At: "/players/7/walked"}}},
		{"a lesson", RoundsInput{Lesson: "Lesson with Ines tomorrow."}, []components.Link{{Name: "Lesson with Ines tomorrow.", At: "/players/7/lessons#next-lesson"}}},
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
	months := []MonthRounds{{month(2026, time.May), 3, 3}, {month(2026, time.March), 1, 0}}
	f := NewRoundsPage(layout.Page{}, RoundsInput{Narrow: Narrow{Course: "Saltmarsh Links", To: month(2026, time.March), Courses: []string{"Harrow Fen", "Saltmarsh Links"}, Months: months}}).Filter
	if want := []components.Choice{{Name: "any course"}, {Value: "Harrow Fen", Name: "Harrow Fen"}, {Value: "Saltmarsh Links", Name: "Saltmarsh Links", Chosen: true}}; !slices.Equal(f.Courses, want) {
		t.Errorf("%+v", f.Courses)
	}
	if want := []components.Choice{{Name: "the first round", Chosen: true}, {Value: "2026-05", Name: "May 2026"}, {Value: "2026-03", Name: "March 2026"}}; !slices.Equal(f.From, want) {
		t.Errorf("%+v", f.From)
	}
	if want := []components.Choice{{Name: "the latest"}, {Value: "2026-05", Name: "May 2026"}, {Value: "2026-03", Name: "March 2026", Chosen: true}}; !slices.Equal(f.To, want) {
		t.Errorf("%+v", f.To)
	}
}
