package main

import (
	"io"
	"os"
	"testing"
)

// From the file to JSON; ten thousand rounds of 80 shots are to take two
// seconds or less, 2500 ns a shot.
func BenchmarkAnalyse(b *testing.B) {
	const shots = 3068 // rows of the season
	for b.Loop() {
		if status := run([]string{"analyse", "--json", "../../testdata/shots/season.csv"}, streams{nil, io.Discard, os.Stderr}); status != exitDone {
			b.Fatal(status)
		}
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*shots), "ns/shot")
}
