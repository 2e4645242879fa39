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
