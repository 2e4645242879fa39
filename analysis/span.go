package analysis

import (
	"strokeledger/analysis/compare"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
)

// SpanRounds are the rounds of a span one by one.
type SpanRounds struct {
	Rows   []compare.Row     // everything first, then the parts of the game, then the bands
	Rounds []*compare.Judged // against the golfer of the player's target, in the order of their days
}

// SpanRounds answers "what did each round of a span lose, and where?", with the same
// span as Report. A target outside golf.MinTarget to golf.MaxTarget is an error.
func (e *Engine) SpanRounds(in ReportInput) (SpanRounds, error) {
	span, _ := in.spans()
	lens, err := expect.Level(in.Target)
	if err != nil {
		return SpanRounds{}, err
	}
	var chosen []golf.Played
	for i, p := range in.History {
		if span.Holds(i, len(in.History), p.Round.Date) {
			chosen = append(chosen, p)
		}
	}
	s := SpanRounds{Rows: compare.Rows(in.Boundary)}
	s.Rounds, err = compare.Judge(chosen, lens, in.Boundary)
	return s, err
}
