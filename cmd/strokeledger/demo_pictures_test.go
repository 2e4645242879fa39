package main

import (
	"flag"
	"math"
	"strconv"
	"strings"
	"testing"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

func TestDemoPicturesAreSound(t *testing.T) {
	pictures, err := demoPictures()
	if err != nil || len(pictures) != 18 {
		t.Fatalf("%d pictures, %v", len(pictures), err)
	}
	for _, wrong := range []string{"hole 19\n", "hole x\n", "hole 3\nlava 1 to 2\n"} {
		if _, err := picturesOf(harrowFen, wrong); err == nil {
			t.Errorf("%q is read", wrong)
		}
	}
}

// roundsOn are the scores of rounds on the course of the demo, straight or by the
// plan, each hole with its own random numbers.
func roundsOn(t *testing.T, e *analysis.Engine, level float64, planned bool, rounds int) []float64 {
	t.Helper()
	pictures, err := demoPictures()
	if err != nil {
		t.Fatal(err)
	}
	drawn, err := e.Drawn(analysis.DrawnInput{As: analysis.TargetsGolfer(level), Card: harrowFen, Pictures: pictures, Planned: planned})
	if err != nil {
		t.Fatal(err)
	}
	parameters := golfer.Committed()
	player, err := golfer.NewPlayer(&parameters, golfer.Even(level), harrowFen, golf.StandardBoundary)
	if err != nil {
		t.Fatal(err)
	}
	if player, err = player.In(golfer.Style{ByHole: true, Drawn: drawn}); err != nil {
		t.Fatal(err)
	}
	scores := make([]float64, rounds)
	for i := range scores {
		for _, h := range player.Play(1, uint64(i)) {
			scores[i] += float64(h.Strokes())
		}
	}
	return scores
}

// levels are those of the golfers who play the course of the demo with and without
// the plan.
var levels = flag.String("plan-levels", "84", "levels of the golfers whose plan is played, with commas between them")

// A round by the plan against straight aims: what is saved, with its standard error.
func TestPlanOfTheDemoSaves(t *testing.T) {
	const rounds = 2000
	e := analysis.NewEngine()
	for name := range strings.SplitSeq(*levels, ",") {
		level, err := strconv.ParseFloat(name, 64)
		if err != nil {
			t.Fatal(err)
		}
		straight, planned := roundsOn(t, e, level, false, rounds), roundsOn(t, e, level, true, rounds)
		mean, squares := 0.0, 0.0
		for i := range straight {
			d := straight[i] - planned[i]
			mean, squares = mean+d/rounds, squares+d*d/rounds
		}
		sd := math.Sqrt((squares - mean*mean) / rounds)
		t.Logf("level %g: the plan saves %.2f ± %.2f strokes a round", level, mean, sd)
		if mean < 3*sd {
			t.Errorf("level %g: the plan saves %.2f ± %.2f strokes a round", level, mean, sd)
		}
	}
}
