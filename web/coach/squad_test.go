package coach

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
	"strokeledger/web/layout"
)

// member is a pupil who lost so much for 18 holes in each part of the game, over
// three rounds.
func member(id golf.PlayerID, name string, lost ...float64) SquadMember {
	m := SquadMember{ID: id, Name: name, Target: 79, Chosen: true, Lost: compare.PartsLost{Rounds: 3}}
	sum := 0.0
	for i, c := range golf.Categories {
		m.Lost.Cells[c].Known, m.Lost.Cells[c].Mean = true, lost[i]
		sum += lost[i]
	}
	m.Lost.Cells[0].Known, m.Lost.Cells[0].Mean = true, sum
	return m
}

func TestSquadPage(t *testing.T) {
	bea, dev, ruth := member(1, "Bea", 0, 3, 1, 0), member(2, "Dev", 2, 3, 0, 0), member(3, "Ruth", 0, 0, 0, 2)
	good := member(4, "Gwen", -1, -2, 0, -.5)
	away, absent := member(5, "Abel", 0, 9, 0, 0), SquadMember{ID: 6, Name: "Cora", Chosen: true}
	away.Chosen = false
	for name, c := range map[string]struct {
		members  []SquadMember
		lede, at string
		groups   []SquadGroup
		rows     int
	}{
		"no pupil":     {nil, "No pupils yet. A player gives you access by sending you a link.", "", nil, 0},
		"none chosen":  {[]SquadMember{away}, "None of the chosen pupils played on these days.", "", nil, 0},
		"none played":  {[]SquadMember{absent}, "None of the chosen pupils played on these days.", "", nil, 0},
		"one":          {[]SquadMember{bea, away, absent}, "Bea loses most on the approach: 3 strokes over target for 18 holes.", "3 rounds of 1 pupil, 1 Aug 2026 to 31 Aug 2026.", []SquadGroup{{"Approach", "Bea"}}, 1},
		"all the same": {[]SquadMember{bea, dev}, "Together they lose most on the approach: 3 strokes over target for 18 holes, and all of them lose most there.", "6 rounds of 2 pupils, 1 Aug 2026 to 31 Aug 2026.", []SquadGroup{{"Approach", "Bea, Dev"}}, 2},
		"some": {[]SquadMember{bea, dev, ruth}, "Together they lose most on the approach: 2 strokes over target for 18 holes, and two of three lose most there.", "9 rounds of 3 pupils, 1 Aug 2026 to 31 Aug 2026.",
			[]SquadGroup{{"Approach", "Bea, Dev"}, {"Putting", "Ruth"}}, 3},
		"one of two": {[]SquadMember{bea, ruth}, "Together they lose most on the approach: 1.5 strokes over target for 18 holes, and one of two loses most there.", "6 rounds of 2 pupils, 1 Aug 2026 to 31 Aug 2026.",
			[]SquadGroup{{"Approach", "Bea"}, {"Putting", "Ruth"}}, 2},
		"the worst of none": {[]SquadMember{member(1, "Bea", 3, 2.5, 0, 0), member(2, "Dev", 0, 2.5, 3, 0)}, "Together they lose most on the approach: 2.5 strokes over target for 18 holes, though it is the worst part of none of them.", "6 rounds of 2 pupils, 1 Aug 2026 to 31 Aug 2026.",
			[]SquadGroup{{"Tee", "Bea"}, {"Short game", "Dev"}}, 2},
		"one who loses nothing":  {[]SquadMember{good}, "Gwen loses no strokes to the target in any part of the game.", "3 rounds of 1 pupil, 1 Aug 2026 to 31 Aug 2026.", nil, 1},
		"two who lose nothing":   {[]SquadMember{good, good}, "Together they lose no strokes to their targets in any part of the game.", "6 rounds of 2 pupils, 1 Aug 2026 to 31 Aug 2026.", nil, 2},
		"a loss printed as zero": {[]SquadMember{member(1, "Bea", .04, 0, 0, 0)}, "Bea loses no strokes to the target in any part of the game.", "3 rounds of 1 pupil, 1 Aug 2026 to 31 Aug 2026.", nil, 1},
	} {
		s := NewSquadPage(layout.Page{}, SquadInput{From: today.AddDays(-30), To: today, Members: c.members})
		if s.Lede != c.lede || s.At != c.at || s.Empty != (c.rows == 0) || s.Alone != (c.members == nil) || len(s.Table.Rows) != c.rows || len(s.Pupils) != len(c.members) {
			t.Errorf("%s: %q %q, %d rows, empty %v, alone %v", name, s.Lede, s.At, len(s.Table.Rows), s.Empty, s.Alone)
		}
		if diff := cmp.Diff(c.groups, s.Groups); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}

func TestSquadTable(t *testing.T) {
	bea, ruth := member(1, "Bea", 0, 3, 1, -.6), member(3, "Ruth", -1, 0, 0, 2)
	bea.Lost.Cells[golf.Approach].HasInterval, bea.Lost.Cells[golf.Approach].Interval = true, stat.Interval{Low: -1, High: 5}
	ruth.Lost.Rounds = 1
	table := NewSquadPage(layout.Page{}, SquadInput{From: today, To: today, Members: []SquadMember{bea, ruth}}).Table
	var rows [][]string
	for _, r := range append(table.Rows, table.Foot...) {
		row := []string{r.Name, r.At}
		for _, c := range r.Cells {
			row = append(row, c.Head+" "+c.Figure+" "+c.Interval+" "+c.Behind)
		}
		rows = append(rows, row)
	}
	want := [][]string{
		{"Bea, target 79", "/players/1/lessons", "Tee 0.0  3 rounds", "Approach +3.0 −1.0 to +5.0 ", "Short game +1.0  ", "Putting −0.6  ", "All +3.4  "},
		{"Ruth, target 79", "/players/3/lessons", "Tee −1.0  1 round", "Approach 0.0  ", "Short game 0.0  ", "Putting +2.0  ", "All +1.0  "},
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
	s := NewSquadPage(layout.Page{}, SquadInput{From: today, To: today.AddDays(-1), Problems: map[string]string{"to": "The last day is before the first."}, Members: []SquadMember{member(1, "Bea", 0, 0, 0, 0)}})
	if !s.Open || s.Wrong.Heading != "These dates cannot be used." || s.To.Problem != "The last day is before the first." || s.From.Value != "2026-08-31" || s.To.Value != "2026-08-30" || !s.Pupils[0].Chosen {
		t.Errorf("%+v", s)
	}
	if fine := NewSquadPage(layout.Page{}, SquadInput{From: today, To: today, Members: []SquadMember{member(1, "Bea", 0, 0, 0, 0)}}); fine.Open || fine.Wrong.Heading != "" {
		t.Errorf("%+v", fine.Wrong)
	}
}
