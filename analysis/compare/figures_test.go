package compare

import (
	"math"
	"testing"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

// Putts are counted as they fell, and set beside the golfer of a level who has
// the very same putts.
func TestPuttsAreCounted(t *testing.T) {
	green := func(feet ...float64) []golf.Shot {
		shots := []golf.Shot{{Lie: golf.Tee, Distance: 150 * golf.Yard}}
		for _, ft := range feet {
			shots = append(shots, golf.Shot{Lie: golf.Green, Distance: golf.Feet.Of(ft)})
		}
		return shots
	}
	round := golf.Round{Date: golf.Date{Year: 2026, Month: 5, Day: 1}, Holes: []golf.Hole{
		{Number: 1, Par: 3, Shots: green(6, 3)},
		{Number: 2, Par: 3, Shots: green(6)},
		{Number: 3, Par: 3, Shots: green(20, 5, 2), PickedUp: true}, // the 2 footer was not played
		{Number: 4, Par: 3, ScoreOnly: 5, Shots: green()},
	}}
	sheet := NewSheet(judged(t, []golf.Round{round}, 79), []golf.Span{{Last: 1}, {Last: 1}}, golf.StandardBoundary, ladder, 1)
	short := sheet.Columns[0].Short
	if short.Tried != 4 || short.Made != 2 || len(sheet.Columns[0].ShortPutts()) != 4 {
		t.Errorf("%+v", short)
	}
	skill, err := expect.SkillOf(79)
	if err != nil {
		t.Fatal(err)
	}
	p := golfer.Committed()
	putter := p.Putter(skill)
	if want := (2*putter.MakeRate(6) + putter.MakeRate(3) + putter.MakeRate(5)) / 4; math.Abs(short.By(putter)-want) > 1e-12 {
		t.Errorf("%g, want %g", short.By(putter), want)
	}
	curve := PuttingCurve(sheet.Columns) // the same round twice counts once
	tried := 0
	for _, h := range curve {
		tried += h.Tried
		behind, made := PuttsBehind(sheet.Columns, h), 0
		for _, b := range behind {
			if b.Hit {
				made++
			}
		}
		if len(behind) != h.Tried || made != h.Made {
			t.Errorf("%s: %d of %d behind it, counted %d of %d", h, made, len(behind), h.Made, h.Tried)
		}
	}
	if tried != 5 || len(curve) != 4 {
		t.Errorf("%d putts at %d lengths", tried, len(curve))
	}
}

// The season's line is a running mean: of the last eight rounds, in strokes of
// one course, with an interval that holds what a t interval of whole rounds has.
func TestTheLineOfASeason(t *testing.T) {
	rounds := judged(t, season(t, golfer.Even(84), 12, 3), 79)
	line := Trend(rounds, 79)
	if len(line) != 12 || line[3].HasMean || !line[4].HasMean {
		t.Fatalf("%+v", line)
	}
	figures := make([]float64, 0, 8)
	for _, p := range line[4:] {
		figures = append(figures, p.Score)
	}
	want := perRound(figures, []float64{18, 18, 18, 18, 18, 18, 18, 18}, resampled{})
	interval, _ := want.Sample.Interval(.95)
	last := line[11]
	if math.Abs(last.Mean-want.Mean) > 1e-9 || math.Abs(last.Low-interval.Low) > 1e-9 || math.Abs(last.High-interval.High) > 1e-9 {
		t.Errorf("%+v, want %+v %+v", last, want, interval)
	}
}
