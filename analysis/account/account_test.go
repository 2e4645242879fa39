package account

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golf/golftest"
)

// drawTerms draws whom a round is compared with: its target, a level or the
// tour, and a boundary of the short game.
func drawTerms(t *rapid.T, r golf.Round) (Terms, float64) {
	level := rapid.Float64Range(expect.MinLevel, expect.MaxLevel).Draw(t, "level")
	fixed, err := expect.Level(level)
	if err != nil {
		t.Fatal(err)
	}
	terms := Terms{Fixed: fixed, Boundary: golf.Distance(rapid.IntRange(30, 100).Draw(t, "boundary")) * golf.Yard}
	switch rapid.IntRange(0, 2).Draw(t, "lens") {
	case 0:
		terms.Lens = fixed
	case 1:
		terms.Lens = expect.Tour()
	default:
		target := r.TargetOf(level, 0)
		terms.Lens, terms.Course = expect.ForTarget(r.Card(), target)
		return terms, target
	}
	return terms, terms.Lens.Course(r.Card())
}

// The promise: strokes lost are the score less what is compared with, exactly,
// and bands, holes and shots add up to the same.
func TestIdentity(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := golftest.Rounds().Draw(t, "round")
		golftest.Legal(t, r)
		terms, against := drawTerms(t, r)
		a := Of(r, terms)
		same := func(what string, got, want float64) {
			if math.Abs(got-want) > 1e-9 {
				t.Fatalf("%s: %.12f, want %.12f", what, got, want)
			}
		}
		same("total", a.Lost.Total, a.Score-against)
		same("parts", a.Lost.Tee+a.Lost.Approach+a.Lost.ShortGame+a.Lost.Putting+a.Lost.Undetailed+a.Lost.Course, a.Lost.Total)
		same("expected", a.Expected-a.Lost.Course, against)
		holes, shots, byCategory := a.Lost.Course, a.Lost.Course+a.Lost.Undetailed, Split{}
		byBand := map[Band]float64{}
		for i, h := range a.Holes {
			holes += h.Lost
			sum := 0.0
			for _, s := range h.Shots {
				sum += s.Lost
				*byCategory.line(s.Band.Category) += s.Lost
				byBand[s.Band] += s.Lost
			}
			shots += sum
			if h.Detailed {
				same("shots of a hole", sum, h.Lost)
			}
			if whole := float64(r.Holes[i].Strokes()); h.PickedUp != (h.Score != whole) {
				t.Fatalf("hole %d: score %g, strokes %g", h.Number, h.Score, whole)
			}
		}
		same("holes", holes, a.Lost.Total)
		same("shots", shots, a.Lost.Total)
		bands := Bands(terms.Boundary)
		for _, c := range golf.Categories {
			same(c.String(), byCategory.Of(c), a.Lost.Of(c))
			sum := 0.0
			for _, b := range bands {
				if b.Category == c {
					sum += byBand[b]
				}
			}
			same("bands of "+c.String(), sum, a.Lost.Of(c))
		}
	})
}

// Where no level reaches the target the course has a line of its own: strokes
// lost to it when it is too hard for every golfer, won when too easy.
func TestCourseBeyondEveryLevel(t *testing.T) {
	for _, c := range []struct {
		name  string
		par   int
		shots string
		sign  float64
	}{
		{"par 3s of 650 yd", 3, "t650 f430 f220 g30 g2", 1},
		{"par 6s of 60 yd", 6, "t60 g30 g2", -1},
	} {
		var r golf.Round
		for n := 1; n <= 18; n++ {
			r.Holes = append(r.Holes, golf.Hole{Number: n, Par: c.par, Shots: parseShots(t, c.shots)})
		}
		terms, target := fixedTerms(t, 79), r.TargetOf(79, 0)
		terms.Lens, terms.Course = expect.ForTarget(r.Card(), target)
		a := Of(r, terms)
		if a.Lost.Course*c.sign <= 1 {
			t.Errorf("%s: the course cost %.2f", c.name, a.Lost.Course)
		}
		if lost := a.Score - target; math.Abs(a.Lost.Total-lost) > 1e-9 {
			t.Errorf("%s: lost %.12f, score - target %.12f", c.name, a.Lost.Total, lost)
		}
	}
}

