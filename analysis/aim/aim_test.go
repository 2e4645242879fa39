package aim

import (
	"math"
	"testing"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

var committed = golfer.Committed()

// even is a player of one level in every part of the game.
func even(level float64) Player { return Player{golfer.Even(level), level} }

func laidOut(t testing.TB, level float64, p Picture) *Hole {
	t.Helper()
	h, err := NewHole(&committed, even(level), p, p.Green.Middle())
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// A hole without a row is the model's: two computations of one number.
func TestHoleWithoutRowsIsTheModels(t *testing.T) {
	for _, level := range []float64{70, 79, 90, 100} {
		b, err := expect.Level(level)
		if err != nil {
			t.Fatal(err)
		}
		for _, yd := range []float64{330, 380, 432, 520} {
			h := laidOut(t, level, Picture{Par: 4, Length: yd})
			driver := h.TeeShots(h.Clubs()[:1]).Clubs[0].Straight
			if want := b.Strokes(golf.Tee, golf.Yards.Of(yd)); math.Abs(driver.Cost-want) > .002 {
				t.Errorf("level %g, tee shot on %g yd: %.4f, want %.4f", level, yd, driver.Cost, want)
			}
		}
		for _, yd := range []float64{40, 90, 150, 220} {
			h := laidOut(t, level, Picture{Par: 4, Length: 400})
			for _, lie := range []golf.Lie{golf.Tee, golf.Fairway, golf.Rough, golf.Bunker, golf.Recovery} {
				flag := h.Approach(lie, Point{0, 400 - yd}, Pattern{}).Flag
				if want := b.Strokes(lie, golf.Yards.Of(yd)); math.Abs(flag.Cost-want) > .002 {
					t.Errorf("level %g, %s %g yd: %.4f, want %.4f", level, lie, yd, flag.Cost, want)
				}
			}
		}
	}
}
