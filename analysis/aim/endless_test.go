package aim

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

// A picture on which no ball can stay in play is refused, with the row that makes it so.
func TestPictureWithoutPlayIsRefused(t *testing.T) {
	for rows, want := range map[string]string{
		"out open to open": "line 1: the tee is out of bounds; allowed: a tee in bounds",
		"rough 0 to 100\nout open to 20, across -5 to 5": "line 2: the tee is out of bounds; allowed: a tee in bounds",
		"out 380 to open": "line 1: the hole is out of bounds; allowed: a hole in bounds",
		"out 100 to open\ngreen 388: 24 wide, 24 deep":                  "line 1: 288 of the 400 yd of the line are out of bounds; allowed: at most half of them",
		"out open to open\nrough open to 20":                            "line 1: the hole is out of bounds; allowed: a hole in bounds",
		"out 100 to 380, across -1 to 1\nwater 0 to 500, across 5 to 9": "line 1: 282 of the 400 yd of the line are out of bounds; allowed: at most half of them",
	} {
		if _, faults := ParseRows(4, 400, rows); strings.TrimSpace(faults.Error()) != want {
			t.Errorf("%q: %q, want %q", rows, faults.Error(), want)
		}
	}
	for _, rows := range []string{"out open to open, across 30 to open", "out 200 to 260", "water open to open", "out open to open, across -40 to open\nrough open to open, across -30 to 30"} {
		if _, faults := ParseRows(4, 400, rows); faults != nil {
			t.Errorf("%q is refused: %v", rows, faults)
		}
	}
}

// ends checks that rounds on a picture end, and that what it says of aims is finite.
func ends(t rapid.TB, p Picture, level float64, rounds int) {
	h, err := NewHole(&committed, even(level), p, p.Green.Middle())
	if err != nil {
		t.Fatal(err)
	}
	costs := map[string]float64{}
	if p.Par == golf.MinPar {
		a := h.Approach(golf.Tee, Point{}, Pattern{})
		costs["best"], costs["at the flag"] = a.Best.Cost, a.Flag.Cost
	} else {
		for _, c := range h.TeeShots(h.Clubs()).Clubs {
			costs[c.Club.Name+", best"], costs[c.Club.Name+", straight"] = c.Best.Cost, c.Straight.Cost
		}
	}
	for what, cost := range costs {
		if !(cost > 1 && cost < 120) {
			t.Errorf("%s: %g strokes on\n%s", what, cost, p.Rows())
		}
	}
	for _, planned := range []bool{false, true} {
		for i, h := range playsOn(t, level, p, h.Playing(planned, nil), rounds) {
			if len(h.Shots) > 60 {
				t.Fatalf("round %d: %d shots on\n%s", i, len(h.Shots), p.Rows())
			}
		}
	}
}

// playsOn plays a hole some times.
func playsOn(t rapid.TB, level float64, p Picture, drawn golfer.Drawn, rounds int) (all []golf.Hole) {
	player, err := golfer.NewPlayer(&committed, golfer.Even(level), []golf.CardHole{{Number: 1, Par: p.Par, Length: golf.Yards.Of(p.Length)}}, golf.StandardBoundary)
	if err != nil {
		t.Fatal(err)
	}
	if player, err = player.In(golfer.Style{Drawn: map[int]golfer.Drawn{1: drawn}}); err != nil {
		t.Fatal(err)
	}
	for i := range rounds {
		all = append(all, player.Play(5, uint64(i))[0])
	}
	return all
}

// thread is ground on the line that no ball will find.
var thread = Zone{Rough, -inf, inf, -1e-6, 1e-6}

// Every round ends, and every cost is a number, on the worst that may be drawn.
func TestEveryHoleEnds(t *testing.T) {
	everywhere := func(k Kind) Zone { return Zone{k, -inf, inf, -inf, inf} }
	green := Green{388, 24, 24, 0}
	for name, zones := range map[string][]Zone{
		"out but for a thread": {everywhere(Out), thread}, "water everywhere": {everywhere(Water)}, "trees everywhere": {everywhere(Trees)},
		"sand everywhere": {everywhere(Bunker)}, "out but for a slit": {everywhere(Out), {Rough, -inf, inf, -.5, .5}},
		"water but for a slit": {everywhere(Water), {Rough, -inf, inf, -.5, .5}},
	} {
		t.Run(name, func(t *testing.T) {
			for _, level := range []float64{70, 108} {
				ends(t, Picture{Par: 4, Length: 400, Zones: zones}, level, 100)
				ends(t, Picture{Par: 4, Length: 400, Zones: zones, Green: green}, level, 100)
				ends(t, Picture{Par: 3, Length: 160, Zones: zones}, level, 100)
			}
		})
	}
}

func TestEveryHoleThatMayBeDrawnEnds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ends(t, drawn().Draw(t, "picture"), 95, 20)
	})
}

// Two computations of one number: where every ball goes out, what an aim is said to cost
// is ten balls with their penalties and the strokes from the drop.
func TestCostWhereEveryBallGoesOut(t *testing.T) {
	h := laidOut(t, 90, Picture{Par: 4, Length: 400, Zones: []Zone{{Out, -inf, inf, -inf, inf}, thread}})
	driver := h.TeeShots(h.Clubs()[:1]).Clubs[0].Straight
	rough, _ := h.fromTee.strokes(golf.Rough, Point{0, 200})
	if want := 2*golfer.MostAgain + rough + h.adds(golf.Tee, golf.Yards.Of(400)); math.Abs(driver.Cost-want) > 1 {
		t.Errorf("%.3f strokes, want %.3f", driver.Cost, want)
	}
}
