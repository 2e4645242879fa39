package analysis

import (
	"errors"
	"math"
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

func must(p Picture, faults PictureFaults) Picture {
	if len(faults) > 0 {
		panic(faults.Err())
	}
	return p
}
