package figures

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"strokeledger/analysis"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/web/form"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// season is a comparison with a line of rounds, five days apart.
func season(scores ...float64) ComparisonInput {
	in := ComparisonInput{At: paths.Comparison{Whose: paths.Whose{Player: 1, Own: true}}, Target: 79, Units: form.StandardUnits, Months: analysis.Months{Level: 79}}
	for i, score := range scores {
		p := compare.Point{ID: golf.RoundID(i + 1), Day: may.AddDays(5 * i), Holes: 18, Score: score}
		if i >= compare.MinRounds-1 {
			p.HasMean, p.Mean, p.Low, p.High = true, score, score-2, score+2
		}
		in.Line = append(in.Line, p)
	}
	in.Thin = compare.TrendThin(in.Line)
	return in
}

func TestSeason(t *testing.T) {
	for _, c := range []struct {
		name             string
		scores           []float64
		summary, noLine  string
		last, row, along string
	}{
		{"one round", []float64{84}, "1 round.", "Four more rounds until the mean of the last eight is drawn.", "", "", "May 26"},
		{"four rounds", []float64{84, 86, 90, 88}, "4 rounds.", "One more round until the mean of the last eight is drawn.", "", "", "May 26"},
		{"six rounds", []float64{84, 86, 90, 88, 85, 83}, "The mean of the last eight rounds goes from 85.0 on 22 May 2026 to 83.0 on 27 May 2026; the target is 79.", "", "83.0", "83.0 (81.0 to 85.0)", "May 26"},
	} {
		in := season(c.scores...)
		in.Marks = []MarkedDay{{Day: may.AddDays(1), What: "lesson"}, {Day: may.AddDays(-9), What: "before the season"}}
		s := NewSeason(in)
		if s.Summary != c.summary || s.NoLine != c.noLine || s.Last != c.last || s.Table[len(s.Table)-1].Mean != c.row || s.Along[0].Text != c.along || len(s.Rounds) != len(c.scores) {
			t.Errorf("%s: %+v", c.name, s)
		}
		if (s.Line != "") != (c.noLine == "") {
			t.Errorf("%s: line %q", c.name, s.Line)
		}
		if d := s.Rounds[0]; d.Text != "2 May 2026: 84.0" || d.At != "/rounds/1" {
			t.Errorf("%s: %+v", c.name, d)
		}
		if want := strings.TrimSpace("Dashes: the target, 79. Ring at the foot: lesson on 3 May 2026. " + c.noLine); len(s.Marks) != 1 || !strings.HasSuffix(s.Legend, want) {
			t.Errorf("%s: %v, %q", c.name, s.Marks, s.Legend)
		}
	}
}

// A long season names at most nine months, the first and each January with the year.
func TestMonthsAlongTheSeason(t *testing.T) {
	all := monthMarks(timeAxis{may.Time(), may.Time().AddDate(1, 2, 0)})
	var names []string
	for _, m := range all {
		names = append(names, m.Text)
	}
	if got := strings.Join(names, ", "); got != "May 26, Jul, Sep, Nov, Jan 27, Mar, May" {
		t.Error(got)
	}
	if !all[0].Narrow || all[1].Narrow || !all[4].Narrow {
		t.Errorf("%+v", all)
	}
}

// Each year after the first is marked where it begins.
func TestYearsAlongTheSeason(t *testing.T) {
	for years, want := range map[int]string{0: "", 1: "2027", 2: "2027, 2028"} {
		var names []string
		for _, y := range yearMarks(timeAxis{may.Time(), may.Time().AddDate(years, 0, 9)}) {
			names = append(names, y.Text)
		}
		if got := strings.Join(names, ", "); got != want {
			t.Errorf("%d years: %q, want %q", years, got, want)
		}
	}
}

