package analysis

import (
	"errors"
	"math"
	"slices"
	"testing"

	"strokeledger/analysis/aim"
	"strokeledger/analysis/golf"
)

// The price of an aim is the cost that the search of the best aim has for it: for every
// club at its best and down the middle, and on a par 3 at the best aim and at the flag.
// The search itself is checked against a plain grid ten times finer in package aim.
func TestPriceIsThatOfTheSearch(t *testing.T) {
	e := NewEngine()
	as := TargetsGolfer(84)
	long := must(PictureOfRows(4, 417*golf.Yard, "bend 260: 10 right\nfairway 165: 17 left, 16 right\nfairway 392: 14 left, 13 right\nout 0 to 470, across open to -20\ngreen 402: 26 wide, 29 deep"))
	clubs, err := e.ClubsOf(as)
	if err != nil {
		t.Fatal(err)
	}
	in := AimInput{Picture: long, As: as, Clubs: clubs}
	advice, err := e.Aim(in)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range advice.Clubs {
		for _, want := range []aim.Aim{c.Best, c.Straight} {
			got, err := e.Price(in, OtherAim{Club: c.Club.Name, Side: want.Side})
			if err != nil || got.Club != c.Club.Name || math.Abs(got.Aim.Cost-want.Cost) > 1e-9 || got.Aim.Shares != want.Shares {
				t.Errorf("%s %g: %v, want %v; %v", c.Club.Name, want.Side, got.Aim.Cost, want.Cost, err)
			}
		}
	}
	short := AimInput{As: as, Picture: must(PictureOfRows(3, 162*golf.Yard, "water 120 to 150, across open to 12\ngreen 151: 24 wide, 22 deep"))}
	at, err := e.Aim(short)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []aim.Aim{at.Approach.Best, at.Approach.Flag} {
		got, err := e.Price(short, OtherAim{Side: want.Side, Long: want.Long})
		if err != nil || math.Abs(got.Aim.Cost-want.Cost) > 1e-9 {
			t.Errorf("%g %g: %v, want %v; %v", want.Side, want.Long, got.Aim.Cost, want.Cost, err)
		}
	}
	if far, err := e.Price(short, OtherAim{Side: -40, Long: 30}); err != nil || !(far.Aim.Cost > at.Approach.Best.Cost) {
		t.Errorf("an aim far off: %v, %v", far.Aim.Cost, err)
	}
	if _, err := e.Price(in, OtherAim{Club: "spoon"}); !errors.Is(err, golf.ErrNotFound) {
		t.Errorf("%v", err)
	}
	for _, of := range []OtherAim{{Club: "driver", Side: 61}, {Club: "driver", Long: math.NaN()}, {Club: "driver", Side: math.Inf(1)}} {
		if _, err := e.Price(in, of); err == nil {
			t.Errorf("%+v is priced", of)
		}
	}
}

// A plan in which another aim stands has the shot at the green from where its tee shot
// ends: that of a club that goes 40 yd less is so much longer, and Aim has the same one.
func TestTheApproachFollowsWhatWasTaken(t *testing.T) {
	e, as := NewEngine(), TargetsGolfer(84)
	picture := must(PictureOfRows(4, 380*golf.Yard, "fairway 120: 17 left, 16 right\nfairway 360: 14 left, 13 right\nbunker 360 to 380, across 12 to 24\ngreen 365: 26 wide, 29 deep"))
	in := AimInput{Picture: picture, As: as, Clubs: []Club{{Name: "driver", Length: 220}, {Name: "hybrid", Length: 180}}}
	whole, err := e.RoundPlan(RoundPlanInput{Card: []golf.CardHole{{Number: 1, Par: 4, Length: 380 * golf.Yard}}, Pictures: map[int]Picture{1: picture}, As: as, Clubs: in.Clubs})
	if err != nil {
		t.Fatal(err)
	}
	plan := whole.Holes[0]
	taken, err := e.Price(in, OtherAim{Club: "hybrid", Side: -3})
	if err != nil {
		t.Fatal(err)
	}
	got, err := e.Taking(plan, in, taken)
	if err != nil || got.Stands() != taken || got.Saved != plan.Saved {
		t.Fatalf("%+v %v", got.Stands(), err)
	}
	if longer := got.Approach.From.Length - plan.Approach.From.Length; math.Abs(longer-40) > 4 {
		t.Errorf("from %.0f yd in place of %.0f", got.Approach.From.Length, plan.Approach.From.Length)
	}
	in.From = &AimFrom{Lie: golf.Fairway, Distance: golf.Yards.Of(got.Approach.From.Length)}
	if same, err := e.Aim(in); err != nil || math.Abs(same.Approach.Best.Cost-got.Approach.Best.Cost) > .01 {
		t.Errorf("%.3f, as Aim has it %.3f; %v", got.Approach.Best.Cost, same.Approach.Best.Cost, err)
	}
	if safe := got.SafeSides(); !slices.Equal(safe, got.Approach.Safe) {
		t.Errorf("safe: %v, the approach has %v", safe, got.Approach.Safe)
	}
	got.Safe, _ = ParseSide("long")
	if safe := got.SafeSides(); len(safe) != 1 || safe[0].String() != "long" {
		t.Errorf("what was taken is long, safe is %v", safe)
	}
	flat := must(PictureOfRows(3, 160*golf.Yard, "green 150: 26 wide, 29 deep"))
	short, err := e.Taking(HolePlan{}, AimInput{Picture: flat, As: as}, TakenAim{})
	if err != nil || short.Taken == nil || short.Approach != nil {
		t.Errorf("%+v %v", short, err)
	}
}

func must(p Picture, faults PictureFaults) Picture {
	if len(faults) > 0 {
		panic(faults.Err())
	}
	return p
}
