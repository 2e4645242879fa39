package shotsfile

import (
	"bytes"
	"fmt"
	"testing"

	"strokeledger/analysis/golf"
)

func BenchmarkReader(b *testing.B) {
	var file bytes.Buffer
	w := NewWriter(&file)
	const rounds, shots = 200, 80
	for i := range rounds {
		r := golf.Round{ID: fmt.Sprintf("r%d", i), Date: golf.Date{Year: 2026, Month: 5, Day: 2}, Course: "Harrow Fen"}
		for h := range 16 {
			hole := golf.Hole{Number: h + 1, Par: 4, Shots: []golf.Shot{{Lie: golf.Tee, Distance: 391 * golf.Yard, Club: "driver"}}}
			for k := range shots/16 - 1 {
				hole.Shots = append(hole.Shots, golf.Shot{Lie: golf.Green, Distance: golf.Distance(40-k*9) * golf.Foot})
			}
			r.Holes = append(r.Holes, hole)
		}
		if err := w.Write(r); err != nil {
			b.Fatal(err)
		}
	}
	if err := w.Flush(); err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		for _, err := range NewReader(bytes.NewReader(file.Bytes()), Limits{}).Rounds() {
			if err != nil {
				b.Fatal(err)
			}
		}
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*rounds*shots), "ns/row")
}
