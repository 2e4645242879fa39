// Package parallel does independent pieces of work on all cores.
//
// It answers "how is this shared out?" and refuses to let a fault in one piece
// end the program: the fault comes back to who asked.
package parallel

import (
	"fmt"
	"runtime"
	"sync"
	"sync/atomic"
)

// Panic is what a piece of work panicked with, as an error. Its text has the
// stack of the piece, which the stack of the caller does not show.
type Panic struct {
	Value any
	Stack []byte
}

// Error says what happened and where.
func (p *Panic) Error() string { return fmt.Sprintf("%v in a piece of work\n%s", p.Value, p.Stack) }

// Do does n pieces of work, numbered from 0, and returns when all are done; none
// for n below 1. When a piece panics, those not yet begun are left out, and Do
// itself panics with a *Panic, in the goroutine of the caller, where a server
// turns it into the failure of one request.
func Do(n int, work func(int)) { DoTelling(n, work, func(int) {}) }

// DoTelling is Do that tells the caller, in its own goroutine, how many pieces
// are done each time another is.
func DoTelling(n int, work func(int), tell func(done int)) {
	var next atomic.Int64
	var first atomic.Pointer[Panic]
	var wait sync.WaitGroup
	finished := make(chan struct{}, max(n, 0))
	for range min(n, runtime.GOMAXPROCS(0)) {
		wait.Go(func() {
			for i := int(next.Add(1)) - 1; i < n && first.Load() == nil; i = int(next.Add(1)) - 1 {
				if p := caught(func() { work(i) }); p != nil {
					first.CompareAndSwap(nil, p)
					return
				}
				finished <- struct{}{}
			}
		})
	}
	go func() { wait.Wait(); close(finished) }()
	done := 0
	for range finished {
		done++
		tell(done)
	}
	if p := first.Load(); p != nil {
		panic(p)
	}
}
