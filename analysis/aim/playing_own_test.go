package aim

import (
	"math"
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

// offTheTee is where the tee shot of a hole ends that is struck as it is aimed, right of
// the line from the tee straight up, and how far it goes.
func offTheTee(h *Hole, drawn golfer.Drawn) (right, far float64) {
	reach := h.tee.Reach(golf.Tee)
	heading, target := drawn.Aim(golfer.Place{}, golf.Tee, h.tee.Target(golf.Tee, h.fromTee.m.picture.Length), reach)
	return target * math.Sin(heading), target
}

// The level holds the player's lengths and misses already. So in simulated rounds a
// slice does not make a hole dearer, since the aim allows for it; the longest club goes
// as far as the level, whatever the bag says; and a shorter one as far as it goes.
func TestOwnClubsInSimulatedRounds(t *testing.T) {
	open := laidOut(t, 84, Picture{Par: 4, Length: 432})
	reach := open.tee.Reach(golf.Tee)
	for _, c := range []Club{{Name: "driver", Length: reach}, {Name: "driver", Length: reach + 30, Own: true}, {Name: "driver", Length: reach - 30, Own: true},
		{Name: "driver", Length: reach, Pattern: Pattern{Side: 12}}, {Name: "driver", Length: reach, Pattern: Pattern{Side: -9}}} {
		right, far := offTheTee(open, open.Playing(true, []Club{c}))
		if math.Abs(right) > 1.5 || math.Abs(far-reach) > .01 {
			t.Errorf("%+v ends %.1f yd right after %.1f yd; want 0 and %.1f", c, right, far, reach)
		}
	}
	// a stream that the driver reaches and a hybrid of the bag does not
	stream := laidOut(t, 84, Picture{Par: 4, Length: 400, Zones: []Zone{{Water, reach - 25, reach + 25, -inf, inf}}})
	clubs := []Club{{Name: "driver", Length: reach + 10, Own: true}, {Name: "hybrid", Length: 171, Own: true, Pattern: Pattern{Side: 8}}}
	if best := stream.TeeShots(clubs).Best().Club.Name; best != "hybrid" {
		t.Fatalf("the %s is best", best)
	}
	if right, far := offTheTee(stream, stream.Playing(true, clubs)); math.Abs(right) > 1.5 || math.Abs(far-171) > 1e-9 {
		t.Errorf("the hybrid ends %.1f yd right after %.1f yd", right, far)
	}
	if right, far := offTheTee(stream, stream.Playing(false, clubs)); math.Abs(right) > 1e-9 || math.Abs(far-reach) > .01 {
		t.Errorf("straight, the driver ends %.1f yd right after %.1f yd", right, far)
	}
	// with the level's own clubs nothing changes
	one, other := stream.Playing(true, nil), stream.Playing(true, stream.Clubs())
	a, b := offTheTee(stream, one)
	c, d := offTheTee(stream, other)
	if math.Abs(a-c) > 1e-9 || math.Abs(b-d) > 1e-9 {
		t.Errorf("%.2f %.2f and %.2f %.2f", a, b, c, d)
	}
}

// What was chosen off the tee is played in place of the best aim: that club, so far
// right of the middle; the player's own balls end where it lets them end. A club that is
// none of the player's leaves the best aim. On a par 3 an aim by the flag is played.
func TestAChosenTeeShotIsPlayed(t *testing.T) {
	open := laidOut(t, 84, Picture{Par: 4, Length: 432})
	reach := open.tee.Reach(golf.Tee)
	clubs := []Club{{Name: "driver", Length: reach + 10, Own: true}, {Name: "hybrid", Length: 180, Own: true, Pattern: Pattern{Side: 8}}}
	for _, c := range []struct {
		clubs      []Club
		chosen     Chosen
		right, far float64
	}{
		{clubs, Chosen{Club: "Hybrid", Side: -20}, -12, 180},
		{clubs, Chosen{Club: "driver", Side: 15}, 15, reach},
		{nil, Chosen{Club: "fairway wood", Side: 6}, 6, .92 * reach},
	} {
		right, far := offTheTee(open, open.PlayingChosen(c.clubs, c.chosen))
		if math.Abs(right-c.right) > .2 || math.Abs(far-c.far) > .01 {
			t.Errorf("%+v ends %.1f yd right after %.1f yd; want %.1f and %.1f", c.chosen, right, far, c.right, c.far)
		}
	}
	a, b := offTheTee(open, open.PlayingChosen(clubs, Chosen{Club: "spoon", Side: 30}))
	c, d := offTheTee(open, open.Playing(true, clubs))
	if a != c || b != d {
		t.Errorf("a club that is none of the player's: %.2f %.2f, the best aim %.2f %.2f", a, b, c, d)
	}
	short := laidOut(t, 84, Picture{Par: 3, Length: 160, Green: Green{Front: 150, Width: 24, Depth: 22}})
	yd := Point{}.Distance(short.fromTee.hole)
	heading, target := short.PlayingChosen(nil, Chosen{Side: 9, Long: -4}).Aim(golfer.Place{}, golf.Tee, yd, yd+30)
	if right := target * math.Sin(heading); math.Abs(right-9) > .01 || math.Abs(target-(yd-4)) > .01 {
		t.Errorf("an aim 9 yd right and 4 short: %.1f yd right, %.1f of %.1f yd", right, target, yd)
	}
}