func TestPutts(t *testing.T) {
	none := puttsFrom(t, 3, 0)
	none.Curve, none.Target = nil, 84
	p := NewPutts(none)
	if p.Summary != "No putts in these spans." || p.Table != nil || p.TargetText != "an 84 golfer" || p.TargetShort != "An 84" || len(p.Up) != 5 || p.Up[4].Text != "100%" || p.Along[0].Text != "1" || p.Unit != "ft" || p.Lost != "" {
		t.Errorf("%+v", p)
	}
	for _, c := range []struct {
		name    string
		missed  int // of ten putts from three feet
		summary string
	}{
		{"all holed", 0, "At no length are clearly fewer putts holed than by a 79 golfer."},
		{"all missed", 10, "Clearly fewer putts holed than by a 79 golfer: 2 to 3 ft."},
	} {
		p := NewPutts(puttsFrom(t, 3, c.missed))
		row := p.Table[len(p.Table)-1]
		if p.Summary != c.summary || row.Length != "2 to 3 ft" || row.At != "/players/1/months/behind?putts=2-3" || row.Holed != fmt.Sprintf("%d of 10", 10-c.missed) {
			t.Errorf("%s: %q, %+v", c.name, p.Summary, row)
		}
		sum := 0
		for _, row := range p.Table {
			sum += readTenths(t, row.Lost)
		}
		if sum != readTenths(t, p.Lost) || p.LostHead != "Lost to a 79 golfer" {
			t.Errorf("%s: the lengths lose %d tenths, all putts %s", c.name, sum, p.Lost)
		}
	}
}

// readTenths reads a printed loss.
func readTenths(t *testing.T, printed string) int {
	t.Helper()
	x, err := strconv.ParseFloat(strings.Replace(printed, words.Minus, "-", 1), 64)
	if err != nil {
		t.Fatal(err)
	}
	return int(math.Round(x * 10))
}

// The first dot stands inside the picture, and an axis in metres has round figures.
func TestPuttsStandInThePicture(t *testing.T) {
	in := puttsFrom(t, 1, 0)
	if d := NewPutts(in).Dots[0]; d.X == "0%" {
		t.Errorf("%+v", d)
	}
	in.Units = form.Units{Far: golf.Metres, Green: golf.Metres}
	if p := NewPutts(in); p.Along[0].Text != "0.3" || p.Unit != "m" {
		t.Errorf("%+v", p.Along)
	}
}

// Lengths are in the reader’s unit; the longest putts have no upper end.
func TestPuttLengths(t *testing.T) {
	feet, metres := season(84), season(84)
	metres.Units = form.Units{Far: golf.Metres, Green: golf.Metres}
	for _, c := range []struct {
		in       ComparisonInput
		from, to golf.Distance
		want     string
	}{
		{feet, 2 * golf.Foot, 3 * golf.Foot, "2 to 3 ft"},
		{feet, 40 * golf.Foot, 0, "over 40 ft"},
		{metres, 2 * golf.Metre, 3 * golf.Metre, "2 to 3 m"},
		{metres, 12 * golf.Metre, 0, "over 12 m"},
	} {
		if got := PuttLength(compare.Holed{From: c.from, To: c.to}, c.in); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// puttsFrom is a span of ten holes with a first putt from some feet, of which some
// were missed and the next one holed.
func puttsFrom(t *testing.T, feet float64, missed int) ComparisonInput {
	lens, err := expect.Level(79)
	if err != nil {
		t.Fatal(err)
	}
	skill, err := expect.SkillOf(79)
	if err != nil {
		t.Fatal(err)
	}
	r := golf.Round{Date: may}
	for i := range 10 {
		h := golf.Hole{Number: i + 1, Par: 3, Shots: []golf.Shot{{Lie: golf.Tee, Distance: 150 * golf.Yard}, {Lie: golf.Green, Distance: golf.Feet.Of(feet)}}}
		if i < missed {
			h.Shots = append(h.Shots, golf.Shot{Lie: golf.Green, Distance: golf.Feet.Of(1)})
		}
		r.Holes = append(r.Holes, h)
	}
	judged, err := compare.Judge([]golf.Played{{ID: 1, Round: r, Target: 79}}, lens, golf.StandardBoundary)
	if err != nil {
		t.Fatal(err)
	}
	in, p := season(84), golfer.Committed()
	in.Putter, in.Tour = p.Putter(skill), p.Putter(0)
	in.Sheet.Columns = []compare.Column{{Span: golf.Month(2026, 5), Rounds: judged}}
	in.Curve = compare.PuttingCurve(in.Sheet.Columns)
	return in
}
