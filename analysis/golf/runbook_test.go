package golf_test

import (
	"math"
	"testing"

	"strokeledger/analysis/golf"
)

// chips is a book with a wedge that runs 9.5 yd, a lob wedge that runs half its
// carry, and from the rough a wedge that runs farther than a standard chip.
func chips() golf.RunBook {
	return golf.RunBook{
		{Club: "pw", Lie: golf.Fairway, Start: 9.5, From: 9, To: 16},
		{Club: "lw", Lie: golf.Fairway, Slope: .5, From: 5, To: 14},
		{Club: "pw", Lie: golf.Rough, Start: 9, From: 2, To: 16},
	}
}

// Of the clubs that reach the hole from the trials they have, the one that runs least
// counts: a wedge that runs half its carry lands an 18 yd shot at 12 and runs 6.
func TestTheClubThatRunsLeastCounts(t *testing.T) {
	for _, c := range []struct {
		why     string
		lie     golf.Lie
		yd, run float64
		known   bool
	}{
		{"half the carry", golf.Fairway, 18, 6, true},
		{"too far for the lob wedge, which would carry 16", golf.Fairway, 24, 9.5, true},
		{"too near for both: the lob wedge would carry 4", golf.Fairway, 6, 0, false},
		{"too far for both", golf.Fairway, 29, 0, false},
		{"from the rough", golf.Rough, 18, 9, true},
		{"the ball would run past the hole from where it lies", golf.Rough, 8, 0, false},
		{"the book has no bunker", golf.Bunker, 18, 0, false},
	} {
		run, known := chips().Run(c.lie, golf.Yards.Of(c.yd))
		if known != c.known || math.Abs(run.Yards()-c.run) > 1e-9 && known {
			t.Errorf("%s: %g yd, %v", c.why, run.Yards(), known)
		}
	}
	if _, known := golf.RunBook(nil).Run(golf.Rough, 18*golf.Yard); known {
		t.Error("an empty book says something")
	}
}

// Green that was not measured is half the player's own run-out where a book has it.
// Green that was measured is compared with a standard chip, book or not.
func TestTheBookSaysHowMuchGreenIsMissing(t *testing.T) {
	short := golf.Shot{Lie: golf.Rough, Distance: 10 * golf.Yard, ShortSided: true}
	with := func(change func(*golf.Shot)) golf.Shot {
		s := short
		change(&s)
		return s
	}
	back := golf.RunBook{{Club: "lw", Lie: golf.Rough, Start: -1, From: 5, To: 15}}
	for _, c := range []struct {
		why     string
		shot    golf.Shot
		book    golf.RunBook
		missing float64
		asks    bool
	}{
		{"without a book", short, nil, 2.75, true},
		{"by the book", with(func(s *golf.Shot) { s.Distance = 12 * golf.Yard }), chips(), 4.5, true},
		{"a book that does not reach", with(func(s *golf.Shot) { s.Distance = 27 * golf.Yard }), chips(), 4.25, true},
		{"a ball that comes back", short, back, 0, true},
		{"measured green", with(func(s *golf.Shot) { s.Distance, s.GreenKnown, s.GreenToWork = 12*golf.Yard, true, 4*golf.Yard }), chips(), 2.1, false},
		{"much green, measured", with(func(s *golf.Shot) { s.Distance, s.GreenKnown, s.GreenToWork = 12*golf.Yard, true, 8*golf.Yard }), chips(), 0, false},
		{"no short side", with(func(s *golf.Shot) { s.Distance, s.ShortSided = 12*golf.Yard, false }), chips(), 0, false},
		{"from sand", with(func(s *golf.Shot) { s.Distance, s.Lie = 12*golf.Yard, golf.Bunker }), chips(), 1.525, false},
		{"too far", with(func(s *golf.Shot) { s.Distance = 31 * golf.Yard }), chips(), 0, false},
	} {
		shots := []golf.Shot{c.shot}
		if shots[0].AsksBook() != c.asks {
			t.Errorf("%s: asks for a book: %v", c.why, !c.asks)
		}
		c.book.Fill(shots)
		if got := shots[0].Shortfall().Yards(); math.Abs(got-c.missing) > 1e-9 {
			t.Errorf("%s: %g yd missing, want %g", c.why, got, c.missing)
		}
		golf.RunBook(nil).Fill(shots)
		if shots[0] != c.shot {
			t.Errorf("%s: what another book said stays", c.why)
		}
	}
}
