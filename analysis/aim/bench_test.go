package aim

import (
	"runtime"
	"syscall"
	"testing"

	"strokeledger/analysis/golf"
)

// timed runs a benchmark on one core and reports the time of the processor too,
// which other programs do not lengthen as much as that of the clock.
func timed(b *testing.B, work func()) {
	before := runtime.GOMAXPROCS(1)
	defer runtime.GOMAXPROCS(before)
	used := func() float64 {
		var u syscall.Rusage
		if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
			b.Fatal(err)
		}
		return float64(u.Utime.Sec+u.Stime.Sec)*1e3 + float64(u.Utime.Usec+u.Stime.Usec)/1e3
	}
	start := used()
	for b.Loop() {
		work()
	}
	b.ReportMetric((used()-start)/float64(b.N), "cpu-ms/op")
}

// The goal of a tee shot with four clubs, laid out anew, is 100 ms on one core.
func BenchmarkTeeShot(b *testing.B) {
	timed(b, func() {
		h := laidOut(b, 84, dogleg())
		h.TeeShots(h.Clubs())
	})
}

// The goal of an approach's plane, laid out anew, is 300 ms on one core.
func BenchmarkApproach(b *testing.B) {
	timed(b, func() {
		h := laidOut(b, 84, dogleg())
		h.Approach(golf.Fairway, h.Short(150, 0), Pattern{})
	})
}

func BenchmarkLayOut(b *testing.B) {
	timed(b, func() { laidOut(b, 84, dogleg()) })
}
