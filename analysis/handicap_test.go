package analysis

import (
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/handicap"
)

func ratedRounds(all []golf.Played) []Rated {
	rated := make([]Rated, len(all))
	for i, p := range all {
		rated[i] = Rated{Played: p, Size: 18, Whole: Rating{71.5, 125}}
	}
	return rated
}

func TestHandicapFromNoneToMany(t *testing.T) {
	history := played(t, 88, 25)
	for n, thin := range map[int]golf.Thin{0: {Of: golf.ThinIndex, Need: 3}, 1: {Of: golf.ThinIndex, Have: 1, Need: 3}, 2: {Of: golf.ThinIndex, Have: 2, Need: 3}, 3: {}, 25: {}} {
		r, err := engine.Handicap(ratedRounds(history[:n]))
		if err != nil {
			t.Fatal(err)
		}
		if r.Thin != thin || r.HasIndex == thin.Any() || len(r.Entries) != n {
			t.Errorf("of %d scores: %+v, Index %v", n, r.Thin, r.HasIndex)
		}
	}
	if _, err := engine.Handicap([]Rated{{}}); err == nil {
		t.Error("a round without a target was taken")
	}
}

// Nine holes are rated as the nine they are.
func TestRatingsOfNineHoles(t *testing.T) {
	whole, front, back := Rating{71, 120}, Rating{35, 118}, Rating{36, 122}
	holes := func(from int) golf.Round {
		var r golf.Round
		for n := from; n < from+9; n++ {
			r.Holes = append(r.Holes, golf.Hole{Number: n, Par: 4})
		}
		return r
	}
	for _, c := range []struct {
		name  string
		rated Rated
		want  Rating
	}{
		{"the front nine", Rated{Played: golf.Played{Round: holes(1)}, Size: 18, Whole: whole, Front: front, Back: back}, front},
		{"the back nine", Rated{Played: golf.Played{Round: holes(10)}, Size: 18, Whole: whole, Front: front, Back: back}, back},
		{"nine across both", Rated{Played: golf.Played{Round: holes(5)}, Size: 18, Whole: whole, Front: front, Back: back}, Rating{}},
		{"a course of nine", Rated{Played: golf.Played{Round: holes(1)}, Size: 9, Whole: whole}, whole},
		{"a course of nine that is not rated, but its front", Rated{Played: golf.Played{Round: holes(1)}, Size: 9, Front: front}, front},
		{"the front nine, not rated", Rated{Played: golf.Played{Round: holes(1)}, Size: 18, Whole: whole}, Rating{}},
		{"eight holes", Rated{Played: golf.Played{Round: golf.Round{Holes: holes(1).Holes[:8]}}, Size: 18, Whole: whole, Front: front}, whole},
	} {
		if got := c.rated.ofHoles(); got != c.want {
			t.Errorf("%s: %+v, want %+v", c.name, got, c.want)
		}
	}
}

// A picked-up hole counts what the golfer of the target still takes.
func TestPickedUpHolesInAHandicap(t *testing.T) {
	hole := golf.Hole{Number: 1, Par: 4, PickedUp: true, Shots: []golf.Shot{{Lie: golf.Tee, Distance: 400 * golf.Yard}, {Lie: golf.Fairway, Distance: 150 * golf.Yard}, {Lie: golf.Green, Distance: 30 * golf.Foot}}}
	s, err := Rated{Played: golf.Played{Target: 79, Round: golf.Round{Holes: []golf.Hole{hole}}}, Indexes: []int{7}}.score()
	if err != nil {
		t.Fatal(err)
	}
	if want := (handicap.Hole{Par: 4, Index: 7, Strokes: 4}); s.Holes[0] != want {
		t.Errorf("%+v, want %+v: two strokes, and two putts from 30 ft", s.Holes[0], want)
	}
}
