package coach

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// played3 is a pupil who lost so much for 18 holes in each part of the game, over
// three rounds.
func played3(id golf.PlayerID, name string, lost ...float64) squadRow {
	m := squadRow{SquadMember: SquadMember{ID: id, Name: name, Target: 79, Chosen: true}}
	m.Lost.Rounds, m.First = 3, today.AddDays(-20)
	for i, c := range golf.Categories {
		m.Lost.Cells[c].Known, m.Lost.Cells[c].Mean = true, lost[i]
		m.Lost.Cells[0].Mean += lost[i]
	}
	if worst := golf.Most(func(c golf.Category) float64 { return m.Lost.Cells[c].Mean }); m.Lost.Cells[worst].Mean > .05 {
		m.Worst = worst
	}
	return m
}

// squadOf sets pupils side by side over August, as the engine does.
func squadOf(members []squadRow) SquadInput {
	in := SquadInput{At: paths.SquadChosen(nil), Units: form.StandardUnits, Today: today, Days: form.Days{From: form.DayOf(today.AddDays(-30)), To: form.DayOf(today)}}
	for _, m := range members {
		in.Members, in.Squad.Rows = append(in.Members, m.SquadMember), append(in.Squad.Rows, m.SquadRow)
		in.Squad.Rounds += m.Lost.Rounds
		in.Squad.Played += min(1, m.Lost.Rounds)
	}
	for c := range in.Squad.Together {
		for _, m := range members {
			in.Squad.Together[c] += m.Lost.Cells[c].Mean / float64(max(1, in.Squad.Played))
		}
	}
	in.Squad.Most = golf.Most(func(c golf.Category) float64 { return in.Squad.Together[c] })
	return in
}

