package practice

import (
	"strings"
	"testing"

	"strokeledger/analysis"
	"strokeledger/analysis/practice"
	"strokeledger/web/form"
	"strokeledger/web/layout"
)

// Every drill has a drawing with its words, and a sheet whose lines can be told apart.
func TestSheetsOfDrills(t *testing.T) {
	engine := analysis.NewEngine()
	for _, d := range practice.Drills() {
		drill, err := engine.Drill(d.Key, analysis.DrillInput{PlanInput: analysis.PlanInput{Target: 79}})
		if err != nil {
			t.Fatal(err)
		}
		p := NewDrillPage(layout.Page{}, DrillInput{Whose: own, Name: "Bea", Target: 79, Units: form.StandardUnits, DrillFor: drill})
		if p.Drawing == nil || !strings.HasPrefix(p.Drawing.Label, "From above:") || len(p.Drawing.Shapes) < 4 {
			t.Errorf("%s: %+v", d.Key, p.Drawing)
		}
		seen := map[string]bool{}
		for _, row := range p.Boxes.Rows {
			if seen[row.Name] || row.Name == "" {
				t.Errorf("%s: two lines for %q", d.Key, row.Name)
			}
			seen[row.Name] = true
		}
		if last := p.Boxes.Rows[len(p.Boxes.Rows)-1]; last.Mark == "" || d.NoMark != (last.Mark == "in words") {
			t.Errorf("%s: %+v", d.Key, last)
		}
	}
	if setUp(practice.Drill{Key: "of a coach"}) != nil {
		t.Error("a drill of the coach's own is drawn")
	}
}

// What a drawing says of a drill is what the drill says.
func TestDrawingsSayWhatTheDrillSays(t *testing.T) {
	for key, says := range map[string]string{
		"lag": "30, 40 and 50 ft", "wedge-ladder": "40, 60 and 80 yd", "approach": "120 and 150 yd", "chip-rough": "10, 15 and 20 yd", "round-the-hole": "eight tees", "start-line": "4 ft",
	} {
		d, err := practice.Find(key)
		if err != nil {
			t.Fatal(err)
		}
		if label := setUp(d).Label; !strings.Contains(label, says) {
			t.Errorf("%s: %q is not in %q", key, says, label)
		}
	}
	moved, err := practice.Find("start-line")
	if err != nil {
		t.Fatal(err)
	}
	if moved, err = moved.At(7.5); err != nil || !strings.Contains(setUp(moved).Label, "7.5 ft of straight putt") {
		t.Errorf("%v", err)
	}
}

// A plan has a line for each of its drills, once.
func TestSheetOfThePlan(t *testing.T) {
	p := NewPlanPage(layout.Page{}, planOf(t, own, 12, putts(t, practice.Clear), putts(t, practice.Usual), analysis.PlanCandidate{Candidate: practice.Candidate{Kind: practice.ShortMisses, Drill: practice.Drill{Key: "x", Name: "X"}}}))
	if rows := p.Boxes.Rows; len(rows) != 2 || rows[0] != (PencilRow{"Start line", "22 of 30"}) || rows[1].Mark != "in words" {
		t.Errorf("%+v", rows)
	}
}
