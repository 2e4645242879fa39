package golfer

import (
	"fmt"

	"strokeledger/analysis/golf"
)

// near60 is the distance inside which a published column counts strikes near the
// green.
const near60 = 60 * golf.Yard

// greenside is how near the green a bunker is that counts as beside it. Common
// practice; the sources do not say.
const greenside = 30 * golf.Yard

// nearMix is a 90 golfer's shots from inside 60 yd, by lie and distance, as the
// same column counts them.
var nearMix = []struct {
	name      string
	lie       golf.Lie
	low, high golf.Distance // past low, up to high
	spread    float64       // of the number as a target
}{
	{"rough_20_60", golf.Rough, 20 * golf.Yard, near60, 1},
	{"rough_0_20", golf.Rough, 0, 20 * golf.Yard, 1},
	{"greenside_sand", golf.Bunker, 0, greenside, .5},
	{"fairway_20_60", golf.Fairway, 20 * golf.Yard, near60, 1},
	{"fairway_0_20", golf.Fairway, 0, 20 * golf.Yard, 1},
}

// mixFact is the published number of shots of one part of the mix.
func mixFact(name string) fact { return published("shots_inside_60yd_"+name, "90") }

// between selects shots from a lie past one distance and up to another.
func between(lie golf.Lie, low, high golf.Distance) func(From) bool {
	return func(f From) bool { return f.Lie == lie && f.Distance > low && f.Distance <= high }
}

// offGreen selects shots off the green past one distance and up to another.
func offGreen(low, high golf.Distance) func(From) bool {
	return func(f From) bool { return f.Lie != golf.Green && f.Distance > low && f.Distance <= high }
}

// greenInOne is how often a shot from inside 60 yd comes onto the green, in the
// published mix of lies and distances; inside a part of it the distances are
// those of the golfer's own round.
func (v *Visits) greenInOne() float64 {
	sum, shots := 0.0, 0.0
	for _, part := range nearMix {
		n := mixFact(part.name).value
		sum += n * v.Mean(between(part.lie, part.low, part.high), v.golfer.onGreen)
		shots += n
	}
	return sum / shots
}

// sandSaves is how often a greenside bunker shot is up and down.
func (v *Visits) sandSaves() float64 {
	return v.Mean(between(golf.Bunker, 0, greenside), v.golfer.inTwo)
}

// levels for groups of golfers of whom a range of scores is printed: about its
// middle.
const (
	pros, amateurs1, amateurs2 = 71.5, 76.5, 90.5
)

// strikeTargets are how cleanly shots near the green are struck, and how many
// there are.
func strikeTargets() []Target {
	var all []Target
	for _, a := range []struct {
		level float64
		group string
	}{{70, "pro"}, {80, "80"}, {90, "90"}, {100, "100"}} {
		f := published("on_green_in_one_from_inside_60yd", a.group)
		all = append(all, Target{
			Name: fmt.Sprintf("%g, on the green in one from inside 60 yd", a.level), Want: f.value, Spread: .012, Source: f.source,
			Group: "on the green in one from inside 60 yd", measure: visited(a.level, (*Visits).greenInOne),
		})
	}
	for _, a := range []struct {
		level, spread float64
		group         string
	}{{pros, .05, "pro_64_79"}, {amateurs1, .04, "am1_70_83"}, {amateurs2, .006, "am2_84_97"}} {
		f := published("sand_save", a.group)
		all = append(all, Target{
			Name: fmt.Sprintf("%g, sand saves", a.level), Want: f.value, Spread: a.spread, Source: f.source, Group: "sand saves",
			measure: visited(a.level, (*Visits).sandSaves),
		})
	}
	return append(all, nearCounts()...)
}

// nearCounts are how many shots a round are played from near the green.
func nearCounts() []Target {
	f := published("off_green_shots_inside_60yd", "90")
	all := []Target{{
		Name: "90, shots off the green inside 60 yd, a round", Want: f.value, Spread: .25, Source: f.source,
		measure: visited(90, func(v *Visits) float64 { return v.Shots(offGreen(0, near60)) }),
	}}
	for _, part := range nearMix {
		f := mixFact(part.name)
		all = append(all, Target{
			Name: "90, shots inside 60 yd, " + part.name, Want: f.value, Spread: part.spread, Source: f.source, Group: "90, shots inside 60 yd by lie",
			measure: visited(90, func(v *Visits) float64 { return v.Shots(between(part.lie, part.low, part.high)) }),
		})
	}
	f = published("shots_60_100yd", "tour")
	all = append(all, Target{
		Name: "tour, shots of 60 to 100 yd, a round of 7,200 yd", Want: f.value, Spread: .6, Source: f.source, Group: "shots of 60 to 100 yd",
		measure: func(l *lineup) float64 { return l.tourRound.Shots(offGreen(near60, 100*golf.Yard)) },
	})
	f = published("shots_60_100yd", "amateur")
	return append(all, Target{
		Name: "90, shots of 60 to 100 yd, a round", Want: f.value, Spread: .4, Source: f.source, Group: "shots of 60 to 100 yd",
		measure: visited(90, func(v *Visits) float64 { return v.Shots(offGreen(near60, 100*golf.Yard)) }),
	})
}

// roundTargets are greens, penalties and three-putts of a round.
func roundTargets() []Target {
	var all []Target
	for _, a := range []struct{ level, spread float64 }{{75, .25}, {80, .25}, {85, .25}, {90, 1}} {
		s := a.level
		all = append(all, Target{
			Name: fmt.Sprintf("%g, greens in regulation", s), Want: (95 - s) / 2, Spread: a.spread,
			Source: "Riccio 1990, cited copy: (95 - s) / 2", Group: "greens in regulation",
			measure: func(l *lineup) float64 {
				return l.at(s, func(g *Golfer) float64 { return l.greens[l.place(g)] })
			},
		})
	}
	for _, s := range []float64{84, 90} {
		all = append(all, Target{
			Name: fmt.Sprintf("%g, penalties a round", s), Want: .9, Spread: .12, Source: "common practice (.6 to 1.2); no published source", Group: "penalties",
			measure: visited(s, (*Visits).Penalties),
		})
	}
	tour, ninety := published("three_putts_per_round", "tour"), published("three_putts_per_round", "90")
	return append(all, Target{
		Name: "tour, three-putts a round of 7,200 yd", Want: tour.value, Spread: .15, Source: tour.source, Group: "three-putts",
		measure: func(l *lineup) float64 { return l.tourRound.ThreePutts() },
	}, Target{
		Name: "90, three-putts a round", Want: ninety.value, Spread: .2, Source: ninety.source, Group: "three-putts",
		measure: visited(90, (*Visits).ThreePutts),
	})
}

// sandTargets: near the green sand costs more than rough, for everybody but good
// players. Common practice; the published tour table has it the other way at 20
// and 30 yd.
func sandTargets() []Target {
	var all []Target
	for _, yd := range []float64{10, 20, 30} {
		d := golf.Yards.Of(yd)
		all = append(all, Target{
			Name: fmt.Sprintf("76, bunker less rough, %g yd", yd), Want: .05, Spread: .03, Source: "common practice; no published source", Group: "76, bunker less rough",
			measure: func(l *lineup) float64 { return l.level(76, golf.Bunker, d) - l.level(76, golf.Rough, d) },
		})
	}
	return all
}

// visited measures a figure of a level's visits to the reference course.
func visited(level float64, figure func(*Visits) float64) func(*lineup) float64 {
	return func(l *lineup) float64 {
		return l.at(level, func(g *Golfer) float64 { return figure(l.visits(g)) })
	}
}