func TestSquadPage(t *testing.T) {
	bea, dev, ruth := played3(1, "Bea", 0, 3, 1, 0), played3(2, "Dev", 2, 3, 0, 0), played3(3, "Ruth", 0, 0, 0, 2)
	good := played3(4, "Gwen", -1, -2, 0, -.5)
	away, absent := squadRow{SquadMember: SquadMember{ID: 5, Name: "Abel"}}, squadRow{SquadMember: SquadMember{ID: 6, Name: "Cora", Chosen: true}}
	for name, c := range map[string]struct {
		members  []squadRow
		lede, at string
		groups   []SquadGroup
		rows     int
	}{
		"no pupil":     {nil, "No pupils yet. A player gives you access by sending you a link.", "", nil, 0},
		"none chosen":  {[]squadRow{away}, "Who comes? Choose a group, or tick the pupils.", "", nil, 0},
		"none played":  {[]squadRow{absent}, "None of the chosen pupils played on these days.", "", nil, 0},
		"one":          {[]squadRow{bea, away, absent}, "Bea loses most on the approach: 3 strokes over target for 18 holes.", "3 rounds of 1 pupil, 1 Aug to 31 Aug 2026.", []SquadGroup{{"Approach", "Bea"}}, 1},
		"all the same": {[]squadRow{bea, dev}, "Together they lose most on the approach: 3 strokes over target for 18 holes, and all of them lose most there.", "6 rounds of 2 pupils, 1 Aug to 31 Aug 2026.", []SquadGroup{{"Approach", "Bea, Dev"}}, 2},
		"some": {[]squadRow{bea, dev, ruth}, "Together they lose most on the approach: 2 strokes over target for 18 holes, and two of three lose most there.", "9 rounds of 3 pupils, 1 Aug to 31 Aug 2026.",
			[]SquadGroup{{"Approach", "Bea, Dev"}, {"Putting", "Ruth"}}, 3},
		"one of two": {[]squadRow{bea, ruth}, "Together they lose most on the approach: 1.5 strokes over target for 18 holes, and one of two loses most there.", "6 rounds of 2 pupils, 1 Aug to 31 Aug 2026.",
			[]SquadGroup{{"Approach", "Bea"}, {"Putting", "Ruth"}}, 2},
		"the worst of none": {[]squadRow{played3(1, "Bea", 3, 2.5, 0, 0), played3(2, "Dev", 0, 2.5, 3, 0)}, "Together they lose most on the approach: 2.5 strokes over target for 18 holes, though it is the worst part of none of them.", "6 rounds of 2 pupils, 1 Aug to 31 Aug 2026.",
			[]SquadGroup{{"Tee", "Bea"}, {"Short game", "Dev"}}, 2},
		"one who loses nothing":  {[]squadRow{good}, "Gwen loses no strokes to the target in any part of the game.", "3 rounds of 1 pupil, 1 Aug to 31 Aug 2026.", nil, 1},
		"two who lose nothing":   {[]squadRow{good, good}, "Together they lose no strokes to their targets in any part of the game.", "6 rounds of 2 pupils, 1 Aug to 31 Aug 2026.", nil, 2},
		"a loss printed as zero": {[]squadRow{played3(1, "Bea", .04, 0, 0, 0)}, "Bea loses no strokes to the target in any part of the game.", "3 rounds of 1 pupil, 1 Aug to 31 Aug 2026.", nil, 1},
	} {
		s := NewSquadPage(layout.Page{}, squadOf(c.members))
		if s.Lede != c.lede || s.At != c.at || s.Empty != (c.rows == 0) || s.Alone != (c.members == nil) || len(s.Table.Rows) != c.rows || len(s.Pupils) != len(c.members) {
			t.Errorf("%s: %q %q, %d rows, empty %v, alone %v", name, s.Lede, s.At, len(s.Table.Rows), s.Empty, s.Alone)
		}
		if diff := cmp.Diff(c.groups, s.Groups); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}

func TestSquadTable(t *testing.T) {
	bea, ruth := played3(1, "Bea", 0, 3, 1, -.6), played3(3, "Ruth", -1, 0, 0, 2)
	bea.Lost.Cells[golf.Approach].N, bea.Lost.Cells[golf.Approach].Interval = 3, stat.Interval{Low: -1, High: 5}
	ruth.Lost.Rounds = 1
	table := NewSquadPage(layout.Page{}, squadOf([]squadRow{bea, ruth})).Table
	var rows [][]string
	for _, r := range append(table.Rows, table.Foot...) {
		row := []string{r.Name, r.At}
		for _, c := range r.Cells {
			row = append(row, c.Head+" "+c.Figure+" "+c.Interval+" "+c.Behind)
		}
		rows = append(rows, row)
	}
	want := [][]string{
		{"Bea, target 79", "/players/1/lessons", "Tee 0.0  3 rounds from 11 Aug 2026", "Approach +3.0 −1.0 to +5.0 ", "Short game +1.0  ", "Putting −0.6  ", "All +3.4  "},
		{"Ruth, target 79", "/players/3/lessons", "Tee −1.0  1 round from 11 Aug 2026", "Approach 0.0  ", "Short game 0.0  ", "Putting +2.0  ", "All +1.0  "},
		{"Together", "", "Tee −0.5  ", "Approach +1.5  ", "Short game +0.5  ", "Putting +0.7  ", "All +2.2  "},
	}
	if diff := cmp.Diff(want, rows); diff != "" {
		t.Error(diff)
	}
	if table.Caption != "Strokes lost for 18 holes against a golfer at each pupil’s target, with a 95% interval; every column on the same scale" || !table.Foot[0].Cells[0].Bar.Empty {
		t.Errorf("%q", table.Caption)
	}
}

func TestDaysOfTheSquad(t *testing.T) {
	in := squadOf([]squadRow{played3(1, "Bea", 0, 0, 0, 0)})
	if fine := NewSquadPage(layout.Page{}, in); fine.Open || fine.Wrong.Heading != "" {
		t.Errorf("%+v", fine.Wrong)
	}
	in.Days.To.Problem = "The last day is before the first."
	s := NewSquadPage(layout.Page{}, in)
	if !s.Open || s.Wrong.Heading != "These dates cannot be used." || s.To.Problem != "The last day is before the first." || s.From.Value != "2026-08-01" || s.To.Value != "2026-08-31" || !s.Pupils[0].Chosen {
		t.Errorf("%+v", s)
	}
}

// Without days it is the latest rounds of each pupil, as on the roster.
func TestSquadOfTheLatestRounds(t *testing.T) {
	in := squadOf([]squadRow{played3(1, "Bea", 0, 3, 1, 0)})
	for want, days := range map[string][2]golf.Date{
		"3 rounds of 1 pupil, the last ten or fewer of each.": {}, "3 rounds of 1 pupil, up to 31 Aug 2026.": {{}, today}, "3 rounds of 1 pupil, from 31 Aug 2026 on.": {today, {}}, "3 rounds of 1 pupil, 31 Aug 2026.": {today, today},
	} {
		in.Days = form.Days{From: form.DayOf(days[0]), To: form.DayOf(days[1])}
		if s := NewSquadPage(layout.Page{}, in); s.At != want {
			t.Errorf("%q, want %q", s.At, want)
		}
	}
}
