package golfer_test

import (
	"flag"
	"math"
	"math/rand/v2"
	"testing"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/parallel"
	"strokeledger/analysis/practice"
)

var tries = flag.Int("tries", 20000, "how many tries are played at every place of every drill")

// counts play one try of a drill with random numbers, as its sheet says that one
// counts.
var counts = map[string]func(s golfer.Striker, rng *rand.Rand, at practice.Station) bool{
	"start-line": holed, "ladder": holed, "round-the-hole": holed,
	"lag": func(s golfer.Striker, rng *rand.Rand, at practice.Station) bool {
		return golfer.PuttOnce(s, rng, at.Distance.Feet()) <= 4
	},
	"chip-fairway": within(func(float64) float64 { return 10. / 3 }), "chip-rough": within(func(float64) float64 { return 4 }),
	"bunker": func(s golfer.Striker, rng *rand.Rand, at practice.Station) bool {
		lie, far := golfer.PlayOnce(s, rng, at.Lie, at.Distance.Yards())
		return lie == golf.Green && far <= 4
	},
	"up-and-down": func(s golfer.Striker, rng *rand.Rand, at practice.Station) bool {
		return golfer.HolesInTwo(s, rng, at.Lie, at.Distance.Yards())
	},
	"wedge-ladder": within(func(yd float64) float64 { return yd / 10 }), "approach": within(func(float64) float64 { return 15 }),
	"corridor": func(s golfer.Striker, rng *rand.Rand, _ practice.Station) bool {
		side, along, sound := golfer.DriveOnce(s, rng)
		return math.Abs(side) <= 20 && along >= .85*sound
	},
}

func holed(s golfer.Striker, rng *rand.Rand, at practice.Station) bool {
	return golfer.PuttOnce(s, rng, at.Distance.Feet()) == 0
}

// within counts a ball that ends within so many yards of the hole.
func within(radius func(yd float64) float64) func(golfer.Striker, *rand.Rand, practice.Station) bool {
	return func(s golfer.Striker, rng *rand.Rand, at practice.Station) bool {
		yd := at.Distance.Yards()
		_, far := golfer.PlayOnce(s, rng, at.Lie, yd)
		return far <= radius(yd)
	}
}

// The chances of every drill beside as many tries as it takes, played by the
// simulating player: another path through the code. With 200,000 tries they are
// within .01; a test run plays fewer and allows for that.
func TestChancesOfDrillsAgreeWithPlay(t *testing.T) {
	of := golfer.Committed()
	for _, level := range []float64{72, 79, 90} {
		s, err := of.Striker(level)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range practice.Drills() {
			if d.NoMark {
				continue
			}
			chances, err := d.Chances(&of, level)
			if err != nil || counts[d.Key] == nil {
				t.Fatalf("%s: %v, or it is not played here", d.Key, err)
			}
			got := make([]int, len(d.Stations))
			parallel.Do(len(got), func(j int) {
				rng := rand.New(rand.NewPCG(uint64(100*level), uint64(j)))
				for range *tries {
					if counts[d.Key](s, rng, d.Stations[j]) {
						got[j]++
					}
				}
			})
			for j, c := range chances {
				share := float64(got[j]) / float64(*tries)
				allowed := 3.5*math.Sqrt(c*(1-c)/float64(*tries)) + .003
				if *tries >= 200000 {
					allowed = .01
				}
				if math.Abs(share-c) > allowed {
					t.Errorf("a %g, %s, place %d: %.4f, played %.4f", level, d.Key, j, c, share)
				}
				if *tries >= 200000 {
					t.Logf("a %g, %s, place %d: %.4f, played %.4f, apart %.4f", level, d.Key, j, c, share, share-c)
				}
			}
		}
	}
}
