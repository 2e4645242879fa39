package golfer

import (
	"bytes"
	"math"
	"os"
	"sync"
	"testing"
)

// linearOnce is the calibration made linear around the committed parameters, which
// costs two solutions for every free number.
var linearOnce = sync.OnceValues(func() (*linear, error) {
	p := Committed()
	return p.linearised(func(int, int) {})
})

// No step of 1 % of any free number, up or down, lowers the objective. Together,
// too, the numbers are at the optimum within a part of what the figures can tell: what is left to gain is a small part of one figure missed by its spread,
// and would move no expected value by more than a fifth of its own spread.
func TestCommittedParametersAreTheOptimum(t *testing.T) {
	lin, err := linearOnce()
	if err != nil {
		t.Fatal(err)
	}
	gain, move := lin.unfinished(CommittedUncertainty())
	t.Logf("objective %.2f, %.4f left to gain, %.3f spreads to go", sumOfSquares(lin.misfit), gain, move)
	for i, f := range freeNumbers() {
		if lin.change[i] < 0 {
			t.Errorf("%s: a step of 1 %% lowers the objective by %.6f", f, -lin.change[i])
		}
	}
	if gain > .2 || move > .2 {
		t.Errorf("%.4f left to gain, %.3f spreads to go", gain, move)
	}
}

func TestCommittedReportIsWhatTheParametersReach(t *testing.T) {
	written, err := os.ReadFile("calibration.md")
	if err != nil {
		t.Fatal(err)
	}
	if Report(Committed().Results(), CommittedUncertainty()) != string(written) {
		t.Error("calibration.md is not what the committed parameters reach: run strokeledger calibrate")
	}
}

func TestParameterFileRoundTrip(t *testing.T) {
	if !bytes.Equal(Committed().Format(), committedJSON) {
		t.Error("the parameter file is not what its parameters are written as")
	}
	for name, data := range map[string]string{"text": "x", "too few": "[]", "no list": "{}"} {
		if _, err := ParseParameters([]byte(data)); err == nil {
			t.Errorf("%s was read", name)
		}
	}
	if _, err := ParseParameters(bytes.Replace(committedJSON, []byte(`"drive"`), []byte(`"putter"`), 1)); err == nil {
		t.Error("a parameter of another name was read")
	}
}

func TestSkillGoesOnLinearlyInTheLog(t *testing.T) {
	k := Skill{10, .8, -.3}
	for _, at := range []float64{0, 1} {
		step := 1e-5
		left, here, right := math.Log(k.At(at-step)), math.Log(k.At(at)), math.Log(k.At(at+step))
		if math.Abs(left-2*here+right) > 1e-9 {
			t.Errorf("a kink at t = %g", at)
		}
	}
	if up := math.Log(k.At(3)/k.At(2)) - math.Log(k.At(2)/k.At(1)); math.Abs(up) > 1e-12 {
		t.Errorf("not linear beyond 1: %g", up)
	}
}

func TestDisturbedMovesEveryNumber(t *testing.T) {
	for _, d := range Start().Disturbed(.2).Differences(Start()) {
		if math.Abs(math.Abs(d.Share)-.2) > 1e-9 {
			t.Errorf("%s: moved by %g", d.Name, d.Share)
		}
	}
}
