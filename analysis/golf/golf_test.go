package golf_test

import (
	"math"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golf/golftest"
)

// Source: international yard and pound agreement, 1959: 1 yd is 0.9144 m.
func TestDistancesKeepTheirUnits(t *testing.T) {
	if m := (100 * golf.Yard).Metres(); math.Abs(m-91.44) > 1e-12 {
		t.Errorf("100 yd are %.12f m", m)
	}
	rapid.Check(t, func(t *rapid.T) {
		n := float64(rapid.IntRange(0, 700).Draw(t, "n"))
		if golf.Yards.Of(n).Yards() != n || golf.Feet.Of(n).Feet() != n || math.Abs(golf.Metres.Of(n).Metres()-n) > 1e-9 {
			t.Fatalf("%g does not come back", n)
		}
	})
}

func TestNamesComeBack(t *testing.T) {
	for _, l := range golf.Lies {
		if got, err := golf.ParseLie(strings.ToUpper(l.String())); err != nil || got != l {
			t.Errorf("%s: %v, %v", l, got, err)
		}
	}
	for _, u := range golf.Units {
		if got, err := golf.ParseUnit(strings.ToUpper(u.String())); err != nil || got != u {
			t.Errorf("%s: %v, %v", u, got, err)
		}
	}
	for side := range golf.Side(3) {
		for depth := range golf.Depth(3) {
			m := golf.Miss{Side: side, Depth: depth}
			if got, err := golf.ParseMiss(m.String()); err != nil || got != m {
				t.Errorf("%q: %v, %v", m, got, err)
			}
		}
	}
	if m, err := golf.ParseMiss("Left-Short"); err != nil || m.String() != "short-left" {
		t.Errorf("%q, %v", m, err)
	}
}

func TestNamesThatAreRefused(t *testing.T) {
	for _, s := range []string{"", "fringe", "moon"} {
		if _, err := golf.ParseLie(s); err == nil || !strings.Contains(err.Error(), "recovery") {
			t.Errorf("lie %q: %v", s, err)
		}
	}
	for _, s := range []string{"", "km", "yards"} {
		if _, err := golf.ParseUnit(s); err == nil {
			t.Errorf("unit %q was read", s)
		}
	}
	for _, s := range []string{"left-right", "short-long", "left-", "-", "wide", "left-short-left"} {
		if _, err := golf.ParseMiss(s); err == nil {
			t.Errorf("miss %q was read", s)
		}
	}
	for _, s := range []string{"", "2026-02-30", "2026-5-2", "02.05.2026", "2026-05-02T10:00:00Z", "0000-01-01"} {
		if _, err := golf.ParseDate(s); err == nil {
			t.Errorf("date %q was read", s)
		}
	}
}

func TestZeroValuesHaveNoName(t *testing.T) {
	if golf.Lie(0).String()+golf.Unit(0).String()+golf.Category(0).String()+(golf.Miss{}).String()+(golf.Date{}).String()+golf.Lie(99).String() != "" {
		t.Error("a zero value has a name")
	}
}

func TestDates(t *testing.T) {
	d, err := golf.ParseDate("2026-12-31")
	if err != nil || d.String() != "2026-12-31" || d != (golf.Date{Year: 2026, Month: time.December, Day: 31}) {
		t.Fatalf("%v, %v", d, err)
	}
	next := d.AddDays(1)
	if next.String() != "2027-01-01" || d.Compare(next) != -1 || next.Compare(d) != 1 || d.Compare(d) != 0 || !(golf.Date{}).IsZero() {
		t.Errorf("the day after is %s", next)
	}
}

func TestCategoryOf(t *testing.T) {
	for _, c := range []struct {
		lie  golf.Lie
		d    golf.Distance
		par  int
		want golf.Category
	}{
		{golf.Tee, 400 * golf.Yard, 4, golf.TeeShots}, {golf.Tee, 40 * golf.Yard, 4, golf.TeeShots}, {golf.Tee, 600 * golf.Yard, 6, golf.TeeShots},
		{golf.Tee, 150 * golf.Yard, 3, golf.Approach}, {golf.Tee, 45 * golf.Yard, 3, golf.ShortGame},
		{golf.Fairway, 50 * golf.Yard, 4, golf.ShortGame}, {golf.Fairway, 51 * golf.Yard, 4, golf.Approach},
		{golf.Recovery, 200 * golf.Yard, 5, golf.Approach}, {golf.Green, 90 * golf.Foot, 4, golf.Putting},
	} {
		if got := golf.CategoryOf(c.lie, c.d, c.par, golf.StandardBoundary); got != c.want {
			t.Errorf("%s %g yd on a par %d is %s, want %s", c.lie, c.d.Yards(), c.par, got, c.want)
		}
	}
}

