package expect

import (
	"testing"

	"strokeledger/analysis/golf"
)

// Common practice (no published source): at level 80, a chip of 8 to 20 yd
// from rough with 2 to 3 yd of green to work with costs between .05 and .30
// more than one with room.
func TestShortSideCost(t *testing.T) {
	b := level(t, 80)
	for yd := 8.0; yd <= 20; yd++ {
		for green := 2.0; green <= 3; green += .5 {
			room := golf.Shot{Lie: golf.Rough, Distance: golf.Yards.Of(yd)}
			tight := room
			tight.GreenToWork, tight.GreenKnown = golf.Yards.Of(green), true
			if cost := b.Shot(tight) - b.Shot(room); cost < .05 || cost > .30 {
				t.Errorf("%g yd with %g yd of green: costs %.3f more", yd, green, cost)
			}
		}
	}
}

// Never negative, and never more with more green, at every level.
func TestShortSideIsMonotone(t *testing.T) {
	for s := MinLevel; s <= MaxLevel; s += 3 {
		b := level(t, s)
		for _, lie := range golf.Lies[:golf.Recovery] {
			for yd := .5; yd <= 30; yd += .5 {
				shot := golf.Shot{Lie: lie, Distance: golf.Yards.Of(yd)}
				room, last := b.Shot(shot), 99.0
				for green := 0.0; green < yd; green += .25 {
					shot.GreenToWork, shot.GreenKnown = golf.Yards.Of(green), true
					e := b.Shot(shot)
					if e < room || e > last+1e-12 {
						t.Fatalf("level %g, %s %g yd, %g of green: %.4f, with room %.4f, with less green %.4f", s, lie, yd, green, e, room, last)
					}
					last = e
				}
			}
		}
	}
}

func TestShortSideCountsNearTheGreenOnly(t *testing.T) {
	b := level(t, 79)
	for _, shot := range []golf.Shot{
		{Lie: golf.Rough, Distance: 31 * golf.Yard, ShortSided: true},
		{Lie: golf.Green, Distance: 20 * golf.Foot, ShortSided: true},
		{Lie: golf.Rough, Distance: 20 * golf.Yard, GreenKnown: true, GreenToWork: 15 * golf.Yard, ShortSided: true},
	} {
		if b.Shot(shot) != b.Strokes(shot.Lie, shot.Distance) {
			t.Errorf("%+v is charged for its short side", shot)
		}
	}
	half := golf.Shot{Lie: golf.Rough, Distance: 20 * golf.Yard, ShortSided: true}
	same := golf.Shot{Lie: golf.Rough, Distance: 20 * golf.Yard, GreenKnown: true, GreenToWork: golf.RunOut(golf.Rough, 20*golf.Yard) / 2}
	if b.Shot(half) != b.Shot(same) || b.Shot(half) <= b.Strokes(half.Lie, half.Distance) {
		t.Error("short-sided without a number is not green of half the run-out")
	}
}
