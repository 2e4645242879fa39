package handlers

import (
	"context"
	"crypto/sha256"
	"fmt"
	"net/http"
	"runtime/debug"
	"sync"
	"time"
)

// worked keeps what takes long to work out and follows from its input alone, such as
// the plan of a hole.
type worked struct {
	mu    sync.Mutex
	kept  map[[32]byte]any
	order [][32]byte    // the earliest first
	room  chan struct{} // how many may work at once
	going map[[32]byte]*going
}

// workedMost is how many answers are kept, the latest; a plan of a hole takes about
// 20 kB.
const workedMost = 2000

func newWorked() *worked {
	return &worked{kept: map[[32]byte]any{}, room: make(chan struct{}, 2), going: map[[32]byte]*going{}}
}

// keyOf identifies an input.
func keyOf(kind string, input ...any) [32]byte {
	return sha256.Sum256([]byte(kind + fmt.Sprintf("%#v", input)))
}

// look returns what is kept of an input.
func (w *worked) look(key [32]byte) (any, bool) {
	w.mu.Lock()
	defer w.mu.Unlock()
	x, found := w.kept[key]
	return x, found
}

func (w *worked) keep(key [32]byte, x any) {
	w.mu.Lock()
	defer w.mu.Unlock()
	if _, found := w.kept[key]; !found {
		w.order = append(w.order, key)
	}
	w.kept[key] = x
	for len(w.order) > workedMost {
		delete(w.kept, w.order[0])
		w.order = w.order[1:]
	}
}

// workOut returns what is kept of an input, or works it out.
func workOut[T any](ctx context.Context, w *worked, key [32]byte, work func() (T, error)) (T, error) {
	if x, found := w.look(key); found {
		return x.(T), nil
	}
	var none T
	select {
	case w.room <- struct{}{}:
		defer func() { <-w.room }()
	case <-ctx.Done():
		return none, ctx.Err()
	}
	// Another request may have worked it out while this one waited for its place.
	if x, found := w.look(key); found {
		return x.(T), nil
	}
	x, err := work()
	if err != nil {
		return none, err
	}
	w.keep(key, x)
	return x, nil
}

// going is work that goes on after the request that began it.
type going struct {
	done chan struct{}
	err  error // once it is done
}

// goingMost is how much work may go on or wait at once; more is refused.
const goingMost = 12

var errBusy = &refusal{http.StatusServiceUnavailable, "Temporarily unavailable", "Others are waiting for their chances as well. Try again in a minute."}

// workOn returns what is kept of an input, or lets it be worked out by a goroutine of
// its own and waits for that for a while. done is false while it goes on. It goes on
// when the request ends, so that the next one finds it.
func workOn[T any](ctx context.Context, w *worked, key [32]byte, wait time.Duration, work func() (T, error)) (x T, done bool, err error) {
	if kept, found := w.look(key); found {
		return kept.(T), true, nil
	}
	g, err := w.begin(key, func() error {
		_, err := workOut(context.WithoutCancel(ctx), w, key, work)
		return err
	})
	if err != nil {
		return x, false, err
	}
	late := time.NewTimer(wait)
	defer late.Stop()
	select {
	case <-g.done:
		kept, _ := w.look(key)
		x, _ = kept.(T)
		return x, g.err == nil, g.err
	case <-late.C:
		return x, false, nil
	case <-ctx.Done():
		return x, false, ctx.Err()
	}
}

// begin begins work on an input, or finds what was begun.
func (w *worked) begin(key [32]byte, work func() error) (*going, error) {
	w.mu.Lock()
	defer w.mu.Unlock()
	if g, found := w.going[key]; found {
		return g, nil
	}
	if len(w.going) >= goingMost {
		return nil, errBusy
	}
	g := &going{done: make(chan struct{})}
	w.going[key] = g
	go func() {
		defer func() {
			if v := recover(); v != nil {
				g.err = fmt.Errorf("panic: %v\n%s", v, debug.Stack())
			}
			w.mu.Lock()
			delete(w.going, key)
			w.mu.Unlock()
			close(g.done)
		}()
		g.err = work()
	}()
	return g, nil
}
