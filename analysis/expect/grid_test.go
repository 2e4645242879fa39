package expect

import (
	"math"
	"testing"

	"strokeledger/analysis/golf"
)

func TestNodesAndPlacesAgree(t *testing.T) {
	for _, g := range []struct {
		name   string
		nodes  int
		node   func(int) float64
		locate func(float64) (int, float64)
		last   float64
	}{
		{"yards", YardNodes, YardNode, LocateYards, 700},
		{"feet", FootNodes, FootNode, LocateFeet, 300},
	} {
		if got := g.node(g.nodes - 1); got != g.last {
			t.Errorf("%s: the last node is at %g", g.name, got)
		}
		for i := range g.nodes - 1 {
			at, next := g.node(i), g.node(i+1)
			for _, share := range []float64{0, .25, .999} {
				x := at + share*(next-at)
				k, w := g.locate(x)
				if k != i || math.Abs(w-share) > 1e-9 {
					t.Fatalf("%s: %g lies at node %d + %.3f, want %d + %.3f", g.name, x, k, w, i, share)
				}
			}
		}
	}
}

func TestBeyondTheGrid(t *testing.T) {
	b := Tour()
	if b.Strokes(golf.Rough, golf.Yard/2) != b.Strokes(golf.Rough, golf.Yard) {
		t.Error("under 1 yd is not 1 yd")
	}
	slope := b.Strokes(golf.Fairway, 700*golf.Yard) - b.Strokes(golf.Fairway, 695*golf.Yard)
	if beyond := b.Strokes(golf.Fairway, 705*golf.Yard) - b.Strokes(golf.Fairway, 700*golf.Yard); math.Abs(beyond-slope) > 1e-9 || slope <= 0 {
		t.Errorf("beyond 700 yd it rises by %g, before by %g", beyond, slope)
	}
}
