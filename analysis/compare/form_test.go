package compare

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

// summaries sums rounds up as they are stored and read back, the latest first.
func summaries(t testing.TB, rounds []golf.Round, target float64) []Summary {
	var all []Summary
	for _, r := range rounds {
		s, err := ladder.Summary(golf.Played{Round: r, Target: target}, target, golf.StandardBoundary)
		if err != nil {
			t.Fatal(err)
		}
		if s, err = ladder.Decode(s.Encode()); err != nil {
			t.Fatal(err)
		}
		all = append(all, s)
	}
	slices.Reverse(all)
	return all
}

// What the roster tells of the last ten rounds and the ten before is what the
// months tell of the same rounds.
func TestFormIsThatOfTheMonths(t *testing.T) {
	rounds := season(t, golfer.Levels{Tee: 84, Approach: 90, ShortGame: 80, Putting: 88}, 23, 3)
	form := ladder.Form(summaries(t, rounds, 79), 79, 18)
	sheet := NewSheet(judged(t, rounds, 79), []golf.Span{{Last: 10, Before: true}, {Last: 10}}, golf.StandardBoundary, ladder, 18)
	before, now := sheet.Columns[0], sheet.Columns[1]
	near := func(what string, got, want float64) {
		t.Helper()
		if math.Abs(got-want) > 1e-4 { // a summary is kept in single precision
			t.Errorf("%s is %v, by the months %v", what, got, want)
		}
	}
	for _, c := range golf.Categories {
		near(c.String(), form.Now[c].Level.Value, now.PlaysTo[c].Level.Value)
		near(c.String()+", its low end", form.Now[c].Low.Value, now.PlaysTo[c].Low.Value)
		near(c.String()+", its high end", form.Now[c].High.Value, now.PlaysTo[c].High.Value)
		near(c.String()+" before", form.Before[c].Value, before.PlaysTo[c].Level.Value)
	}
	for k, change := range form.Changes {
		months := now.Cells[k].Change
		near(fmt.Sprintf("change %d", k), change.Mean, months.Mean)
		if change.Word != months.Word || change.Word == 0 {
			t.Errorf("change %d is %d, by the months %d", k, change.Word, months.Word)
		}
	}
	near("doubles", form.Doubles, now.Measures[MeasureAt("doubles")].Mean)
	near("compound", form.Compound*form.Doubles, now.Measures[MeasureAt("compound")].Mean)
}

func TestFormOfFewRounds(t *testing.T) {
	all := summaries(t, season(t, golfer.Even(79), 13, 4), 79)
	if f := ladder.Form(nil, 79, 1); f.Rounds != 0 || f.Now[golf.Putting].Known() || f.Doubles != 0 {
		t.Errorf("of no round: %+v", f)
	}
	if f := ladder.Form(all[:4], 79, 1); f.Rounds != 4 || f.Now[golf.Putting].Known() {
		t.Errorf("of four rounds: %+v", f)
	}
	f := ladder.Form(all, 79, 1)
	if !f.Now[golf.Putting].Known() || f.Before[golf.Putting].Known() {
		t.Error("ten rounds have no level, or the three before have one")
	}
	if f.Moved(golf.Putting) != Within {
		t.Error("moved from nowhere")
	}
}

func TestMoved(t *testing.T) {
	f := Form{}
	part := golf.Putting
	for c, want := range map[Change]Past{{Known: true, Mean: -1, Word: Clear}: Better, {Known: true, Mean: 1, Word: Clear}: Worse,
		{Known: true, Mean: 4, Word: Leaning}: Within, {Known: true, Mean: -4, Word: Chance}: Within, {Known: true, Mean: 4}: Within, {}: Within} {
		if f.Changes[part] = c; f.Moved(part) != want {
			t.Errorf("%+v: %d, want %d", c, f.Moved(part), want)
		}
	}
}

// A loss read between rungs is that against the golfer of that level.
func TestLostToALevel(t *testing.T) {
	round := season(t, golfer.Even(90), 1, 5)[0]
	s := summaries(t, []golf.Round{round}, 79)[0]
	for _, level := range []float64{68, 71.3, 79, 84.7, 110} {
		b, err := expect.Level(level)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range golf.Categories {
			want := Ladder{rungs: []*expect.Baseline{b}}.Profile(round, golf.StandardBoundary).lost[c][0]
			if got := ladder.Lost(s, c, level); math.Abs(got-want) > 1e-4 {
				t.Errorf("%s to a %g: %v, want %v", c, level, got, want)
			}
		}
	}
}

// What a squad's row tells is what the months tell of the same rounds.
func TestPartsLostAreThoseOfTheMonths(t *testing.T) {
	rounds := season(t, golfer.Even(86), 12, 6)
	rounds[3].Holes = rounds[3].Holes[:9]
	sheet := NewSheet(judged(t, rounds, 79), []golf.Span{{Last: 20}, {Last: 1}}, golf.StandardBoundary, ladder, 18)
	all := summaries(t, rounds, 79)
	slices.Reverse(all)
	p := ladder.PartsLost(all, 79, 18)
	if p.Rounds != 12 {
		t.Errorf("%d rounds", p.Rounds)
	}
	for k := range p.Cells {
		got, want := p.Cells[k], sheet.Columns[0].Cells[k]
		if math.Abs(got.Mean-want.Mean) > 1e-4 || math.Abs(got.Interval.Low-want.Interval.Low) > 1e-4 || math.Abs(got.Interval.High-want.Interval.High) > 1e-4 {
			t.Errorf("row %d: %+v, by the months %+v", k, got, want)
		}
	}
	if p := ladder.PartsLost(nil, 79, 18); p.Rounds != 0 || p.Cells[0].Known {
		t.Errorf("of no round: %+v", p)
	}
}

func TestSummariesOfAnotherMakeAreRefused(t *testing.T) {
	data := Summary{}.Encode()
	if _, err := ladder.Decode(data); err == nil {
		t.Error("a summary without its losses is read")
	}
	if a, b := SummaryVersion(79, 50*golf.Yard), SummaryVersion(79, 40*golf.Yard); a == b || a == SummaryVersion(80, 50*golf.Yard) {
		t.Errorf("both boundaries are %q", a)
	}
	if _, err := ladder.Summary(golf.Played{Target: 60}, 79, golf.StandardBoundary); err == nil {
		t.Error("a target of 60")
	}
}

func BenchmarkForm(b *testing.B) {
	all := summaries(b, season(b, golfer.Even(84), 20, 1), 79)
	for b.Loop() {
		ladder.Form(all, 79, 1)
	}
}

func BenchmarkDecodeSummary(b *testing.B) {
	data := summaries(b, season(b, golfer.Even(84), 1, 1), 79)[0].Encode()
	b.ReportMetric(float64(len(data)), "bytes")
	for b.Loop() {
		if _, err := ladder.Decode(data); err != nil {
			b.Fatal(err)
		}
	}
}
