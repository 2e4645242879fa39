package handlers

import (
	"context"
	"sync"
	"sync/atomic"
	"testing"
	"time"
)

// Requests for one answer that wait for a place work it out once for each place.
func TestWaitingRequestsFindWhatWasWorkedOut(t *testing.T) {
	w := newWorked()
	var done sync.WaitGroup
	var times atomic.Int32
	for range 10 {
		done.Go(func() {
			if x, err := workOut(context.Background(), w, keyOf("test"), func() (int, error) {
				times.Add(1)
				time.Sleep(50 * time.Millisecond)
				return 7, nil
			}); x != 7 || err != nil {
				t.Errorf("%d, %v", x, err)
			}
		})
	}
	done.Wait()
	if n := int(times.Load()); n > cap(w.room) {
		t.Errorf("worked out %d times, want at most %d", n, cap(w.room))
	}
}
