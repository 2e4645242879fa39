package coach

import (
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/figures"
	"strokeledger/web/paths"
)

var today = golf.Date{Year: 2026, Month: time.August, Day: 31}

// aForm is a form of ten rounds whose putting plays to a level now and to another
// before, which is clear from five levels on, and whose other parts play to 84.
func aForm(now, before float64) compare.Form {
	f := compare.Form{Rounds: 10, Doubles: 2, Compound: .5}
	for _, c := range golf.Categories {
		f.Now[c] = compare.PlaysTo{Rounds: 10, Level: compare.Level{Value: 84}, Low: compare.Level{Value: 80}, High: compare.Level{Value: 88}}
		f.Before[c] = compare.Level{Value: 84}
	}
	f.Now[golf.Putting] = compare.PlaysTo{Rounds: 10, Level: compare.Level{Value: now}, Low: compare.Level{Value: now - 4}, High: compare.Level{Value: now + 4}}
	f.Before[golf.Putting] = compare.Level{Value: before}
	f.Changes[golf.Putting] = compare.Change{Known: true, Mean: (now - before) / 5, Word: compare.Chance}
	if math.Abs(now-before) >= 5 {
		f.Changes[golf.Putting].Word = compare.Clear
	}
	return f
}

func pupils() []RosterPupil {
	return []RosterPupil{
		{ID: 1, Name: "Abara", Target: 79, RosterRow: analysis.RosterRow{From: today.AddDays(-90), Last: today.AddDays(-9), Score: 84, Holes: 18, Form: aForm(84, 84)}},
		{ID: 2, Name: "Bea", Target: 79, NewRounds: 1, RosterRow: analysis.RosterRow{From: today.AddDays(-90), Last: today.AddDays(-2), Score: 86, Holes: 18, Form: aForm(97, 84)}},
		{ID: 3, Name: "Calder", Target: 79, Questions: 1, RosterRow: analysis.RosterRow{From: today.AddDays(-90), Last: today.AddDays(-20), Score: 91, Holes: 18, Form: aForm(80, 89)}},
		{ID: 4, Name: "Dev", Target: 79, DueWhat: "Start line", Due: today.AddDays(-4), RosterRow: analysis.RosterRow{From: today.AddDays(-90), Last: today.AddDays(-1), Score: 80, Holes: 9, Form: aForm(82, 83)}},
		{ID: 5, Name: "Esme", Target: 90},
	}
}

func names(r Roster) []string {
	var all []string
	for _, row := range r.Rows {
		all = append(all, row.Name)
	}
	return all
}

func TestRosterIsSortedByNeed(t *testing.T) {
	for sort, want := range map[string][]string{
		"": {"Calder", "Bea", "Dev", "Abara", "Esme"}, "round": {"Dev", "Bea", "Abara", "Calder", "Esme"}, "name": {"Abara", "Bea", "Calder", "Dev", "Esme"},
		"putting": {"Bea", "Abara", "Dev", "Calder", "Esme"}, "nonsense": {"Calder", "Bea", "Dev", "Abara", "Esme"},
	} {
		if diff := cmp.Diff(want, names(NewRoster(RosterInput{Pupils: pupils(), Today: today, At: paths.Roster{Sort: sort}}))); diff != "" {
			t.Errorf("by %q: %s", sort, diff)
		}
	}
}

func TestRosterIsNarrowed(t *testing.T) {
	for at, want := range map[paths.Roster][]string{
		{Show: "new", Sort: "name"}: {"Bea", "Calder"}, {Show: "late"}: {"Dev"}, {Show: "worse"}: {"Bea"}, {Name: "E", Show: "late"}: {"Dev"},
		{Name: " "}: nil, {Show: "target", Sort: "name"}: {"Abara", "Bea", "Calder", "Dev"},
	} {
		r := NewRoster(RosterInput{Pupils: pupils(), Today: today, At: at})
		if diff := cmp.Diff(want, names(r)); diff != "" {
			t.Errorf("%+v: %s", at, diff)
		}
		if (r.None != "") != (len(want) == 0) {
			t.Errorf("%+v says %q", at, r.None)
		}
	}
}

