package parallel

import (
	"iter"
	"slices"
	"testing"
)

func TestResultsComeInTheOrderOfThePieces(t *testing.T) {
	for _, n := range []int{0, 1, 2, 1000} {
		var got []int
		for x := range InOrder(upTo(n), func(i int) int { return i * i }) {
			got = append(got, x)
		}
		if len(got) != n || !slices.IsSorted(got) {
			t.Errorf("%d pieces: %d results, in order: %v", n, len(got), slices.IsSorted(got))
		}
	}
}

func TestWhoHasEnoughStops(t *testing.T) {
	read := make(chan int, 1)
	pieces := func(yield func(int) bool) {
		n := 0
		defer func() { read <- n }()
		for yield(n) {
			n++
		}
	}
	for x := range InOrder(pieces, func(i int) int { return i }) {
		if x == 3 {
			break
		}
	}
	select {
	case n := <-read:
		if n < 3 {
			t.Errorf("read %d pieces", n)
		}
	case <-t.Context().Done():
		t.Error("the sequence is read on")
	}
}

func TestAFaultOfAPieceOrTheSequenceComesBack(t *testing.T) {
	for name, c := range map[string]struct {
		pieces iter.Seq[int]
		work   func(int) int
	}{
		"a piece": {upTo(10), func(i int) int { return 10 / (i - 5) }},
		"the sequence": {func(yield func(int) bool) {
			for i := range 5 {
				yield(i)
			}
			panic("no more")
		}, func(i int) int { return i }},
	} {
		n := 0
		p := caught(func() {
			for range InOrder(c.pieces, c.work) {
				n++
			}
		})
		if fault, ok := p.Value.(*Panic); !ok || n != 5 {
			t.Errorf("%s: %d results, then %v", name, n, fault)
		}
	}
}

func upTo(n int) iter.Seq[int] {
	return func(yield func(int) bool) {
		for i := range n {
			if !yield(i) {
				return
			}
		}
	}
}
