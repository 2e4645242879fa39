package coach

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
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
	f.Lost = [golf.Putting + 1]float64{5.16, 1.04, 1.04, 1.04, 2.04}
	f.Changes[golf.Putting] = compare.Change{Known: true, Mean: (now - before) / 5, Word: compare.Chance}
	if math.Abs(now-before) >= 5 {
		f.Changes[golf.Putting].Word = compare.Clear
	}
	return f
}

func pupils() []RosterPupil {
	from := today.AddDays(-90)
	return []RosterPupil{
		{ID: 1, Name: "Abara", Target: 79, Begun: from, RosterRow: analysis.RosterRow{From: from, Last: today.AddDays(-9), Score: 84, HolesTarget: 79, Holes: 18, Form: aForm(84, 84)}},
		{ID: 2, Name: "Bea", Target: 79, Begun: from, NewRounds: 1, NewRound: 12, Groups: []string{"Tuesday six"}, RosterRow: analysis.RosterRow{From: from, Last: today.AddDays(-2), Score: 86, HolesTarget: 79, Holes: 18, Form: aForm(97, 84)}},
		{ID: 3, Name: "Calder", Target: 79, Begun: from, Asked: []Question{{ID: 7, Round: 9, Hole: 4, Shot: 2, Day: today.AddDays(-20)}}, Groups: []string{"Juniors", "Tuesday six"},
			RosterRow: analysis.RosterRow{From: from, Last: today.AddDays(-20), Score: 91, HolesTarget: 79, Holes: 18, Form: aForm(80, 89)}},
		{ID: 4, Name: "Dev", Target: 79, Begun: from, DueWhat: "Start line", DueID: 3, Due: today.AddDays(-4), RosterRow: analysis.RosterRow{From: from, Last: today.AddDays(-1), Score: 40, HolesTarget: 39.5, Holes: 9, Form: aForm(82, 83)}},
		{ID: 5, Name: "Esme", Target: 90, Begun: today.AddDays(-28)},
		{ID: 6, Name: "Fay", Target: 90, Begun: from, Archived: true, NewRounds: 1, NewRound: 4},
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
	worse := pupils()
	worse[0].Form.Lost = [golf.Putting + 1]float64{9, 4, 4, 1, 0}
	for sort, want := range map[string][]string{
		"": {"Calder", "Bea", "Dev", "Esme", "Abara"}, "round": {"Dev", "Bea", "Abara", "Calder", "Esme"}, "name": {"Abara", "Bea", "Calder", "Dev", "Esme"},
		"putting": {"Bea", "Calder", "Dev", "Abara", "Esme"}, "over": {"Abara", "Bea", "Calder", "Dev", "Esme"}, "nonsense": {"Calder", "Bea", "Dev", "Esme", "Abara"},
	} {
		if diff := cmp.Diff(want, names(NewRoster(RosterInput{Pupils: worse, Today: today, At: paths.Roster{Sort: sort}}))); diff != "" {
			t.Errorf("by %q: %s", sort, diff)
		}
	}
}

func TestRosterIsNarrowed(t *testing.T) {
	for at, want := range map[paths.Roster][]string{
		{Show: "new", Sort: "name"}: {"Bea", "Calder"}, {Show: "late"}: {"Dev"}, {Show: "worse"}: {"Bea"}, {Name: "E", Show: "late"}: {"Dev"},
		{Name: " "}: nil, {Show: "target", Sort: "name"}: {"Abara", "Bea", "Calder", "Dev"}, {Show: "quiet"}: {"Esme"}, {Show: "archived"}: {"Fay"},
		{Group: "Tuesday six"}: {"Calder", "Bea"}, {Group: "Nobody"}: nil,
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

// The queue leads from what a pupil needs to the very place, the most pressing
// first; an archived pupil is in it only with a question.
func TestQueue(t *testing.T) {
	all := pupils()
	all[5].Asked = []Question{{ID: 2, Round: 4, Day: today.AddDays(-400)}}
	all[0].Unread = 2
	r := NewRoster(RosterInput{Pupils: all, Today: today})
	var got []string
	for _, q := range append(r.Queue, r.Folded...) {
		got = append(got, strings.Join([]string{q.Kind, q.Who, q.What, q.Do, q.At}, "|"))
	}
	if diff := cmp.Diff([]string{
		"asks|Calder|about hole 4, shot 2, of the round of 11 Aug|Answer|/players/3/rounds/9#note-7",
		"asks|Fay|about the round of 27 Jul 2025|Answer|/players/6/rounds/4#note-2",
		"wrote|Abara|two replies or notes|Read|/players/1/lessons#lessons",
		"played|Bea|one new round|Review|/players/2/rounds/12",
		"clear change|Bea|putting 2.6 strokes a round worse|See the months|/players/2/months?span=before10&span=last10",
		"clear change|Calder|putting 1.8 strokes a round better|See the months|/players/3/months?span=before10&span=last10",
		"late|Dev|with Start line: 4 days over|See the results|/players/4/lessons#practice-3",
		"quiet|Esme|no round yet, after 28 days|Write|/players/5/lessons#lessons",
	}, got); diff != "" {
		t.Error(diff)
	}
	if r.Lede != "Eight things wait, for all six of your pupils." || r.Rest != "1 more: one has gone quiet" {
		t.Errorf("%q %q", r.Lede, r.Rest)
	}
	for want, in := range map[string][]RosterPupil{"Nothing waits.": all[4:4], "Nothing waits for either of your pupils.": {{Name: "A"}, {Name: "B"}}, "Nothing waits for any of your three pupils.": {{Name: "A"}, {Name: "B"}, {Name: "C"}}, "Two things wait, for one of your two pupils.": {all[2], {Name: "B"}}, "One thing waits.": {all[3]}, "Two things wait.": {all[2]}} {
		if len(in) == 0 {
			in = []RosterPupil{{Name: "A"}}
		}
		if got := NewRoster(RosterInput{Pupils: in, Today: today}).Lede; got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// The bar of a pupil leads on to another pupil, the one after in the queue.
func TestNextInQueue(t *testing.T) {
	for here, want := range map[golf.PlayerID]string{1: "Calder", 3: "Bea", 2: "Dev", 4: "Calder", 99: "Calder"} {
		if next, ok := NextInQueue(pupils(), here, today); !ok || next.Who != want {
			t.Errorf("after %d comes %q, %v, want %s", here, next.Who, ok, want)
		}
	}
	if next, ok := NextInQueue(pupils()[2:3], 3, today); ok {
		t.Errorf("after the only pupil comes %q", next.Who)
	}
}

// A line has the last score over its target, what a round loses, and words where a
// change is clear or leaning or practice late.
func TestRosterRows(t *testing.T) {
	all := NewRoster(RosterInput{Pupils: pupils(), Today: today, At: paths.Roster{Sort: "name"}}).Rows
	said := func(r RosterRow) string {
		var words, figures []string
		for _, w := range r.Words {
			words = append(words, w.Class+" "+w.Text)
		}
		for _, p := range r.Parts {
			figures = append(figures, p.Figure)
		}
		return strings.Join([]string{r.Day, r.Score + r.Holes, r.Over, r.Round, strings.Join(figures, " "), strings.Join(words, "; ")}, "|")
	}
	for i, want := range []string{
		"22 Aug|84|+5|+5.2|+1.1 +1.1 +1.0 +2.0|",
		"29 Aug|86|+7|+5.2|+1.1 +1.1 +1.0 +2.0|flag-word 1 new round; clear-word putting worse, clear",
		"11 Aug|91|+12|+5.2|+1.1 +1.1 +1.0 +2.0|flag-word asks; clear-word putting better, clear",
		"30 Aug|40 on 9|+0.5|+5.2|+1.1 +1.1 +1.0 +2.0|late-word practice late",
		"no rounds yet||||   |flag-word quiet",
	} {
		if got := said(all[i]); got != want {
			t.Errorf("%s: %q, want %q", all[i].Name, got, want)
		}
	}
}

// The bars of all pupils are on one scale, and one that leaves it is cut.
func TestRosterBars(t *testing.T) {
	p := pupils()[0]
	p.Form.Lost = [golf.Putting + 1]float64{4, -2, 4, 6, -4}
	parts := NewRoster(RosterInput{Pupils: []RosterPupil{p}, Today: today}).Rows[0].Parts
	for i, want := range []string{"3.85% 30.77% true ", "34.62% 61.54% false ", "34.62% 65.38% false 100%", "0% 34.62% true 0%"} {
		b := parts[i].Bar
		if got := fmt.Sprintf("%s %s %v %s", b.X, b.Width, b.Won, b.Cut); got != want {
			t.Errorf("%s: %q, want %q", parts[i].Name, got, want)
		}
	}
}

// A line that is opened has what the line has no room for.
func TestRosterOpens(t *testing.T) {
	all := pupils()
	all[0].Since, all[0].Month = today.AddDays(-30), 1
	o := NewRoster(RosterInput{Pupils: all[:1], Today: today}).Rows[0].Open
	if o.Target != "79" || o.Lost != "Over ten rounds from 2 Jun:" || o.Plays != "tee 84 (80 to 88), approach 84 (80 to 88), short game 84 (80 to 88) and putting 84 (80 to 88)." ||
		o.Doubles != "2.0 doubles for 18 holes, 50% of them compound." || o.Month != "One round this month." || o.Practice != "none set" || o.Since != "Shared from 1 Aug." {
		t.Errorf("%+v", o)
	}
	if late := NewRoster(RosterInput{Pupils: all[3:4], Today: today}).Rows[0].Open; late.Practice != "Start line" || late.Late != "4 days late" {
		t.Errorf("%+v", late)
	}
}

func TestRosterChoices(t *testing.T) {
	r := NewRoster(RosterInput{Pupils: pupils(), Today: today, At: paths.Roster{Sort: "short game", Show: "late", Name: "e", Group: "Juniors"}})
	chosen := func(all []components.Choice) string {
		for _, c := range all {
			if c.Chosen {
				return c.Name
			}
		}
		return ""
	}
	c := r.Choice
	if !c.Open || chosen(c.Sorts) != "strokes lost in the short game" || chosen(c.Shows) != "with late practice" || chosen(c.Groups) != "Juniors" || c.Name.Value != "e" || c.Group != "Juniors" {
		t.Errorf("%+v", c)
	}
	if r.Aside != "Juniors. Sorted by strokes lost in the short game." || r.Heads[0].At != "/coaching?group=Juniors&name=e&show=late&sort=name" || r.Squad != "/coaching/squad?group=Juniors" {
		t.Errorf("%q %q %q", r.Aside, r.Heads[0].At, r.Squad)
	}
	if diff := cmp.Diff([]string{"Juniors", "Tuesday six"}, GroupNames(pupils())); diff != "" {
		t.Error(diff)
	}
	usual := NewRoster(RosterInput{Pupils: pupils()[:1], Today: today}).Choice
	if usual.Open || len(usual.Groups) != 0 || len(usual.Links) != 0 {
		t.Errorf("%+v", usual)
	}
}