func TestRosterRows(t *testing.T) {
	thin := compare.Form{Rounds: 1}
	for name, c := range map[string]struct {
		in   RosterPupil
		want RosterRow // without its parts
	}{
		"no round": {RosterPupil{ID: 5, Name: "Esme", Target: 90},
			RosterRow{Name: "Esme", At: "/players/5/lessons", Last: "no rounds yet", Month: "0 rounds this month", Target: "90", Due: "none set"}},
		"one round": {RosterPupil{ID: 1, Name: "Abara", Target: 79.5, Month: 1, RosterRow: analysis.RosterRow{From: today.AddDays(-90), Last: today.AddDays(-400), Score: 83.6, Holes: 18, Form: thin}},
			RosterRow{Name: "Abara", At: "/players/1/lessons", Last: "27 Jul 2025", Score: "84", Over: "levels over 1 round from 2 Jun", Month: "1 round this month", Target: "79.5", Doubles: "0.0", Due: "none set"}},
		"much that is new": {RosterPupil{ID: 2, Name: "Bea", Target: 79, Month: 3, NewRounds: 1, Questions: 2, Unread: 1, Results: 3, DueWhat: "Start line", Due: today.AddDays(1), RosterRow: analysis.RosterRow{From: today.AddDays(-90), Last: today.AddDays(-2), Score: 86, Holes: 18, Form: aForm(97, 84)}},
			RosterRow{Name: "Bea", At: "/players/2/lessons", Last: "29 Aug", Score: "86", Over: "levels over 10 rounds from 2 Jun", Month: "3 rounds this month", Target: "79", Doubles: "2.0", Compound: "50% compound",
				New: []string{"2 questions", "1 reply or note", "1 new round", "3 practice results"}, Due: "Start line, tomorrow"}},
		"late practice, nine holes": {RosterPupil{ID: 4, Name: "Dev", Target: 79, DueWhat: "Start line", Due: today.AddDays(-1), RosterRow: analysis.RosterRow{From: today.AddDays(-90), Last: today, Score: 40, HolesTarget: 39.5, Holes: 9, Form: aForm(82, 83)}},
			RosterRow{Name: "Dev", At: "/players/4/lessons", Last: "31 Aug", Score: "40 on 9 holes, target 39.5", Over: "levels over 10 rounds from 2 Jun", Month: "0 rounds this month", Target: "79", Doubles: "2.0", Compound: "50% compound", Due: "Start line", Late: "1 day late"}},
	} {
		r := NewRoster(RosterInput{Pupils: []RosterPupil{c.in}, Today: today})
		got := r.Rows[0]
		if len(got.Parts) != len(golf.Categories) {
			t.Errorf("%s: %d parts of the game", name, len(got.Parts))
		}
		got.Parts = nil
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}

// The parts of a pupil's game are on the scale of all pupils, whoever is shown.
func TestRosterParts(t *testing.T) {
	for _, show := range []string{"", "worse"} {
		r := NewRoster(RosterInput{Pupils: pupils(), Today: today, At: paths.Roster{Show: show, Name: "Bea"}})
		parts := r.Rows[0].Parts
		if got := []string{parts[0].Name, parts[1].Name, parts[2].Name, parts[3].Name}; !slices.Equal(got, []string{"Tee", "Approach", "Short game", "Putting"}) {
			t.Errorf("the parts are %q", got)
		}
		want := figures.PartLevel{Name: "Putting", Now: "97", Was: "was 84", Interval: "93 to 101", Moved: "worse, clear",
			Dumbbell: figures.Dumbbell{Known: true, X: "80.91%", Low: "66.36%", High: "95.45%", Target: "15.45%", HasBefore: true, Before: "33.64%"}}
		if diff := cmp.Diff(want, parts[3]); diff != "" {
			t.Errorf("shown %q: %s", show, diff)
		}
	}
	esme := NewRoster(RosterInput{Pupils: pupils(), Today: today, At: paths.Roster{Name: "Esme"}}).Rows[0]
	if diff := cmp.Diff(figures.PartLevel{Name: "Tee", Now: "five more rounds until a level is shown"}, esme.Parts[0]); diff != "" {
		t.Error(diff)
	}
}

func TestRosterLede(t *testing.T) {
	all := pupils()
	abara, calder := all[0], all[2]
	dan := RosterPupil{Name: "Dan", NewRounds: 2, Questions: 1}
	for want, in := range map[string][]RosterPupil{
		"Nobody has entered a round since you looked.":                                                                                                                           {abara},
		"Dan has entered two rounds since you looked, and one is waiting for an answer.":                                                                                         {dan},
		"Two of three have entered rounds since you looked, and two are waiting for an answer.":                                                                                  {dan, dan, abara},
		"One of five has entered rounds since you looked, and one is waiting for an answer. Bea’s putting has changed most: 2.6 strokes worse a round of 18, and that is clear.": all,
		"Nobody has entered a round since you looked, and one is waiting for an answer. Calder’s putting has changed most: 1.8 strokes better a round of 18, and that is clear.": {abara, calder},
	} {
		if got := NewRoster(RosterInput{Pupils: in, Today: today}).Lede; got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

func TestRosterChoices(t *testing.T) {
	r := NewRoster(RosterInput{Pupils: pupils(), Today: today, At: paths.Roster{Sort: "short game", Show: "late", Name: "e"}})
	var sorts, shows []string
	for _, l := range r.Sorts {
		name := l.Name
		if l.Here {
			name += " (here)"
		}
		sorts = append(sorts, name)
	}
	for _, c := range r.Shows {
		name := c.Name
		if c.Chosen {
			name += " (chosen)"
		}
		shows = append(shows, name)
	}
	if diff := cmp.Diff([]string{"what needs attention", "latest round", "name", "tee above target", "approach above target", "short game above target (here)", "putting above target", "doubles"}, sorts); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]string{"all pupils", "with something new", "with late practice (chosen)", "with a part that got clearly worse", "with a part clearly above target"}, shows); diff != "" {
		t.Error(diff)
	}
	if r.Aside != "Sorted by short game above target." || r.Sorts[1].At != "/coaching?name=e&show=late&sort=round" || r.Name.Value != "e" || r.Sort != "short game" {
		t.Errorf("%q %q %q %q", r.Aside, r.Sorts[1].At, r.Name.Value, r.Sort)
	}
	usual := NewRoster(RosterInput{Pupils: pupils(), Today: today})
	if !strings.HasPrefix(usual.Aside, "First come pupils who asked or replied,") {
		t.Errorf("%q", usual.Aside)
	}
}
