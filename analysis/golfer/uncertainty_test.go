package golfer

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// The committed table is what the committed parameters and the committed refit
// give. Central differences of 1 % are the command's own.
func TestCommittedUncertaintyIsWorkedOut(t *testing.T) {
	refit, err := CommittedRefit()
	if err != nil {
		t.Fatal(err)
	}
	lin, err := linearOnce()
	if err != nil {
		t.Fatal(err)
	}
	table, err := lin.uncertain(Committed(), refit)
	if err != nil {
		t.Fatal(err)
	}
	if FormatUncertainty(table) != uncertaintyCSV {
		t.Error("uncertainty.csv is not what the parameters give: run strokeledger calibrate")
	}
}

// The delta method against a calibration of its own, to figures that were moved at
// random: every expected value moves as far as the method says, give or take a
// part of its own spread.
func TestRefitMovesAsTheDeltaMethodSays(t *testing.T) {
	sum, n := 0.0, 0.0
	for _, u := range CommittedUncertainty() {
		if u.SD <= 0 || u.SD > .5 {
			t.Errorf("%g, %s %g: spread %.4f", u.Level, u.Lie, u.Far, u.SD)
		}
		if miss := math.Abs(u.Refit - u.Linear); miss > u.SD+.01 {
			t.Errorf("%g, %s %g: moved by %.4f, by the delta method %.4f, spread %.4f", u.Level, u.Lie, u.Far, u.Refit, u.Linear, u.SD)
		}
		sum += (u.Refit / u.SD) * (u.Refit / u.SD)
		n++
	}
	if size := math.Sqrt(sum / n); size < .4 || size > 1.8 {
		t.Errorf("a refit moves expected strokes by %.2f of their spreads", size)
	}
}

func TestUncertaintyFileRoundTrip(t *testing.T) {
	table := CommittedUncertainty()
	again, err := ParseUncertainty(FormatUncertainty(table))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(table, again); diff != "" {
		t.Error(diff)
	}
	for _, data := range []string{"a\n\"", "level\nx", "level,lie,distance,unit,strokes,sd,refit,linear\n79,sky,1,yd,1,1,1,1\n"} {
		if _, err := ParseUncertainty(data); err == nil {
			t.Errorf("%q was read", data)
		}
	}
}
