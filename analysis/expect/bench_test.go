package expect

import (
	"testing"

	"strokeledger/analysis/golf"
)

var sink float64

func BenchmarkStrokes(b *testing.B) {
	golfer := level(b, 79)
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		sink = golfer.Strokes(golf.Lies[i%6], golf.Distance(i%290+1)*golf.Yard)
	}
}

func BenchmarkForTarget(b *testing.B) {
	card := ReferenceCourse()
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		_, sink = ForTarget(card, 75+float64(i%20))
	}
}
