package handlers

import (
	"context"
	"crypto/sha256"
	"fmt"
	"sync"
)

// worked keeps what takes long to work out and follows from its input alone, such as
// the plan of a hole.
type worked struct {
	mu    sync.Mutex
	kept  map[[32]byte]any
	order [][32]byte    // the earliest first
	room  chan struct{} // how many may work at once
}

// workedMost is how many answers are kept, the latest; a plan of a hole takes about
// 20 kB.
const workedMost = 2000

func newWorked() *worked {
	return &worked{kept: map[[32]byte]any{}, room: make(chan struct{}, 2)}
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
	x, err := work()
	if err != nil {
		return none, err
	}
	w.keep(key, x)
	return x, nil
}
