// Package golftest answers "does this hold for every legal round?": it draws
// random ones for property tests, the unlikely ones too.
//
// It refuses to draw likely golf; whether a golfer plays like people is tested
// elsewhere.
package golftest

import (
	"fmt"

	"pgregory.net/rapid"

	"strokeledger/analysis/golf"
)

// Rounds draws legal rounds of 1 to 18 holes in any order: every lie and unit,
// penalties of each kind, holes in one and of 12 strokes, short sides, holes
// picked up and holes known by their score alone. Some holes go nearer the hole
// stroke by stroke, the rest anywhere; some courses are so short or so long that
// no level reaches their target.
func Rounds() *rapid.Generator[golf.Round] {
	return rapid.Custom(func(t *rapid.T) golf.Round {
		r := golf.Round{
			ID:     rapid.StringMatching(`[a-z=+'@-]{1,3}[a-z ]{0,3}[a-z0-9]{1,4}`).Draw(t, "id"),
			Date:   golf.Date{Year: rapid.IntRange(1990, 2030).Draw(t, "year"), Month: 5, Day: rapid.IntRange(1, 31).Draw(t, "day")},
			Player: Text().Draw(t, "player"), Course: Text().Draw(t, "course"), Tee: Text().Draw(t, "tee"),
		}
		length := rapid.SampledFrom(courses).Draw(t, "lengths")
		numbers := rapid.Permutation([]int{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18}).Draw(t, "order")
		for _, n := range numbers[:rapid.IntRange(1, 18).Draw(t, "holes")] {
			r.Holes = append(r.Holes, hole(t, n, length))
		}
		return r
	})
}

// courses are the shortest and longest hole of a course in yards.
var courses = [][2]int{{1, 700}, {100, 600}, {1, 60}, {600, 700}}

// Text draws a text of at most eight letters, a name or a club. Some would be run by
// a spreadsheet, hold its separators and quotes, or are empty.
func Text() *rapid.Generator[string] {
	return rapid.OneOf(rapid.Just(""), rapid.StringMatching(`[=+@'a-zé"-]([a-z",; é=]{0,6}[a-z"'])?`))
}

// hole draws a hole whose length in yards lies between two ends. One in ten is
// known by its score alone, one in ten is picked up.
func hole(t *rapid.T, number int, length [2]int) golf.Hole {
	h := golf.Hole{Number: number, Par: rapid.IntRange(3, 6).Draw(t, "par")}
	tee := golf.Shot{Lie: golf.Tee, Distance: golf.Distance(rapid.IntRange(length[0], length[1]).Draw(t, "length")) * golf.Yard}
	h.Shots = []golf.Shot{tee}
	switch rapid.IntRange(0, 9).Draw(t, "kind of hole") {
	case 0:
		h.ScoreOnly = rapid.IntRange(1, 20).Draw(t, "score")
		return h
	case 1:
		h.PickedUp = true
	}
	nearer := rapid.Bool().Draw(t, "nearer each time")
	for range rapid.IntRange(0, 11).Draw(t, "more strokes") {
		h.Shots = append(h.Shots, next(t, &h.Shots[len(h.Shots)-1], nearer))
	}
	return h
}

// next draws the shot after another, which it may charge with a penalty: the same
// again, for stroke and distance, or from anywhere, or from no farther.
func next(t *rapid.T, last *golf.Shot, nearer bool) golf.Shot {
	last.Penalty = rapid.SampledFrom([]int{0, 0, 0, 0, 0, 0, 0, 1, 1, 2, 9}).Draw(t, "penalty")
	if last.Penalty > 0 && rapid.Bool().Draw(t, "stroke and distance") {
		again := *last
		again.Penalty = 0
		return again
	}
	if nearer {
		return shot(t, last.Distance)
	}
	return shot(t, golf.MaxDistance)
}

// shot draws a shot from most or nearer, or from a tenth of its unit where that is
// farther. A unit that is the usual one of the lie is left out, as readers do.
func shot(t *rapid.T, most golf.Distance) golf.Shot {
	s := golf.Shot{
		Lie: rapid.SampledFrom(golf.Lies[1:]).Draw(t, "lie"), Club: Text().Draw(t, "club"),
		Miss: golf.Miss{Side: golf.Side(rapid.IntRange(0, 2).Draw(t, "side")), Depth: golf.Depth(rapid.IntRange(0, 2).Draw(t, "depth"))},
	}
	s.Unit = rapid.SampledFrom([]golf.Unit{0, 0, golf.Yards, golf.Metres, golf.Feet}).Draw(t, "unit")
	if s.Unit == s.Lie.Unit() {
		s.Unit = 0
	}
	if s.Lie == golf.Green {
		most = min(most, golf.MaxPutt)
	}
	s.Distance = distance(t, s.WrittenUnit(), most)
	if s.Lie != golf.Green && s.Distance <= golf.MaxShortSided {
		shortSide(t, &s)
	}
	return s
}

// shortSide draws whether a shot is short-sided and over how much green it plays,
// which may be 0 and is less than the distance.
func shortSide(t *rapid.T, s *golf.Shot) {
	s.ShortSided = rapid.Bool().Draw(t, "short-sided")
	if green := golf.Distance(rapid.IntRange(0, 90).Draw(t, "green")) * golf.Yard / 10; green < s.Distance && rapid.Bool().Draw(t, "green known") {
		s.GreenToWork, s.GreenKnown = green, true
	}
}

// distance draws a whole number of tenths of a unit: half of them at most 30, half
// at most 200 of the unit, so that short ones are not rare.
func distance(t *rapid.T, unit golf.Unit, most golf.Distance) golf.Distance {
	limit := 2000
	if rapid.Bool().Draw(t, "near") {
		limit = 300
	}
	limit = max(1, min(limit, int(10*unit.In(most))))
	return unit.Of(float64(rapid.IntRange(1, limit).Draw(t, "tenths")) / 10)
}

// Legal fails the test when a round is not legal: the generator's own check. It
// takes a *testing.T as well as a *rapid.T.
func Legal(t interface{ Fatalf(string, ...any) }, r golf.Round) {
	if problems := r.Check(); problems != nil {
		t.Fatalf("not a legal round: %v", fmt.Sprint(problems))
	}
}
