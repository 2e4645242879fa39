package parallel

import (
	"errors"
	"strings"
	"sync/atomic"
	"testing"
)

func TestEveryPieceIsDoneOnce(t *testing.T) {
	for _, n := range []int{-1, 0, 1, 2, 1000} {
		done := make([]atomic.Int32, max(n, 0))
		Do(n, func(i int) { done[i].Add(1) })
		for i := range done {
			if k := done[i].Load(); k != 1 {
				t.Errorf("piece %d of %d is done %d times", i, n, k)
			}
		}
	}
}

func TestTheCallerIsToldOfEachPiece(t *testing.T) {
	var told []int
	DoTelling(50, func(int) {}, func(done int) { told = append(told, done) })
	if len(told) != 50 || told[0] != 1 || told[49] != 50 {
		t.Error(told)
	}
}

// faulty panics; the stack must name it.
func faulty(i int) {
	if i == 3 {
		panic("a bug")
	}
}

func TestAPanicComesBackToTheCaller(t *testing.T) {
	defer func() {
		err, _ := recover().(error)
		var p *Panic
		if !errors.As(err, &p) || p.Value != "a bug" || !strings.Contains(err.Error(), "a bug") || !strings.Contains(err.Error(), "faulty") {
			t.Errorf("%v", err)
		}
	}()
	Do(1000, faulty)
	t.Error("no panic")
}

func TestAPanicLeavesTheRestOut(t *testing.T) {
	var done atomic.Int32
	func() {
		defer func() { recover() }()
		Do(1_000_000, func(i int) {
			if done.Add(1) == 1 {
				panic("a bug")
			}
		})
	}()
	if done.Load() == 1_000_000 {
		t.Error("all is done")
	}
}
