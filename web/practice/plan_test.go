package practice

import (
	"strings"
	"testing"

	"strokeledger/analysis"
	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/practice"
	"strokeledger/analysis/stat"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

var (
	today = golf.Date{Year: 2026, Month: 11, Day: 26}
	own   = paths.Whose{Player: 7, Own: true}
	pupil = paths.Whose{Player: 7}
)

// putts is a part that costs 1.1 strokes, with the drill of short putts.
func putts(t *testing.T, sure practice.Certainty) analysis.PlanCandidate {
	t.Helper()
	d, err := practice.Find("start-line")
	if err != nil {
		t.Fatal(err)
	}
	return analysis.PlanCandidate{Candidate: practice.Candidate{Part: golf.Putting, Band: account.BandOf(golf.Green, 5*golf.Foot, 4, golf.StandardBoundary), WinBack: 1.1,
		Interval: stat.Interval{Low: .4, High: 1.9}, Sure: sure, Drill: d, Mark: practice.Mark{Tries: 30, Pass: 22, Target: .62, Today: .35, Sessions: 1, Tells: true}, Today: 85, Minutes: 120, Again: 14},
		Dearest: []analysis.DearShot{{Round: 3, Day: golf.Date{Year: 2026, Month: 10, Day: 4}, Hole: 2, Shot: 4, Lost: .9}, {Round: 4, Day: golf.Date{Year: 2025, Month: 10, Day: 4}, Hole: 8, Shot: 5, Lost: .8}}}
}

func planOf(t *testing.T, whose paths.Whose, rounds int, all ...analysis.PlanCandidate) PlanInput {
	t.Helper()
	in := PlanInput{Whose: whose, Name: "Bea", Target: 79, Minutes: 180, Units: form.StandardUnits, Today: today,
		Plan: analysis.Plan{First: golf.Date{Year: 2026, Month: 8, Day: 9}, Last: golf.Date{Year: 2026, Month: 11, Day: 8}, Candidates: all, Thin: golf.Enough(golf.ThinPlan, rounds, practice.MinRounds)}}
	in.Game = practice.Game{Rounds: rounds, Target: 79, Level: 83.3}
	in.Game.Parts[golf.Putting] = practice.Estimate{Mean: 1.1, SD: .4, Usual: .3}
	return in
}

func TestPlanPage(t *testing.T) {
	cross := analysis.PlanCandidate{Candidate: practice.Candidate{Kind: practice.ShortMisses, WinBack: .6, Interval: stat.Interval{Low: .2, High: 1}, Drill: practice.Drill{Key: "x", Name: "X"}, Minutes: 60}}
	for _, c := range []struct {
		name             string
		in               PlanInput
		lede, place, few string
		rows             int
	}{
		{"empty", planOf(t, own, 0), "Enter a round shot by shot, and this page says what to practise.", "", "", 0},
		{"a coach's view, empty", planOf(t, pupil, 0), "Bea has not shared a round with its shots yet.", "", "", 0},
		{"one", planOf(t, own, 12, putts(t, practice.Clear)), "Putting, above all 3 to 6 ft, is worth most: about 1.1 strokes to win back. It is clearly weaker than the rest of your game.", "Twelve rounds, 9 Aug 2026 to 8 Nov 2026. 4.3 strokes over 79 for 18 holes.", "", 1},
		{"leaning, of a pupil", planOf(t, pupil, 12, putts(t, practice.Leaning), cross), "Putting, above all 3 to 6 ft, is worth most: about 1.1 strokes to win back. It is probably weaker than the rest of the game of Bea.", "Twelve rounds, 9 Aug 2026 to 8 Nov 2026. 4.3 strokes over 79 for 18 holes.", "", 2},
		{"another part leans", planOf(t, own, 12, putts(t, practice.Usual), analysis.PlanCandidate{Candidate: practice.Candidate{Part: golf.ShortGame, Sure: practice.Leaning, Drill: practice.Drill{Key: "x", Name: "X"}}}),
			"Putting, above all 3 to 6 ft, is worth most: about 1.1 strokes to win back. Of the parts, the short game is probably weaker than the rest of your game.", "Twelve rounds, 9 Aug 2026 to 8 Nov 2026. 4.3 strokes over 79 for 18 holes.", "", 2},
		{"thin data", planOf(t, own, 3, putts(t, practice.Usual)), "Putting, above all 3 to 6 ft, is worth most: about 1.1 strokes to win back. No part stands out: each is as large as for any golfer with your score.",
			"Three rounds, 9 Aug 2026 to 8 Nov 2026. 4.3 strokes over 79 for 18 holes.", "Two more rounds until a plan says much. Until then: play, note the distances, and do a drill as a test.", 1},
		{"what cuts across first", planOf(t, own, 12, cross, putts(t, practice.Usual)), "Six feet and in, on a double is worth most: about 0.6 strokes to win back. No part stands out: each is as large as for any golfer with your score.", "Twelve rounds, 9 Aug 2026 to 8 Nov 2026. 4.3 strokes over 79 for 18 holes.", "", 2},
	} {
		p := NewPlanPage(layout.Page{}, c.in)
		if p.Lede != c.lede || p.Place != c.place || p.Few != c.few || len(p.Candidates) != c.rows || len(p.Cautions) == 0 {
			t.Errorf("%s: %q, %q, %q, %d rows", c.name, p.Lede, p.Place, p.Few, len(p.Candidates))
		}
	}
}

func TestCandidateRow(t *testing.T) {
	r := NewPlanPage(layout.Page{}, planOf(t, own, 12, putts(t, practice.Clear))).Candidates[0]
	if r.Place != 1 || r.Name != "Putting" || r.Band != "3 to 6 ft" || r.Strokes != "+1.1" || r.Between != "+0.4 to +1.9" || r.Sure != "clear" || r.Minutes != "120" {
		t.Errorf("%+v", r)
	}
	if r.Why != "You lose 1.1 here for 18 holes; a golfer with your score usually loses 0.3." || r.Mark != "22 of 30" || r.Chances != "A 79 passes it 62 times in 100, you today 35." ||
		r.Again != "After 14 more rounds there is an even chance that Months shows the gain as leaning or clear." {
		t.Errorf("%q, %q, %q, %q", r.Why, r.Mark, r.Chances, r.Again)
	}
	if len(r.Dearest) != 2 || r.Dearest[0].Name != "4 Oct, hole 2" || r.Dearest[1].Name != "4 Oct 2025, hole 8" || !strings.HasPrefix(r.Dearest[0].At, "/rounds/3#") || r.Drill.At != "/players/7/drills/start-line" {
		t.Errorf("%+v, %+v", r.Dearest, r.Drill)
	}
	c := putts(t, practice.Usual)
	c.Again, c.Mark.Tells, c.Mark.Tries, c.Mark.Sessions, c.Today = 0, false, 90, 2, 77
	r = NewPlanPage(layout.Page{}, planOf(t, pupil, 12, c)).Candidates[0]
	if r.Again != "Rounds alone will not show the gain; the drill will." || r.Mark != "22 of 90 over two sessions" || r.Chances != "A 79 passes it 62 times in 100. One session cannot tell the two apart." || !strings.HasPrefix(r.Why, "Bea loses 1.1 here") {
		t.Errorf("%+v", r)
	}
}

// The short side says how much of it the player's book judged, by name to a coach.
func TestTheShortSideOfAPlanSaysByWhat(t *testing.T) {
	short := analysis.PlanCandidate{Candidate: practice.Candidate{Kind: practice.ShortSide, WinBack: .6, Drill: practice.Drill{Key: "x", Name: "X"}}}
	for _, c := range []struct {
		whose       paths.Whose
		book, times int
		want        string
	}{
		{own, 0, 7, "What too little green added to chips: aim at the side with room."},
		{own, 7, 7, "What too little green added to chips, judged by your run-out book: aim at the side with room."},
		{own, 3, 7, "What too little green added to chips, three of seven judged by your run-out book: aim at the side with room."},
		{pupil, 3, 7, "What too little green added to chips, three of seven judged by Bea’s run-out book: aim at the side with room."},
	} {
		in := planOf(t, c.whose, 12, short)
		in.Game.Cross[practice.ShortSide] = practice.Cross{Mean: .6, Times: c.times, Book: c.book}
		if got := NewPlanPage(layout.Page{}, in).Candidates[0].Why; got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

func TestDrillPage(t *testing.T) {
	engine := analysis.NewEngine()
	for _, d := range practice.Drills() {
		f, err := engine.Drill(d.Key, analysis.DrillInput{PlanInput: analysis.PlanInput{Target: 79, Minutes: 180}})
		if err != nil {
			t.Fatal(err)
		}
		in := DrillInput{Whose: own, Name: "Bea", Target: 79, Units: form.StandardUnits, DrillFor: f}
		p := NewDrillPage(layout.Page{}, in)
		if p.Name != d.Name || p.Today != "" || (p.Chances == "") != d.NoMark || (len(p.Stations) == 0) != d.NoMark || (len(p.Cautions) > 0) != d.Swing || len(p.Others) != len(practice.Drills())-1 {
			t.Errorf("%s: %+v", d.Key, p)
		}
		if !d.NoMark && (!strings.HasPrefix(p.Lede, "Pass mark: ") || strings.Contains(p.Chances, "you today")) {
			t.Errorf("%s: %q, %q", d.Key, p.Lede, p.Chances)
		}
	}
	f, err := engine.Drill("ladder", analysis.DrillInput{PlanInput: analysis.PlanInput{Target: 79, Minutes: 180}})
	if err != nil {
		t.Fatal(err)
	}
	f.Known, f.Today = true, 90
	p := NewDrillPage(layout.Page{}, DrillInput{Whose: pupil, Name: "Bea", Target: 79, Units: form.StandardUnits, DrillFor: f})
	if p.Today != "Bea today" || len(p.Stations) != 8 || p.Stations[0].From != "3 ft" || p.Stations[0].Today == "" || !strings.Contains(p.Chances, "Bea today") {
		t.Errorf("%+v", p)
	}
	if _, err := engine.Drill("moon", analysis.DrillInput{PlanInput: analysis.PlanInput{Target: 79}}); err != analysis.ErrNoDrill {
		t.Errorf("%v", err)
	}
}
