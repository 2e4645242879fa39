package aim

import (
	"math"
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

// played is the mean score of many rounds on one hole, with its standard error.
func played(t *testing.T, level float64, p Picture, drawn golfer.Drawn, rounds int) (mean, sd float64) {
	t.Helper()
	player, err := golfer.NewPlayer(&committed, golfer.Even(level), []golf.CardHole{{Number: 1, Par: p.Par, Length: golf.Yards.Of(p.Length)}}, golf.StandardBoundary)
	if err != nil {
		t.Fatal(err)
	}
	if drawn != nil {
		if player, err = player.In(golfer.Style{Drawn: map[int]golfer.Drawn{1: drawn}}); err != nil {
			t.Fatal(err)
		}
	}
	sum, squares := 0.0, 0.0
	for i := range rounds {
		h := player.Play(5, uint64(i))[0]
		x := float64(h.Strokes())
		sum, squares = sum+x, squares+x*x
	}
	n := float64(rounds)
	return sum / n, math.Sqrt((squares/n - sum*sum/n/n) / n)
}

// What an aim is said to cost, and what many rounds with it come to. What is said
// takes the next stroke to be played from the centre line and to the golfer's own
// ground, so that rounds on a picture come out a little dearer: trouble stays where it
// is when the ball is beside it. What an aim saves must come out at least.
func TestRoundsOnAPictureCostWhatAimsSay(t *testing.T) {
	for _, p := range []Picture{{Par: 4, Length: 432}, dogleg(), corridor(Zone{Out, -inf, inf, 25, inf}),
		{Par: 3, Length: 160, Zones: []Zone{{Water, 120, 148, -inf, inf}}, Green: Green{149, 24, 22, 0}}} {
		h := laidOut(t, 90, p)
		adds := h.adds(golf.Tee, golf.Yards.Of(p.Length))
		best, straight := 0.0, 0.0
		if p.Par == 3 {
			a := h.Approach(golf.Tee, Point{}, Pattern{})
			best, straight = a.Best.Cost-adds, a.Flag.Cost-adds
		} else {
			advice := h.TeeShots(h.Clubs())
			best, straight = advice.Best().Best.Cost-adds, advice.Straight().Straight.Cost-adds
		}
		planned, one := played(t, 90, p, h.Playing(true, nil), 20000)
		plain, other := played(t, 90, p, h.Playing(false, nil), 20000)
		t.Logf("%g yd: planned %.3f ± %.3f, said %.3f; straight %.3f ± %.3f, said %.3f", p.Length, planned, one, best, plain, other, straight)
		if planned < best-3*one-.01 || planned > best+.15 {
			t.Errorf("%g yd: planned %.3f ± %.3f, said %.3f", p.Length, planned, one, best)
		}
		if plain-planned < straight-best-3*math.Hypot(one, other) {
			t.Errorf("%g yd: the plan saves %.3f, said %.3f", p.Length, plain-planned, straight-best)
		}
	}
}

// A picture without rows is played as the golfer's own ground is, but for how trouble
// grows about the line instead of about each stroke.
func TestRoundsWithoutRows(t *testing.T) {
	p := Picture{Par: 4, Length: 432}
	plain, one := played(t, 90, p, nil, 20000)
	drawn, other := played(t, 90, p, laidOut(t, 90, p).Playing(false, nil), 20000)
	if math.Abs(plain-drawn) > 3*math.Hypot(one, other)+.05 {
		t.Errorf("%.3f ± %.3f without a picture, %.3f ± %.3f on one without rows", plain, one, drawn, other)
	}
	t.Logf("%.3f ± %.3f without a picture, %.3f ± %.3f on one without rows", plain, one, drawn, other)
}

// onTheLine plays a hole with every ball that comes down more than 30 yd from the hole
// moved to the centre line, as far from the hole as it was and in the lie that it had.
type onTheLine struct{ playing }

func (p onTheLine) End(from, to golfer.Place) golfer.End {
	end := p.playing.End(from, to)
	if yd := Point(end.At).Distance(p.hole.fromTee.hole); end.Lie != golf.Green && !end.Again && yd > golf.MaxShortSided.Yards() {
		end.At = golfer.Place(p.hole.Short(yd, 0))
	}
	return end
}

// What rounds on a picture cost above what aims say is the place beside the line: with
// every next stroke played from the line, as aims take it, they cost the same within
// .03 and three standard errors.
func TestWhatRoundsCostMoreIsThePlaceBesideTheLine(t *testing.T) {
	for _, p := range []Picture{dogleg(), corridor(Zone{Out, -inf, inf, 25, inf}), corridor(Zone{Trees, -inf, inf, 22, inf})} {
		h := laidOut(t, 90, p)
		said := h.TeeShots(h.Clubs()).Best().Best.Cost - h.adds(golf.Tee, golf.Yards.Of(p.Length))
		there, one := played(t, 90, p, h.Playing(true, nil), 20000)
		line, other := played(t, 90, p, onTheLine{h.Playing(true, nil).(playing)}, 20000)
		t.Logf("%g yd: said %.3f; as the balls lie %.3f ± %.3f, from the line %.3f ± %.3f", p.Length, said, there, one, line, other)
		if math.Abs(line-said) > 3*other+.03 {
			t.Errorf("%g yd: from the line %.3f ± %.3f, said %.3f", p.Length, line, other, said)
		}
	}
}
