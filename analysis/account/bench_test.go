package account

import (
	"testing"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
)

// benchRound is a round of 18 bogeys, none of them clean.
func benchRound(b *testing.B) golf.Round {
	var r golf.Round
	for i := range 18 {
		r.Holes = append(r.Holes, golf.Hole{Number: i + 1, Par: 4, Shots: parseShots(b, "t400 r160 r24s g16 g2")})
	}
	return r
}

// The whole work on a round: the golfer of its target solved, then the account.
func BenchmarkRound(b *testing.B) {
	r, terms := benchRound(b), fixedTerms(b, 79)
	target := r.TargetOf(79, 72)
	b.ReportAllocs()
	for b.Loop() {
		terms.Lens, terms.Course = expect.ForTarget(r.Card(), target)
		Of(r, terms)
	}
}

// The account alone, as when many rounds meet the fixed golfer.
func BenchmarkOf(b *testing.B) {
	r, terms := benchRound(b), fixedTerms(b, 79)
	b.ReportAllocs()
	for b.Loop() {
		Of(r, terms)
	}
}
