package practice

import (
	"strings"
	"testing"

	"strokeledger/analysis"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/practice"
	"strokeledger/analysis/stat"
	"strokeledger/web/form"
	"strokeledger/web/layout"
)

// What is said of both goes by the words of the changes, and a side without one is
// not said to be as before.
func TestWhetherADrillCarriesOver(t *testing.T) {
	better, worse := compare.Change{Known: true, Mean: .2, Word: compare.Clear}, compare.Change{Known: true, Mean: -.2, Word: compare.Leaning}
	chance, none := compare.Change{Known: true, Mean: .2, Word: compare.Chance}, compare.Change{Known: true, Mean: .2}
	for _, c := range []struct {
		drill, course compare.Change // of the course, fewer strokes are better
		want          string
	}{
		{better, worse, "Both are better: the drill, and play on the course."},
		{worse, better, "Both are worse: the drill, and play on the course."},
		{better, chance, "The drill is better; the course does not show it yet."},
		{better, none, "The drill is better; for the course it is too early to say."},
		{better, better, "The drill is better; play on the course is worse."},
		{chance, worse, "The drill shows no clear change; play on the course is better."},
		{worse, chance, "The drill is worse; the course shows no clear change."},
		{chance, chance, "No clear change yet, in the drill or on the course."},
		{none, none, "It is too early to say."},
		{none, compare.Change{}, "It is too early to say."},
		{none, chance, "For the drill it is too early to say; the course shows no clear change."},
	} {
		if got := carrySay(&analysis.Carry{Drill: c.drill, Course: c.course}); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// besides is a drill of putts beside the course over two months.
func besides(t *testing.T, feet ...float64) DrillInput {
	t.Helper()
	d, err := practice.Find("start-line")
	if err != nil {
		t.Fatal(err)
	}
	c := analysis.Carry{Enough: true, Part: golf.Putting, From: golf.Date{Year: 2026, Month: 10, Day: 1}, Until: golf.Date{Year: 2026, Month: 10, Day: 20}}
	for i, f := range feet {
		s := analysis.SessionResult{DrillSession: analysis.DrillSession{Day: golf.Date{Year: 2026, Month: 10, Day: 13 + 7*i}, Feet: f, Counted: []int{9 + i}, Tried: []int{20}}, Read: practice.Result{Level: 88, Interval: stat.Interval{Low: 70, High: 105}}}
		c.Sessions = append(c.Sessions, analysis.CarrySession{SessionResult: s, Share: compare.ShareOf(9+i, 20)})
	}
	level := compare.PlaysTo{Level: compare.Level{Value: 92.2}, Low: compare.Level{Value: 85}, High: compare.Level{Value: 110, Past: compare.Worse}, Rounds: 6}
	c.Months = []analysis.CarryMonth{{Span: golf.Month(2026, 10), Counted: 19, Of: 40, Rounds: 6, PlaysTo: level}, {Span: golf.Month(2026, 11), Rounds: 2}}
	cell := func(mean float64) compare.Cell {
		return compare.Cell{Figure: compare.Figure{Sample: stat.Sample{N: 2, Mean: mean}, Known: true}, Interval: stat.Interval{Low: mean - .1, High: mean + .1}}
	}
	c.Halves = [2]analysis.CarryHalf{{Sessions: 2, Share: cell(.43), Rounds: 6, PlaysTo: level}, {Sessions: 2, Share: cell(.54), Rounds: 5, PlaysTo: level}}
	c.Drill = compare.Change{Known: true, Mean: .11, Thin: golf.Enough(golf.ThinChange, 2, 3)}
	c.Course = compare.Change{Known: true, Mean: -.42, Word: compare.Chance}
	return DrillInput{Whose: own, Name: "Bea", Target: 79, Units: form.StandardUnits, Day: today, Carry: c, DrillFor: analysis.DrillFor{Drill: d, Feet: 6, Target: 79, Of: .55}}
}

// Both changes stand with their intervals; what is not known of a month stays empty.
func TestADrillBesideTheCourse(t *testing.T) {
	p := NewDrillPage(layout.Page{}, besides(t, 6, 6, 6, 6)).Carry
	if p == nil {
		t.Fatal("nothing stands beside the course")
	}
	for i, want := range []string{"Drill: holed 43 (33 to 53) of 100 in the first two sessions, up to 20 Oct 2026, and 54 (44 to 64) in the two since. It takes three sessions in each to say how sure that is.",
		"Course, putting: 0.4 fewer strokes lost for 18 holes in five rounds since 20 Oct 2026 than in six rounds up to it; it played to 92 (85 to above 110), and now to 92 (85 to above 110): could be chance.",
		"That both move together does not prove that one caused the other."} {
		if p.Lines[i] != want {
			t.Errorf("%q, want %q", p.Lines[i], want)
		}
	}
	if m := p.Months; len(m) != 2 || m[0] != (CarryMonthRow{"Oct 2026", "48", "33 to 63", "40", "92", "85 to above 110", "6"}) || m[1] != (CarryMonthRow{Month: "Nov 2026", Tries: "0", Rounds: "2"}) {
		t.Errorf("%+v", m)
	}
	if s := p.Sessions; len(s) != 4 || s[0].Day != "3 Nov 2026" || s[0].Share != "60" || s[0].Level != "" || s[0].From != "6 ft" {
		t.Errorf("%+v", s)
	}
	if !strings.HasSuffix(p.Drill.Picture.Label, "A 79 reaches 55.") || !strings.Contains(p.Course.Picture.Label, "Oct 2026 92, 85 to above 110") {
		t.Errorf("%q, %q", p.Drill.Picture.Label, p.Course.Picture.Label)
	}
}

// From different distances shares do not compare, and the page says by what it goes.
func TestADrillFromSeveralDistances(t *testing.T) {
	in := besides(t, 4, 6, 6, 6)
	in.Carry.Course = compare.Change{}
	in.Carry.Halves[1].Rounds = 0
	p := newCarry(in)
	if len(p.Lines) != 4 || !strings.HasPrefix(p.Lines[2], "Not all sessions") || strings.Contains(p.Drill.Picture.Label, "79") || p.Compare != "" || p.Lines[1] != "Course: six rounds up to 20 Oct 2026 and no rounds since. It takes rounds on both sides to compare." {
		t.Errorf("%+v", p)
	}
	in.Carry = analysis.Carry{}
	if newCarry(in) != nil {
		t.Error("too few sessions stand beside the course")
	}
}
