package coach

import (
	"fmt"
	"strings"
	"testing"

	"strokeledger/analysis"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/practice"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// sharing is a coach's pupils, none of whom is chosen, with who loses more than usual
// in some rows.
func sharing(pupils int, rows map[string][]int) SquadInput {
	in := SquadInput{At: paths.SquadChosen(nil), Units: form.StandardUnits, Today: today, Groups: []string{"Juniors"}}
	for i := range pupils {
		in.Members = append(in.Members, SquadMember{ID: golf.PlayerID(i + 1), Name: fmt.Sprintf("Pupil %d", i+1), Target: 79})
	}
	in.Shared.Told = pupils
	for _, r := range compare.Rows(golf.StandardBoundary) {
		if who := rows[r.String()]; who != nil {
			row := analysis.SharedRow{Row: r}
			for k, i := range who {
				row.Who = append(row.Who, analysis.Unusual{Player: i, Estimate: practice.Estimate{Mean: 1.5, SD: .2 + .2*float64(k), Usual: 1.04}})
			}
			in.Shared.Rows = append(in.Shared.Rows, row)
		}
	}
	return in
}

// Nobody is ticked at first; a group, everybody, and those who share something are a
// tap each.
func TestAGroupLessonIsChosen(t *testing.T) {
	s := NewSquadPage(layout.Page{}, sharing(61, map[string][]int{"putting": {3, 9}, "putting 3-6": {3, 9, 20}, "tee par 4": {7}}))
	for _, p := range s.Pupils {
		if p.Chosen {
			t.Errorf("%s is ticked", p.Name)
		}
	}
	if !s.Open || s.Sheet+s.File != "" || s.Lede != "Most shared: putting, 3 to 6 ft, where three of 61 pupils lose more than is usual for their scores." {
		t.Errorf("%q, open %v", s.Lede, s.Open)
	}
	if len(s.Teams) != 2 || s.Teams[0].At != "/coaching/squad?group=Juniors" || s.Teams[1].At != "/coaching/squad?who=all" {
		t.Errorf("%+v", s.Teams)
	}
	if len(s.Share.Rows) != 2 || len(s.Share.Alone) != 1 || s.Share.Rest != "1 line with one pupil" || s.Share.Alone[0].Do != "Choose this one" {
		t.Fatalf("%+v", s.Share)
	}
	band := s.Share.Rows[1]
	if band.Name != "Putting, 3 to 6 ft" || band.Count != "3 pupils" || band.At != "/coaching/squad?pupil=4&pupil=10&pupil=21&row=putting+3-6" || band.Do != "Choose these three" || band.Whole {
		t.Errorf("%+v", band)
	}
	if all := s.Share.Rows[0]; all.Name != "Putting, all of it" || !all.Whole {
		t.Errorf("%+v", all)
	}
	if first, third := band.Who[0], band.Who[2]; first != (ShareName{"Pupil 4", "+0.5", true}) || third.Clear {
		t.Errorf("%+v, %+v", first, third)
	}
}

func TestNothingIsShared(t *testing.T) {
	few, none, chosen := sharing(3, nil), sharing(3, nil), sharing(3, nil)
	few.Shared.Told, chosen.Members[0].Chosen = 0, true
	for want, in := range map[string]SquadInput{
		"It takes five rounds of a pupil to say what is unusual.": few, "No two pupils lose more than is usual for their scores in the same place.": none,
		"None of them loses more than is usual for the score anywhere, beyond luck.": chosen,
	} {
		if got := newShareList(in).None; got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// The sheet has a line for everybody at each drill, and says who is missing.
func TestSheetOfALesson(t *testing.T) {
	in := sharing(4, nil)
	if s := NewSquadSheet(layout.Page{}, in); s.Lede != "It takes five rounds of a pupil to say what to practise." || s.Left != "" {
		t.Errorf("%q %q", s.Lede, s.Left)
	}
	for i := range in.Members {
		in.Members[i].Chosen = i < 3
	}
	shared := sharing(4, map[string][]int{"putting 3-6": {0, 1}, "short game": {1}}).Shared.Rows
	drill, err := practice.Find("start-line")
	if err != nil {
		t.Fatal(err)
	}
	in.Lesson = []analysis.LessonDrill{{SharedRow: shared[1], Drill: drill, Marks: []practice.Mark{{Tries: 20, Pass: 11}, {}}, Named: true}, {SharedRow: shared[0], Drill: drill, Marks: make([]practice.Mark, 1), Named: true}}
	s := NewSquadSheet(layout.Page{}, in)
	if s.At != "3 pupils, Monday 31 August 2026." || s.Left != "Without a line, for want of five rounds: Pupil 3." || s.Lede != "Two places where they lose more than is usual for their scores." {
		t.Errorf("%q, %q, %q", s.At, s.Left, s.Lede)
	}
	if len(s.Drills) != 2 || s.Drills[0].Where != "Putting, 3 to 6 ft" || s.Drills[0].Rows[0] != (SheetRow{"Pupil 1", "+1.5", "+1.0", true, "11 of 20"}) || s.Drills[0].Rows[1].Mark != "" || !strings.HasPrefix(s.Drills[0].Counts, "A try counts when ") {
		t.Errorf("%+v", s.Drills)
	}
	in.Lesson, in.Row = in.Lesson[:1], "putting 3-6"
	if s := NewSquadSheet(layout.Page{}, in); s.Lede != "Putting, 3 to 6 ft." || len(s.Rows) != 1 {
		t.Errorf("%q, %+v", s.Lede, s.Rows)
	}
	in.Lesson[0].Named, in.Row = false, ""
	if s := NewSquadSheet(layout.Page{}, in); s.Lede != "None of them has anything unusual, beyond luck. They lose most beyond the usual here: putting, 3 to 6 ft." {
		t.Errorf("%q", s.Lede)
	}
}
