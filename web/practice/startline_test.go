package practice

import (
	"net/url"
	"strings"
	"testing"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/startline"
	"strokeledger/analysis/stat"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// lineOf is 222 putts from 6 ft that lean to the right, of a golfer who putts as an 85.
func lineOf(whose paths.Whose) StartLineInput {
	in := StartLineInput{Whose: whose, Name: "Bea", StartLine: analysis.StartLine{Feet: 6, Since: golf.Date{Year: 2026, Month: 10, Day: 2}, Target: 79, Level: 85, Known: true,
		Tries: analysis.PuttTries{Feet: 6, Of: 222, Made: 111, Sides: true, Left: 20, Right: 80, Short: 11},
		Read:  &startline.Reading{Spread: 1.44, Interval: stat.Interval{Low: 1.2, High: 1.6}, Level: 1.4, Window: 1.02, Bias: &startline.Bias{Mean: .4, Interval: stat.Interval{Low: .2, High: .6}}},
		Aim:   analysis.LineOf{Spread: 1.3, Holed: .55}, Tour: analysis.LineOf{Spread: .9, Holed: .7}, OtherFeet: []float64{4},
		Worth: &analysis.Worth{Strokes: .6, Interval: stat.Interval{Low: .2, High: 1}}}}
	in.Mark.Tries, in.Mark.Pass = 40, 22
	in.Weeks = []analysis.LineWeek{
		{Monday: golf.Date{Year: 2026, Month: 11, Day: 23}, Tries: analysis.PuttTries{Of: 40, Made: 24}, Judged: true, Passed: true},
		{Monday: golf.Date{Year: 2026, Month: 11, Day: 16}, Tries: analysis.PuttTries{Of: 40, Made: 18}, Judged: true}, {Monday: golf.Date{Year: 2026, Month: 11, Day: 9}, Tries: analysis.PuttTries{Of: 8, Made: 4}}}
	return in
}

func TestStartLinePage(t *testing.T) {
	p := NewStartLinePage(layout.Page{}, lineOf(own))
	for got, want := range map[string]string{
		p.Heading:                  "Start line, 6 ft",
		p.Place:                    "222 putts since 2 Oct 2026. There are fewer from 4 ft.",
		p.Lede:                     "Your putts of 6 ft start within 1.4° of straight two times in three; a 79’s start within 1.3°.",
		p.Lines[0]:                 "They start 0.4° to the right on average: clear.",
		p.Worth:                    "With a 79’s spread, and nothing else changed, you would win back about 0.6 strokes a round, between 0.2 and 1.",
		p.Weeks[0].Mark:            "reached",
		p.Weeks[1].Mark:            "not yet",
		p.Weeks[2].Mark:            "too few for a mark",
		p.Rows[0].Between:          "1.2 to 1.6",
		p.Rows[2].Of:               "A tour player",
		p.Curve.Label:              "Where putts of 6 ft start. Spread 1.4°, middle 0.4° right. The hole takes 1.0° to either side. A 79: spread 1.3°.",
		p.Ask.Fields[0].Value:      "6",
		p.Weeks[0].Width + " wide": "60% wide",
	} {
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	if !strings.HasPrefix(p.Lines[1], "The speed is taken to be that of an 85 golfer, today’s putting. The mark from there is ") {
		t.Errorf("%q", p.Lines[1])
	}
	if coach := NewStartLinePage(layout.Page{}, lineOf(pupil)); coach.Place != "Bea. 222 putts since 2 Oct 2026. There are fewer from 4 ft." || !strings.HasPrefix(coach.Lede, "Bea’s putts") || !strings.Contains(coach.Worth, "Bea would win back") {
		t.Errorf("%q, %q, %q", coach.Place, coach.Lede, coach.Worth)
	}
}

func TestWhatAStartLineIsWorth(t *testing.T) {
	for _, c := range []struct {
		strokes, low, high float64
		want               string
	}{
		{-.2, -.5, .1, "There is nothing to win back here: the spread is no wider than a 79’s."},
		{.04, -.2, .3, "There is nothing to win back here: the spread is no wider than a 79’s."},
		{.5, -.1, 1.2, "With a 79’s spread, and nothing else changed, you would win back about 0.5 strokes a round; with so few putts it may also be nothing, or 1.2."},
		{1, .4, 1.8, "With a 79’s spread, and nothing else changed, you would win back about 1 stroke a round, between 0.4 and 1.8."},
	} {
		in := lineOf(own)
		in.StartLine.Worth = &analysis.Worth{Strokes: c.strokes, Interval: stat.Interval{Low: c.low, High: c.high}}
		if got := in.worth(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
	in := lineOf(own)
	in.StartLine.Worth, in.Known, in.Read.Bias, in.OtherLonger = nil, false, nil, true
	p := NewStartLinePage(layout.Page{}, in)
	if p.Worth != "" || !strings.HasPrefix(p.Lines[0], "Whether they lean") || !strings.Contains(p.Lines[1], "an 85 golfer, the target.") || p.Earlier == "" || !strings.Contains(p.Curve.Label, "middle straight") {
		t.Errorf("%+v", p)
	}
	in.Read.Bias = &startline.Bias{Mean: -.4, Interval: stat.Interval{Low: -.6, High: -.2}}
	if p := NewStartLinePage(layout.Page{}, in); p.Lines[0] != "They start 0.4° to the left on average: clear." || !strings.Contains(p.Curve.Label, "0.4° left") {
		t.Errorf("%+v", p.Lines)
	}
}

func TestPuttsThatAreNotStored(t *testing.T) {
	ask := func(made, left string) form.Putts {
		return form.ParsePutts(url.Values{"feet": {"6"}, "tries": {"40"}, "made": {made}, "left": {left}, "right": {left}}, LeastPuttFeet, MostPuttFeet)
	}
	if got := TriesOf(ask("22", "4")); *got != (analysis.PuttTries{Feet: 6, Of: 40, Made: 22, Sides: true, Left: 4, Right: 4, Short: 10}) || got.Check() != nil {
		t.Errorf("%+v", got)
	}
	if got := TriesOf(ask("22", "")); *got != (analysis.PuttTries{Feet: 6, Of: 40, Made: 22}) {
		t.Errorf("%+v", got)
	}
	if TriesOf(ask("41", "")) != nil || TriesOf(form.Putts{}) != nil {
		t.Error("what is not allowed is read")
	}
	in := lineOf(own)
	in.Asked = ask("22", "4")
	if p := NewStartLinePage(layout.Page{}, in); p.Place != "Worked out from the figures below, which are not saved." {
		t.Errorf("%q", p.Place)
	}
	in.Asked, in.Tries, in.Read = ask("41", ""), analysis.PuttTries{}, nil
	if p := NewStartLinePage(layout.Page{}, in); p.Place != "" || len(p.Ask.Wrong.Links) != 1 || p.Curve != nil || p.Lede != "No putts of the start line drill in the last eight weeks." {
		t.Errorf("%+v", p)
	}
}
