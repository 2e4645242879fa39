package analysis

import (
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
)

// SinceInput is what a plan is held against.
type SinceInput struct {
	History     []golf.Played // all rounds, in the order of their days
	First, Last golf.Date     // of the rounds that the plan stands on
	Target      float64       // of the plan
}

// Since is what came after a plan was made: the same figures as the months', of the
// rounds since beside those that the plan stands on, with the golfer of the plan's
// target.
type Since struct {
	Rounds int                         // since, with a hole whose strokes are known
	Parts  [golf.Putting + 1]PartSince // by category; the first is everything
}

// PartSince is what came in a part of the game.
type PartSince struct {
	Known    bool          // there are rounds on both sides
	Won      float64       // strokes for 18 holes; negative where more is lost than before
	Interval stat.Interval // of it, 95 %; the same as Won where Sure is false
	Sure     bool          // there is an interval
	Word     compare.Word  // how sure the change is; 0 with a note
	Thin     golf.Thin     // why it has no word
}

// Since answers "did the plan bring what it promised?".
func (e *Engine) Since(in SinceInput) (s Since, err error) {
	spans := []golf.Span{{From: in.First, To: in.Last}, {From: in.Last.AddDays(1)}}
	months, err := e.Months(MonthsInput{History: in.History, Choice: golf.Comparison{Spans: spans}, Target: in.Target, Boundary: golf.StandardBoundary})
	if err != nil {
		return s, err
	}
	before, now := months.Before(), months.Now()
	s.Rounds = len(now.Rounds)
	for row := range s.Parts {
		c := now.Cells[row]
		p := PartSince{Known: c.Change.Known, Won: -c.Change.Mean, Word: c.Change.Word, Thin: c.Change.Thin}
		p.Interval = stat.Interval{Low: p.Won, High: p.Won}
		if d, ok := stat.Welch(now.Cells[row].Sample, before.Cells[row].Sample); ok && p.Known {
			p.Interval, p.Sure = d.Interval(confidenceOfChange), true
		}
		s.Parts[row] = p
	}
	return s, nil
}

// confidenceOfChange is the share of intervals of a change that hold it.
const confidenceOfChange = .95