// Common practice (no published source): the standard run-out.
func TestRunOutAndShortfall(t *testing.T) {
	for _, c := range []struct {
		lie       golf.Lie
		yd, yards float64
	}{{golf.Rough, 10, 5.5}, {golf.Rough, 30, 8.5}, {golf.Fairway, 10, 4.125}, {golf.Bunker, 10, 2.75}, {golf.Green, 10, 0}} {
		if got := golf.RunOut(c.lie, golf.Yards.Of(c.yd)).Yards(); math.Abs(got-c.yards) > 1e-9 {
			t.Errorf("%s %g yd runs out %g yd, want %g", c.lie, c.yd, got, c.yards)
		}
	}
	shot := golf.Shot{Lie: golf.Rough, Distance: 10 * golf.Yard}
	for _, c := range []struct {
		name   string
		change func(*golf.Shot)
		yards  float64
	}{
		{"nothing said", func(*golf.Shot) {}, 0},
		{"short-sided", func(s *golf.Shot) { s.ShortSided = true }, 2.75},
		{"2 yd of green", func(s *golf.Shot) { s.GreenKnown, s.GreenToWork = true, 2*golf.Yard }, 3.5},
		{"plenty of green overrules", func(s *golf.Shot) { s.ShortSided, s.GreenKnown, s.GreenToWork = true, true, 8*golf.Yard }, 0},
		{"too far", func(s *golf.Shot) { s.ShortSided, s.Distance = true, 31*golf.Yard }, 0},
		{"on the green", func(s *golf.Shot) { s.ShortSided, s.Lie = true, golf.Green }, 0},
	} {
		s := shot
		c.change(&s)
		if got := s.Shortfall().Yards(); math.Abs(got-c.yards) > 1e-9 {
			t.Errorf("%s: %g yd missing, want %g", c.name, got, c.yards)
		}
	}
}

func TestStrokesOfAHole(t *testing.T) {
	tee := golf.Shot{Lie: golf.Tee, Distance: 400 * golf.Yard, Penalty: 1}
	again := golf.Shot{Lie: golf.Tee, Distance: 400 * golf.Yard}
	putt := golf.Shot{Lie: golf.Green, Distance: 9 * golf.Foot}
	for _, c := range []struct {
		name   string
		hole   golf.Hole
		want   int
		played int
	}{
		{"holed", golf.Hole{Shots: []golf.Shot{tee, again, putt}}, 4, 3},
		{"picked up", golf.Hole{Shots: []golf.Shot{tee, again, putt}, PickedUp: true}, 3, 2},
		{"score alone", golf.Hole{Shots: []golf.Shot{again}, ScoreOnly: 7}, 7, 0},
		{"nothing yet", golf.Hole{}, 0, 0},
	} {
		if got := c.hole.Strokes(); got != c.want || len(c.hole.Played()) != c.played {
			t.Errorf("%s: %d strokes, %d shots played", c.name, got, len(c.hole.Played()))
		}
	}
}

func TestRandomRoundsAreLegal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { golftest.Legal(t, golftest.Rounds().Draw(t, "round")) })
}

func TestProblemsOfARound(t *testing.T) {
	tee := golf.Shot{Lie: golf.Tee, Distance: 400 * golf.Yard}
	r := golf.Round{Holes: []golf.Hole{
		{Number: 1, Par: 4, Shots: []golf.Shot{tee}},
		{Number: 1, Par: 2, Shots: []golf.Shot{{Lie: golf.Rough, Distance: 900 * golf.Yard, Penalty: 10}}},
		{Number: 3, Par: 4},
		{Number: 4, Par: 4, ScoreOnly: 5, PickedUp: true, Shots: []golf.Shot{tee, {}}},
		{Number: 5, Par: 4, PickedUp: true, Shots: []golf.Shot{{Lie: golf.Tee, Distance: golf.Distance(math.NaN()), Penalty: 1}}},
	}}
	want := strings.TrimSpace(`
date: no day of play, allowed: YYYY-MM-DD
hole 1, hole: hole comes again, read "1", allowed: each hole once
hole 1, par: out of range, read "2", allowed: 3 to 6
hole 1, shot 1, distance: out of range, read "900", allowed: over 0, at most 700 yd
hole 1, shot 1, penalty: out of range, read "10", allowed: 0 to 9
hole 1, shot 1, lie: a hole starts on the tee, read "rough", allowed: tee
hole 3, shot: no shot, allowed: at least one
hole 4, shot 1, score_only: the hole has other shots, read "2", allowed: one row for the whole hole
hole 4, shot 1, picked_up: the hole is known by its score alone, read "yes", allowed: one of picked_up and score_only
hole 4, shot 2, lie: no lie, allowed: tee, fairway, rough, bunker, recovery, green
hole 5, shot 1, distance: out of range, read "NaN", allowed: over 0, at most 700 yd
hole 5, shot 1, penalty: the shot where the ball was picked up was not played, read "1", allowed: 0`)
	if diff := cmp.Diff(want, r.Check().Error()); diff != "" {
		t.Error(diff)
	}
	if err := (golf.Problems{}).Err(); err != nil {
		t.Errorf("no problems are an error: %v", err)
	}
	if ps := (golf.Round{Date: golf.Date{Year: 2026, Month: 5, Day: 2}}).Check(); len(ps) != 1 {
		t.Errorf("a round without holes: %v", ps)
	}
}
