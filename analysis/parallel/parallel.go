// Package parallel does independent pieces of work on all cores.
//
// It answers "how is this shared out?" and refuses to let a fault in one piece
// end the program: the fault comes back to the caller.
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
	Value any    // what it panicked with
	Stack []byte // of the piece, as debug.Stack writes it
}

// Error says what happened and where.
func (p *Panic) Error() string { return fmt.Sprintf("%v in a piece of work\n%s", p.Value, p.Stack) }

// Do does n pieces of work, numbered from 0, and returns when all are done; none
// for n below 1. When a piece panics, those not yet begun are left out, and Do
// itself panics with a *Panic, in the goroutine of the caller, where a server
// turns it into the failure of one request.
func Do(n int, work func(int)) { DoTelling(n, work, func(int) {}) }

// DoTelling is Do that calls tell with how many pieces are done, each time another
// is, in the goroutine of the caller. The last call has n, unless a piece panics.
func DoTelling(n int, work func(int), tell func(done int)) {
	b := batch{n: n, work: work, finished: make(chan struct{}, max(n, 0))}
	var wait sync.WaitGroup
	for range min(n, runtime.GOMAXPROCS(0)) {
		wait.Go(b.run)
	}
	go func() { wait.Wait(); close(b.finished) }()
	done := 0
	for range b.finished {
		done++
		tell(done)
	}
	if p := b.fault.Load(); p != nil {
		panic(p)
	}
}

// batch is pieces of work that several goroutines take from, one at a time, so
// that a core with short pieces does more of them.
type batch struct {
	n        int
	work     func(int)
	next     atomic.Int64          // number of the piece that is taken next
	fault    atomic.Pointer[Panic] // the first
	finished chan struct{}         // one value a piece, with room for all
}

// run works on pieces until there are no more or one has panicked.
func (b *batch) run() {
	for b.fault.Load() == nil {
		i := int(b.next.Add(1)) - 1
		if i >= b.n {
			return
		}
		if p := caught(func() { b.work(i) }); p != nil {
			b.fault.CompareAndSwap(nil, p)
			return
		}
		b.finished <- struct{}{}
	}
}