func TestDoublesAreConsistent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := golftest.Rounds().Draw(t, "round")
		terms, _ := drawTerms(t, r)
		a := Of(r, terms)
		if a.Counts.Doubles != len(a.Doubles) ||
			a.Counts.Doubles != a.Counts.Compound+a.Counts.Single+a.Counts.Separate+a.Counts.Leak+a.Counts.Unknown {
			t.Fatalf("%+v, %d doubles", a.Counts, len(a.Doubles))
		}
		holes := map[int]Hole{}
		for i, h := range a.Holes {
			holes[h.Number] = h
			for k, s := range h.Shots {
				if s.Trouble != r.Holes[i].FromTrouble(k) {
					t.Fatalf("hole %d, shot %d: trouble %v", h.Number, k+1, s.Trouble)
				}
			}
		}
		for _, d := range a.Doubles {
			d.consistent(t, holes[d.Hole])
		}
	})
}

func (d Double) consistent(t *rapid.T, h Hole) {
	errors := 0
	for _, s := range h.Shots {
		if s.Error {
			errors++
		}
	}
	want := map[Kind]bool{
		Compound: len(d.Chain) >= 2 && errors >= 2, Single: errors == 1 && len(d.Chain) == 0,
		Separate: errors >= 2 && len(d.Chain) == 0, Leak: errors == 0 && len(d.Chain) == 0, Unknown: !h.Detailed && len(h.Shots) == 0,
	}
	if !want[d.Kind] || d.Score < d.Par+2 || d.Lost != h.Lost {
		t.Fatalf("%+v on %d errors", d, errors)
	}
	if (d.Kind == Unknown || d.Kind == Leak) != (d.Root == 0) || (d.Root == 0) != (d.RootCategory == 0) || (d.Costliest == 0) != (len(h.Shots) == 0) {
		t.Fatalf("%+v", d)
	}
	if d.Root > 0 && !h.Shots[d.Root-1].Error {
		t.Fatalf("%+v began with a shot that is no error", d)
	}
	for _, shot := range d.Chain {
		if !h.Shots[shot-1].Error {
			t.Fatalf("shot %d of the chain is no error", shot)
		}
	}
	if d.Compounding < ErrorAt*float64(len(d.Chain)-1) || len(d.Chain) == 0 && d.Compounding != 0 {
		t.Fatalf("chain %v compounds to %g", d.Chain, d.Compounding)
	}
}

