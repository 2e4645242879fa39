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

// result is what a piece of work came to.
type result[R any] struct {
	value R
	fault *Panic // nil when there is a value
}

// send begins the pieces in their order and queues where the result of each will
// be. The room of the queue is how far it runs ahead of the caller. A panic of the
// sequence takes the place of a result.
func send[T, R any](all iter.Seq[T], work func(T) R, queue chan<- chan result[R], enough <-chan struct{}) {
	defer close(queue)
	fault := caught(func() {
		for piece := range all {
			made, ok := place(queue, enough)
			if !ok {
				return
			}
			go func() { made <- done(work, piece) }()
		}
	})
	if fault == nil {
		return
	}
	if made, ok := place(queue, enough); ok {
		made <- result[R]{fault: fault}
	}
}

// done is the result of a piece.
func done[T, R any](work func(T) R, piece T) (r result[R]) {
	r.fault = caught(func() { r.value = work(piece) })
	return r
}

// place queues the place of one more result, with room for it, so that sending it
// never waits; ok is false once the caller has enough.
func place[R any](queue chan<- chan result[R], enough <-chan struct{}) (made chan result[R], ok bool) {
	made = make(chan result[R], 1)
	select {
	case queue <- made:
		return made, true
	case <-enough:
		return nil, false
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
