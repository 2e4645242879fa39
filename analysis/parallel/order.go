package parallel

import (
	"iter"
	"runtime"
	"runtime/debug"
)

// InOrder works on what a sequence yields, on all cores, and yields the results
// in the order of the sequence. The sequence is read in another goroutine, a few
// pieces ahead, and no further once the caller has enough. When a piece or the
// sequence panics, the results before it are yielded and then InOrder panics
// with a *Panic, in the goroutine of the caller.
func InOrder[T, R any](all iter.Seq[T], work func(T) R) iter.Seq[R] {
	return func(yield func(R) bool) {
		queue, enough := make(chan chan result[R], 2*runtime.GOMAXPROCS(0)), make(chan struct{})
		defer close(enough)
		go send(all, work, queue, enough)
		for made := range queue {
			r := <-made
			if r.fault != nil {
				panic(r.fault)
			}
			if !yield(r.value) {
				return
			}
		}
	}
}

type result[R any] struct {
	value R
	fault *Panic
}

// send begins the pieces in their order and queues where each will be.
func send[T, R any](all iter.Seq[T], work func(T) R, queue chan<- chan result[R], enough <-chan struct{}) {
	defer close(queue)
	place := func() (chan result[R], bool) {
		made := make(chan result[R], 1)
		select {
		case queue <- made:
			return made, true
		case <-enough:
			return nil, false
		}
	}
	fault := caught(func() {
		for piece := range all {
			made, ok := place()
			if !ok {
				return
			}
			go func() {
				var r result[R]
				r.fault = caught(func() { r.value = work(piece) })
				made <- r
			}()
		}
	})
	if fault == nil {
		return
	}
	if made, ok := place(); ok {
		made <- result[R]{fault: fault}
	}
}

// caught is what a function panicked with, nil when it did not.
func caught(f func()) (p *Panic) {
	defer func() {
		if v := recover(); v != nil {
			p = &Panic{v, debug.Stack()}
		}
	}()
	f()
	return nil
}