func TestBandsAtTheirEnds(t *testing.T) {
	yd, ft := golf.Yard, golf.Foot
	for _, c := range []struct {
		name     string
		lie      golf.Lie
		d        golf.Distance
		par      int
		boundary golf.Distance
		want     Band
	}{
		{"tee of a par 5", golf.Tee, 500 * yd, 5, 50 * yd, Band{Category: golf.TeeShots, Par: 5}},
		{"tee of a par 3", golf.Tee, 150 * yd, 3, 50 * yd, Band{Category: golf.Approach, Low: 100 * yd, High: 150 * yd}},
		{"tee of a short par 3", golf.Tee, 50 * yd, 3, 50 * yd, Band{Category: golf.ShortGame, Lie: golf.Tee, Low: 20 * yd, High: 50 * yd}},
		{"at the boundary", golf.Rough, 50 * yd, 4, 50 * yd, Band{Category: golf.ShortGame, Lie: golf.Rough, Low: 20 * yd, High: 50 * yd}},
		{"past it", golf.Rough, 50.1 * yd, 4, 50 * yd, Band{Category: golf.Approach, Low: 50 * yd, High: 100 * yd}},
		{"100 yd", golf.Fairway, 100 * yd, 4, 50 * yd, Band{Category: golf.Approach, Low: 50 * yd, High: 100 * yd}},
		{"far", golf.Fairway, 200.5 * yd, 4, 50 * yd, Band{Category: golf.Approach, Low: 200 * yd}},
		{"10 yd", golf.Bunker, 10 * yd, 4, 50 * yd, Band{Category: golf.ShortGame, Lie: golf.Bunker, High: 10 * yd}},
		{"boundary of 30", golf.Fairway, 40 * yd, 4, 30 * yd, Band{Category: golf.Approach, Low: 30 * yd, High: 50 * yd}},
		{"boundary of 30, near", golf.Fairway, 30 * yd, 4, 30 * yd, Band{Category: golf.ShortGame, Lie: golf.Fairway, Low: 20 * yd, High: 30 * yd}},
		{"boundary of 100", golf.Fairway, 60 * yd, 4, 100 * yd, Band{Category: golf.ShortGame, Lie: golf.Fairway, Low: 50 * yd, High: 100 * yd}},
		{"boundary of 100, far", golf.Fairway, 101 * yd, 4, 100 * yd, Band{Category: golf.Approach, Low: 100 * yd, High: 150 * yd}},
		{"3 ft", golf.Green, 3 * ft, 4, 50 * yd, Band{Category: golf.Putting, High: 3 * ft}},
		{"6 ft", golf.Green, 6 * ft, 4, 50 * yd, Band{Category: golf.Putting, Low: 3 * ft, High: 6 * ft}},
		{"past 40 ft", golf.Green, 41 * ft, 4, 50 * yd, Band{Category: golf.Putting, Low: 40 * ft}},
	} {
		if got := BandOf(c.lie, c.d, c.par, c.boundary); got != c.want {
			t.Errorf("%s: %+v, want %+v", c.name, got, c.want)
		}
	}
}

func TestBandsListsEachOnce(t *testing.T) {
	for boundary, want := range map[golf.Distance]int{50 * golf.Yard: 3 + 4 + 15 + 6, 30 * golf.Yard: 3 + 5 + 15 + 6, 100 * golf.Yard: 3 + 3 + 20 + 6} {
		seen := map[Band]bool{}
		for _, b := range Bands(boundary) {
			if seen[b] {
				t.Errorf("boundary %g: %+v comes again", boundary.Yards(), b)
			}
			seen[b] = true
		}
		if len(seen) != want {
			t.Errorf("boundary %g: %d bands, want %d", boundary.Yards(), len(seen), want)
		}
	}
}

func TestScoreAloneAndPickedUp(t *testing.T) {
	terms := fixedTerms(t, 79)
	tee := golf.Shot{Lie: golf.Tee, Distance: 400 * golf.Yard}
	putt := golf.Shot{Lie: golf.Green, Distance: 9 * golf.Foot}
	a := Of(golf.Round{Holes: []golf.Hole{
		{Number: 1, Par: 4, Shots: []golf.Shot{tee}, ScoreOnly: 7},
		{Number: 2, Par: 4, Shots: []golf.Shot{tee, {Lie: golf.Rough, Distance: 190 * golf.Yard, Penalty: 1}, {Lie: golf.Rough, Distance: 60 * golf.Yard}, putt}, PickedUp: true},
	}}, terms)
	if want := 7 - terms.Lens.Shot(tee); math.Abs(a.Lost.Undetailed-want) > 1e-12 {
		t.Errorf("undetailed %.6f, want %.6f", a.Lost.Undetailed, want)
	}
	toCome := terms.Lens.Shot(putt)
	if math.Abs(a.Holes[1].Score-(4+toCome)) > 1e-12 {
		t.Errorf("picked up in %.6f", a.Holes[1].Score)
	}
	if len(a.Doubles) != 2 || a.Doubles[0].Kind != Unknown || a.Doubles[1].Score != 6 || a.Doubles[1].Kind == Unknown {
		t.Errorf("%+v", a.Doubles)
	}
	if picked := a.PickedUp(); len(picked) != 1 || picked[0] != 2 {
		t.Errorf("picked up: %v", picked)
	}
}
