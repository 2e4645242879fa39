package runout

import (
	"fmt"
	"math"
	"slices"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
)

// Limits of a trial and a page of the book.
const (
	MaxCarry  = float64(golf.MaxCarry / golf.Yard) // yards
	MaxTotal  = float64(golf.MaxChip / golf.Yard)  // yards
	MaxTrials = 500
)

// A line is fitted to this many trials or more, whose carries range over this
// many yards or more.
const (
	minLine  = 5
	minRange = 3.0
	farOff   = 3.0 // residual spreads at which a trial is marked
)

// Enough is how many trials it takes for an interval, and for a club to be counted
// on.
const Enough = 3

// Trial is one ball: how far it flew and how far it went in all, in yards.
type Trial struct{ Carry, Total float64 }

// Run is how far the ball ran after it landed, in yards; negative when it came
// back.
func (t Trial) Run() float64 { return t.Total - t.Carry }

// Check tells what is wrong with some trials.
func Check(trials []Trial) golf.Problems {
	var p golf.Problems
	if len(trials) > MaxTrials {
		return golf.Problems{{Field: "trials", What: "too many", Read: fmt.Sprint(len(trials)), Allowed: fmt.Sprintf("at most %d", MaxTrials)}}
	}
	for i, t := range trials {
		if !(t.Carry > 0 && t.Carry <= MaxCarry) {
			p = append(p, golf.Problem{Shot: i + 1, Field: "carry", What: "not possible", Read: fmt.Sprint(t.Carry), Allowed: fmt.Sprintf("over 0, at most %g yd", MaxCarry)})
		}
		if !(t.Total > 0 && t.Total <= MaxTotal) {
			p = append(p, golf.Problem{Shot: i + 1, Field: "total", What: "not possible", Read: fmt.Sprint(t.Total), Allowed: fmt.Sprintf("over 0, at most %g yd", MaxTotal)})
		}
	}
	return p
}

// Page is what the trials of one club from one lie on one kind of green say.
// The run-out of a carry of x yards is Start + Slope·x.
type Page struct {
	Trials       int
	Start, Slope float64
	SD           float64 // residual standard deviation of the run-out, yards; 0 for fewer than two trials
	Line         bool    // a line was fitted; otherwise Slope is 0 and Start the mean
	FarOff       []int   // trials, by their place from 0, more than three residual spreads off; they are kept
	Least, Most  float64 // carries among the trials, yards
	carries      spreadOf
	df           float64
}

type spreadOf struct{ mean, squares float64 } // of the carries: mean, and sum of squares about it

// NewPage sums up trials that Check finds nothing wrong with; at least one.
func NewPage(trials []Trial) Page {
	carry, run := make([]float64, len(trials)), make([]float64, len(trials))
	for i, t := range trials {
		carry[i], run[i] = t.Carry, t.Run()
	}
	p := Page{Trials: len(trials), Start: stat.Of(run).Mean, Least: slices.Min(carry), Most: slices.Max(carry), df: float64(len(trials) - 1)}
	if len(trials) >= minLine && slices.Max(carry)-slices.Min(carry) >= minRange {
		if l := stat.FitLine(carry, run); l.Slope > 0 {
			p.Line, p.Start, p.Slope, p.SD, p.df = true, l.Start, l.Slope, l.SD, float64(l.DF)
			p.carries = spreadOf{l.MeanX, l.SquaresX}
		}
	}
	if !p.Line {
		p.SD = stat.Of(run).SD
	}
	for i, t := range trials {
		if p.SD > 0 && math.Abs(t.Run()-p.Run(t.Carry)) > farOff*p.SD {
			p.FarOff = append(p.FarOff, i)
		}
	}
	return p
}

// Run is the expected run-out of a carry, in yards.
func (p Page) Run(carry float64) float64 { return p.Start + p.Slope*carry }

// near is how far from the carries of the trials a page still speaks for, in yards.
// Our own choice.
const near = 3

// Near reports whether the trials reach near a carry, in yards.
func (p Page) Near(carry float64) bool { return carry >= p.Least-near && carry <= p.Most+near }

// RunLine is what rounds are judged by of a club and a lie with such trials.
func (p Page) RunLine(club string, lie golf.Lie) golf.RunLine {
	return golf.RunLine{Club: club, Lie: lie, Start: p.Start, Slope: p.Slope, From: p.Least - near, To: p.Most + near}
}

// Next is where the run-out of one more ball with a carry lies, with the
// confidence asked for. ok is false for fewer than three trials.
func (p Page) Next(carry, confidence float64) (i stat.Interval, ok bool) {
	if p.Trials < Enough {
		return stat.Interval{}, false
	}
	reach := stat.TQuantile(.5+confidence/2, p.df) * p.error(carry)
	return stat.Interval{Low: p.Run(carry) - reach, High: p.Run(carry) + reach}, true
}

// error is the standard error of one more ball.
func (p Page) error(carry float64) float64 {
	leverage := 1 / float64(p.Trials)
	if p.Line {
		d := carry - p.carries.mean
		leverage += d * d / p.carries.squares
	}
	return p.SD * math.Sqrt(1+leverage)
}
