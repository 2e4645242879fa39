package analysis

import (
	"math"
	"testing"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
)

// stripRound is a round of two holes of the reference course: the first as
// given, the second with its score alone.
func stripRound(shots ...golf.Shot) golf.Played {
	card := expect.ReferenceCourse()
	tee := golf.Shot{Lie: golf.Tee, Distance: card[0].Length}
	return golf.Played{Target: 79, Round: golf.Round{Holes: []golf.Hole{
		{Number: 1, Par: card[0].Par, Shots: append([]golf.Shot{tee}, shots...)},
		{Number: 2, Par: card[1].Par, ScoreOnly: 9, Shots: []golf.Shot{{Lie: golf.Tee, Distance: card[1].Length}}},
	}}}
}

func stripInput(history ...golf.Played) StripInput {
	return StripInput{History: history, Card: expect.ReferenceCourse(), Par18: 72, Target: 79, Boundary: golf.StandardBoundary}
}

// The steps of a hole are its shots, and what they lost adds up to what the hole
// lost in the mean.
func TestStripAddsUp(t *testing.T) {
	good := stripRound(golf.Shot{Lie: golf.Fairway, Distance: 150 * golf.Yard}, golf.Shot{Lie: golf.Green, Distance: 20 * golf.Foot}, golf.Shot{Lie: golf.Green, Distance: 2 * golf.Foot})
	bad := stripRound(golf.Shot{Lie: golf.Recovery, Distance: 190 * golf.Yard}, golf.Shot{Lie: golf.Rough, Distance: 130 * golf.Yard}, golf.Shot{Lie: golf.Bunker, Distance: 20 * golf.Yard},
		golf.Shot{Lie: golf.Rough, Distance: 15 * golf.Yard}, golf.Shot{Lie: golf.Green, Distance: 9 * golf.Foot})
	s := NewStrip(stripInput(good, bad))
	if s.Hole.Number != 1 || len(s.Holes) != 1 || s.Holes[0].Rounds != 2 {
		t.Fatalf("%+v", s)
	}
	sum, played := 0.0, map[int]int{}
	for _, step := range s.Steps {
		sum += step.Lost
		played[step.Stroke] = len(step.From)
	}
	if math.Abs(sum-s.Holes[0].Lost) > 1e-9 {
		t.Errorf("steps lose %v, the hole %v", sum, s.Holes[0].Lost)
	}
	for stroke, want := range map[int]int{1: 2, 2: 2, 3: 1, LaterStrokes: 2, 0: 3} {
		if played[stroke] != want {
			t.Errorf("stroke %d was played %d times, want %d", stroke, played[stroke], want)
		}
	}
}

// The target's golfer plays a stroke from where exactly that many strokes are
// left; past the green there is no such place.
func TestStripTarget(t *testing.T) {
	s := NewStrip(stripInput(stripRound(golf.Shot{Lie: golf.Fairway, Distance: 150 * golf.Yard}, golf.Shot{Lie: golf.Rough, Distance: 30 * golf.Yard})))
	lens, _ := expect.ForTarget(expect.ReferenceCourse(), 79)
	left := lens.Strokes(golf.Tee, s.Hole.Length) - 1
	if got := lens.Strokes(golf.Fairway, s.Steps[1].Target); math.Abs(got-left) > 1e-6 || s.Steps[0].Target != s.Hole.Length {
		t.Errorf("%v strokes left from %v yd, want %v", got, s.Steps[1].Target.Yards(), left)
	}
	if s.Steps[2].Target != 0 {
		t.Errorf("a third stroke of a par 4 from %v yd", s.Steps[2].Target.Yards())
	}
}

// A hole is chosen by its number, otherwise it is the costliest; without a hole
// played shot by shot there is no strip.
func TestStripChoosesAHole(t *testing.T) {
	card := expect.ReferenceCourse()
	both := stripRound(golf.Shot{Lie: golf.Green, Distance: 2 * golf.Foot})
	both.Round.Holes[1] = golf.Hole{Number: 2, Par: 4, Shots: []golf.Shot{{Lie: golf.Tee, Distance: card[1].Length}, {Lie: golf.Tee, Distance: card[1].Length}, {Lie: golf.Green, Distance: 40 * golf.Foot}}}
	strange := both
	strange.Round.Holes = []golf.Hole{{Number: 19, Par: 3, Shots: []golf.Shot{{Lie: golf.Tee, Distance: 100 * golf.Yard}}}}
	for asked, want := range map[int]int{0: 2, 1: 1, 2: 2, 9: 2, -4: 2} {
		in := stripInput(both, strange)
		in.Hole = asked
		if got := NewStrip(in); got.Hole.Number != want || len(got.Holes) != 2 {
			t.Errorf("asked for %d: hole %d of %d", asked, got.Hole.Number, len(got.Holes))
		}
	}
	if s := NewStrip(stripInput()); len(s.Holes) != 0 || s.Steps != nil {
		t.Errorf("%+v", s)
	}
	if s := NewStrip(StripInput{Target: 79, Boundary: golf.StandardBoundary, History: []golf.Played{both}}); len(s.Holes) != 0 {
		t.Errorf("a course without holes: %+v", s)
	}
}
