package figures

import (
	"math"
	"reflect"
	"strings"
	"testing"
	"time"

	"strokeledger/analysis"
	"strokeledger/analysis/account"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
	"strokeledger/web/form"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

var may = golf.Date{Year: 2026, Month: time.May, Day: 2}

func TestShotRow(t *testing.T) {
	plain := func() ShotInput {
		return ShotInput{Units: form.StandardUnits, Number: 2, Hole: golf.Hole{Number: 6, Par: 4, Shots: []golf.Shot{{Lie: golf.Tee}, {Lie: golf.Rough, Distance: golf.Yards.Of(150), Club: "8i"}}},
			Worth: account.Hole{Shots: []account.Shot{{}, {Band: account.Band{Category: golf.Approach}, Expected: 3.1, After: 2, Lost: -.1}}}}
	}
	for _, c := range []struct {
		name   string
		change func(*ShotInput, *golf.Shot, *account.Shot)
		want   ShotRow
	}{
		{"plain", func(*ShotInput, *golf.Shot, *account.Shot) {}, ShotRow{From: "Rough 150 yd", After: "2.00", Lost: "−0.10"}},
		{"holed", func(in *ShotInput, _ *golf.Shot, worth *account.Shot) { worth.After, worth.Lost = 0, -2.1 }, ShotRow{From: "Rough 150 yd", After: "holed", Lost: "−2.10"}},
		{"not remembered well, in metres", func(in *ShotInput, shot *golf.Shot, worth *account.Shot) {
			shot.About, in.Units = true, form.Units{Far: golf.Metres, Green: golf.Metres}
		}, ShotRow{From: "About Rough 137 m", After: "2.00", Lost: "−0.10"}},
		{"short-sided, penalty", func(in *ShotInput, shot *golf.Shot, worth *account.Shot) {
			shot.ShortSided, shot.Penalty, worth.Lost = true, 1, .9
		}, ShotRow{From: "Rough 150 yd, short-sided, 1 penalty", After: "2.00", Lost: "+0.90"}},
		{"green known", func(in *ShotInput, shot *golf.Shot, worth *account.Shot) {
			shot.GreenKnown, shot.GreenToWork = true, golf.Yards.Of(4)
		}, ShotRow{From: "Rough 150 yd, 4 yd of green", After: "2.00", Lost: "−0.10"}},
		{"error", func(in *ShotInput, _ *golf.Shot, worth *account.Shot) {
			worth.Error, worth.Lost, worth.After = true, .8, 2.9
		}, ShotRow{From: "Rough 150 yd", After: "2.90", Lost: "+0.80", Tag: "error"}},
		{"root", func(in *ShotInput, _ *golf.Shot, _ *account.Shot) {
			in.Double = account.Double{Root: 2, Chain: []int{2, 3}}
		}, ShotRow{From: "Rough 150 yd", After: "2.00", Lost: "−0.10", Tag: "began here", Root: true}},
		{"linked", func(in *ShotInput, _ *golf.Shot, _ *account.Shot) {
			in.Double = account.Double{Root: 1, Chain: []int{1, 2}}
		}, ShotRow{From: "Rough 150 yd", After: "2.00", Lost: "−0.10", Tag: "follow-up"}},
		{"costliest", func(in *ShotInput, _ *golf.Shot, worth *account.Shot) {
			in.Double, worth.Error = account.Double{Root: 1, Costliest: 2}, true
		}, ShotRow{From: "Rough 150 yd", After: "2.00", Lost: "−0.10", Tag: "costliest"}},
	} {
		in := plain()
		c.change(&in, &in.Hole.Shots[1], &in.Worth.Shots[1])
		c.want.ID, c.want.Number, c.want.Lie, c.want.Club, c.want.CountAs, c.want.Before = "h6-2", "2", "rough", "8i", "Approach", "3.10"
		w := WorkingOf(in.Worth.Shots[1])
		c.want.Working, c.want.lost = w.String(), w.Lost()
		if got := NewShotRow(in); got != c.want {
			t.Errorf("%s: %+v\nwant %+v", c.name, got, c.want)
		}
	}
}

// story is a six by errors that follow each other, judged against a level.
func story(t *testing.T, target float64) DoubleStory {
	lens, err := expect.Level(target)
	if err != nil {
		t.Fatal(err)
	}
	hole := golf.Hole{Number: 6, Par: 4, Shots: []golf.Shot{{Lie: golf.Tee, Distance: 417 * golf.Yard, Club: "driver", Miss: golf.Miss{Side: golf.Right}, Word: "pushed"},
		{Lie: golf.Recovery, Distance: 215 * golf.Yard}, {Lie: golf.Recovery, Distance: 195 * golf.Yard}, {Lie: golf.Fairway, Distance: 120 * golf.Yard}, {Lie: golf.Green, Distance: 30 * golf.Foot}, {Lie: golf.Green, Distance: 3 * golf.Foot}}}
	r := golf.Round{Holes: []golf.Hole{hole}}
	a := account.Of(r, account.Terms{Lens: lens, Fixed: lens, Boundary: golf.StandardBoundary})
	return NewDoubleStory(StoryInput{Round: r, Account: a, Target: target, Units: form.StandardUnits}, a.Doubles[0])
}

func TestDoubleStory(t *testing.T) {
	st := story(t, 84)
	if st.Heading != "Hole 6, par 4: six" || st.Kind != "compound: one error led to the next" || st.At != "#h6" || len(st.Steps) != 6 {
		t.Fatalf("%+v", st)
	}
	if s := st.Steps[0]; !s.Root || s.Tag != "began here" || !s.Linked || s.Did != "driver, right, pushed" || s.From != "Tee 417 yd" {
		t.Errorf("%+v", s)
	}
	if s := st.Steps[1]; s.Tag != "follow-up" || s.Root || s.Did != "" {
		t.Errorf("%+v", s)
	}
	if s := st.Steps[5]; s.Tag != "" || s.Error {
		t.Errorf("%+v", s)
	}
	if !strings.HasPrefix(st.Sum, "+") || st.Note != "The follow-up cost "+st.Steps[1].Cost+", judged by an 84 golfer." {
		t.Errorf("%q, %q, %+v", st.Sum, st.Note, st.Steps)
	}
}

// More than one follow-up is told as many.
func TestSeveralFollowUps(t *testing.T) {
	lens, err := expect.Level(84)
	if err != nil {
		t.Fatal(err)
	}
	r := golf.Round{Holes: []golf.Hole{{Number: 1, Par: 4, Shots: []golf.Shot{shot(golf.Tee, 400), shot(golf.Recovery, 200), shot(golf.Recovery, 190), shot(golf.Recovery, 180), shot(golf.Fairway, 60), shot(golf.Green, 10), shot(golf.Green, 1)}}}}
	a := account.Of(r, account.Terms{Lens: lens, Fixed: lens, Boundary: golf.StandardBoundary})
	if st := NewDoubleStory(StoryInput{Round: r, Account: a, Target: 84, Units: form.StandardUnits}, a.Doubles[0]); !strings.HasPrefix(st.Note, "The two follow-ups cost +") {
		t.Errorf("%q", st.Note)
	}
}

func TestRoundRow(t *testing.T) {
	whole := ListedRound{ID: 3, Card: 18, Target: 79.5, New: Entered, NewDay: may.AddDays(1), Round: golf.Round{Date: may, Course: "Harrow Fen", Tee: "white", Holes: make([]golf.Hole, 18)},
		Account: account.Account{Score: 84, Expected: 79.5, Lost: account.Split{Tee: 1, Approach: 3, ShortGame: -.5, Putting: 1, Total: 4.5}, Doubles: make([]account.Double, 2)}}
	begun, won, none := whole, whole, whole
	begun.Round.Holes = make([]golf.Hole, 17)
	won.Account.Score, won.Account.Lost = 77, account.Split{Tee: -1, Approach: -1, ShortGame: -.5, Total: -2.5}
	none.Round.Holes = nil
	row := RoundRow{At: "/rounds/3", Day: "2026-05-02", Date: "2 May", Year: "2026", Course: "Harrow Fen, white", New: "new, entered " + may.AddDays(1).Time().Format("2 Jan"), Score: "84", Over: "+4.5",
		Parts: "tee +1.0, approach +3.0, short game −0.5, putting +1.0", Doubles: "2", Worst: "approach +3.0", id: "3", whole: true}
	begunRow, wonRow := row, row
	begunRow.Open, begunRow.Holes, begunRow.whole = "1 hole to go", "target 79.5 for 17 holes", false
	wonRow.Score, wonRow.Over, wonRow.Parts, wonRow.Worst = "77", "−2.5", "tee −1.0, approach −1.0, short game −0.5, putting 0.0", "nothing"
	for _, c := range []struct {
		name  string
		round ListedRound
		want  RoundRow
	}{
		{"whole", whole, row}, {"one hole to go", begun, begunRow}, {"nothing lost", won, wonRow},
		{"not entered", none, RoundRow{At: "/rounds/3", Day: "2026-05-02", Date: "2 May", Year: "2026", Course: "Harrow Fen, white", New: "new, entered " + may.AddDays(1).Time().Format("2 Jan"), Score: "not entered", Open: "18 holes to go", id: "3"}},
	} {
		got := c.round.Row(paths.Whose{Player: 1, Own: true})
		if got.Bar.Known != (c.want.Over != "") {
			t.Errorf("%s: bar %+v", c.name, got.Bar)
		}
		if got.Bar = (SplitBar{}); !reflect.DeepEqual(got, c.want) {
			t.Errorf("%s: %+v\nwant %+v", c.name, got, c.want)
		}
	}
	if got := whole.Row(paths.Whose{Player: 7}).At; got != "/players/7/rounds/3" {
		t.Errorf("a coach is led to %s", got)
	}
}

func TestReach(t *testing.T) {
	p := compare.PlaysTo{Level: compare.Level{Value: 89}, Low: compare.Level{Value: 66}, High: compare.Level{Value: 112}}
	if got, want := NewReach(p, 89), (Reach{Known: true, X: "50%", X1: "0%", X2: "100%", HasTarget: true, Target: "50%"}); got != want {
		t.Errorf("%+v", got)
	}
	if got := NewReach(p, 0); got.HasTarget {
		t.Errorf("%+v", got)
	}
}

func TestChangeWords(t *testing.T) {
	for _, c := range []struct {
		change compare.Change
		want   ChangeWords
	}{
		{compare.Change{}, ChangeWords{}},
		{compare.Change{Known: true, Mean: 1.2}, ChangeWords{Figure: "+1.2"}},
		{compare.Change{Known: true, Mean: -2, Word: compare.Clear}, ChangeWords{"−2.0", "clear"}},
		{compare.Change{Known: true, Mean: .3, Word: compare.Leaning}, ChangeWords{"+0.3", "leaning"}},
		{compare.Change{Known: true, Word: compare.Chance}, ChangeWords{"0.0", ""}},
	} {
		if got := NewChangeWords(c.change, words.OneDecimal); got != c.want {
			t.Errorf("%+v, want %+v", got, c.want)
		}
	}
}

// One scale holds the bars of every column, and no more of a wide interval than
// leaves the bars to be seen.
func TestSpanScale(t *testing.T) {
	cell := func(mean, low, high float64) compare.Cell {
		return compare.Cell{Figure: compare.Figure{Sample: stat.Sample{N: 8, Mean: mean}, Known: true}, Interval: stat.Interval{Low: low, High: high}}
	}
	s := SpanScale(compare.Sheet{Columns: []compare.Column{{Cells: []compare.Cell{cell(50, 0, 99), cell(3, -40, 40)}}, {Cells: []compare.Cell{{}, cell(-1, -2, 0)}}}})
	if s.High < 3+WhiskerRoom || s.High > 20 || s.Low > -1-WhiskerRoom || math.IsInf(s.Low, 0) || len(s.Ticks()) > ColumnTicks {
		t.Errorf("%+v", s)
	}
}

func TestAgainst(t *testing.T) {
	for level, want := range map[float64]string{0: "a tour player", 79: "a 79 golfer", 84: "an 84 golfer", 79.5: "a 79.5 golfer"} {
		in := ComparisonInput{Months: analysis.Months{Level: level}}
		if got := Against(in); got != want {
			t.Errorf("%g: %q", level, got)
		}
		if foot := ComparisonFoot(in); !strings.HasPrefix(foot, "Fixed golfer: every round is compared with the same golfer, "+want+", so") {
			t.Errorf("%g: %q", level, foot)
		}
	}
}
