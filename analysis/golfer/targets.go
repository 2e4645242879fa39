package golfer

import (
	"fmt"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
)

// Target is one published figure that the calibration draws the family to.
type Target struct {
	Name   string  // what is measured, and of whom
	Want   float64 // the published figure, in the unit that the name says
	Spread float64 // how far off is one unit of misfit
	Source string  // with how it is known
	Group  string  // rows of one group are summed up as one in a report

	measure func(*lineup) float64
}

// Targets lists every figure of the calibration, the published tour table
// first.
func Targets() []Target {
	var all []Target
	all = append(all, tableTargets()...)
	all = append(all, puttTargets()...)
	all = append(all, shortGameTargets()...)
	all = append(all, driveTargets()...)
	all = append(all, gapTargets()...)
	all = append(all, strikeTargets()...)
	all = append(all, roundTargets()...)
	all = append(all, sandTargets()...)
	return append(all, midwayTargets()...)
}

// Where figures come from. "Read" means that the text itself was read; "cited copy"
// that it was read as others cite it.
const (
	broadie2012 = "Broadie 2012, cited copy"
	broadie2008 = "Broadie 2008, cited copy"
	book2014    = "Broadie 2014 (book), from memory"
	usga        = "USGA Course Rating System"
)

// tableTargets are the points of the published tour table where the family is
// asked to follow it.
func tableTargets() []Target {
	var all []Target
	for _, lie := range golf.Lies[:golf.Recovery] {
		low, high := expect.ResidualRange(lie)
		for _, yd := range expect.Published(lie).Distance {
			if yd >= low && yd <= high {
				all = append(all, Target{
					Name: fmt.Sprintf("tour, %s %g yd", lie, yd), Want: expect.Tabulated(lie, yd), Spread: .04,
					Source: broadie2012 + ", table 9", Group: "tour strokes, " + lie.String(),
					measure: func(l *lineup) float64 { return l.tour().Strokes(lie, golf.Yards.Of(yd)) },
				})
			}
		}
	}
	return all
}

// puttTargets are expected putts of the tour and shares of putts made by two
// levels.
func puttTargets() []Target {
	var all []Target
	for _, ft := range []float64{2, 3, 4, 5, 6, 7, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80} {
		all = append(all, Target{
			Name: fmt.Sprintf("tour, putts from %g ft", ft), Want: expect.Tabulated(golf.Green, ft), Spread: .01,
			Source: "PGA TOUR putting baseline 2010, cited copy", Group: "tour putts",
			measure: func(l *lineup) float64 { return l.tour().Strokes(golf.Green, golf.Feet.Of(ft)) },
		})
	}
	for _, a := range []struct{ ft, scratch, ninety float64 }{
		{3, .93, .84}, {4, .80, .65}, {5, .66, .50}, {6, .55, .39}, {8, .41, .27}, {10, .33, .20}, {15, .21, .11}, {20, .14, .06}, {30, .06, .02},
	} {
		all = append(all, makeTarget(scratchLevel, a.ft, a.scratch, .04, "putts made, scratch"), makeTarget(90, a.ft, a.ninety, .025, "putts made, 90"))
	}
	return append(all, Target{
		Name: "90, putts from 19 ft", Want: 2, Spread: .04, Source: broadie2012,
		measure: func(l *lineup) float64 { return l.strokes(90, golf.Green, 19*golf.Foot) },
	})
}

// makeTarget is the share of putts of ft feet that a level makes.
func makeTarget(level, ft, want, spread float64, group string) Target {
	return Target{
		Name: fmt.Sprintf("%.1f, made from %g ft", level, ft), Want: want, Spread: spread, Source: book2014, Group: group,
		measure: func(l *lineup) float64 { return l.at(level, func(g *Golfer) float64 { return g.MakeRate(ft) }) },
	}
}

// shortGameTargets are how often a tour player gets up and down.
func shortGameTargets() []Target {
	var all []Target
	for _, a := range []struct {
		lie      golf.Lie
		yd, want float64
	}{
		{golf.Fairway, 15, .69}, {golf.Fairway, 25, .54}, {golf.Rough, 15, .51}, {golf.Rough, 25, .35}, {golf.Bunker, 15, .51}, {golf.Bunker, 25, .42},
	} {
		all = append(all, Target{
			Name: fmt.Sprintf("tour, up and down, %s %g yd", a.lie, a.yd), Want: a.want, Spread: .04, Source: broadie2012, Group: "tour up and down",
			measure: func(l *lineup) float64 { return l.tour().UpAndDown(a.lie, a.yd) },
		})
	}
	return all
}

// The levels that stand for groups of golfers. Scratch and bogey golfers are
// those of the rating formulas on 6,500 yd, whose mean is the rating and 0.8
// of the round spread (from memory: the formulas rate the better half of
// scores).
const (
	scratchLevel = 6500.0/220 + 40.9 + 0.8*2.9
	bogeyLevel   = 6500.0/160 + 50.7 + 0.8*4.2
)

// driveTargets are length and direction of tee shots, and what a longer course
// costs.
func driveTargets() []Target {
	var all []Target
	for _, a := range []struct {
		level, yards float64
		source       string
	}{
		{scratchLevel, 250, usga + ", read"}, {bogeyLevel, 200, usga + ", read"},
		{77, 240, survey}, {84, 220, survey}, {91.5, 204, survey}, {100, 187, survey},
	} {
		all = append(all, Target{
			Name: fmt.Sprintf("%.1f, mean drive, yd", a.level), Want: a.yards, Spread: 6, Source: a.source, Group: "driving length",
			measure: func(l *lineup) float64 { return l.at(a.level, (*Golfer).meanDrive) },
		})
	}
	for _, a := range []struct{ level, degrees float64 }{{71.5, 4.0}, {76.5, 5.4}, {90.5, 6.4}, {105, 8.1}} {
		all = append(all, Target{
			Name: fmt.Sprintf("%.1f, driving direction, deg", a.level), Want: a.degrees, Spread: .1 * a.degrees, Source: broadie2008, Group: "driving direction",
			measure: func(l *lineup) float64 { return l.at(a.level, (*Golfer).driveDirection) },
		})
	}
	for _, a := range []struct {
		level, perThousand, spread float64
		how                        string
	}{{scratchLevel, 1000. / 220, .5, ", cited copy"}, {bogeyLevel, 1000. / 160, .1, ", cited copy"}} {
		all = append(all, Target{
			Name: fmt.Sprintf("%.1f, strokes for 1,000 yd of course", a.level), Want: a.perThousand, Spread: a.spread, Source: usga + a.how,
			measure: func(l *lineup) float64 { return l.perThousandYards(a.level) },
		})
	}
	return all
}

// survey: groups by handicap; the level of a group is its middle handicap and
// about 75 (common practice).
const survey = "R&A/USGA driving distance survey 2018, cited copy"

// gapTargets are where better golfers gain their strokes.
func gapTargets() []Target {
	outside100 := func(f From) bool { return f.Lie != golf.Green && f.Distance > 100*golf.Yard }
	onGreen := func(f From) bool { return f.Lie == golf.Green }
	return []Target{
		{Name: "80 v 90, share of the gap outside 100 yd", Want: .667, Spread: .01, Source: "Broadie, interview 2014, read",
			measure: func(l *lineup) float64 { return l.gapShare(half, ninety, outside100) }},
		{Name: "80 v 100, putting share of the gap", Want: 3. / 20, Spread: .03, Source: "Broadie, amateur data, 2016, cited copy",
			measure: func(l *lineup) float64 { return l.gapShare(half, hundred, onGreen) }},
		{Name: "strokes at skill 1", Want: 90, Spread: .05, Source: "definition of the skill coordinate",
			measure: func(l *lineup) float64 { return l.sums[ninety] }},
	}
}

// midwayTargets: an 80 golfer is about midway between a 70 and a 90 golfer at
// each distance and lie.
func midwayTargets() []Target {
	var all []Target
	for _, f := range []From{
		{golf.Tee, 400 * golf.Yard}, {golf.Fairway, 50 * golf.Yard}, {golf.Fairway, 100 * golf.Yard}, {golf.Fairway, 150 * golf.Yard},
		{golf.Fairway, 200 * golf.Yard}, {golf.Rough, 20 * golf.Yard}, {golf.Rough, 100 * golf.Yard}, {golf.Rough, 150 * golf.Yard},
		{golf.Bunker, 15 * golf.Yard}, {golf.Green, 5 * golf.Foot}, {golf.Green, 20 * golf.Foot}, {golf.Green, 40 * golf.Foot},
	} {
		all = append(all, Target{
			Name: fmt.Sprintf("80 less midway of 70 and 90, %s %g", f.Lie, f.Lie.Unit().In(f.Distance)), Want: 0, Spread: .03,
			Source: "Broadie, author reply 2014, cited copy", Group: "80 midway between 70 and 90",
			measure: func(l *lineup) float64 {
				at := func(level float64) float64 { return l.strokes(level, f.Lie, f.Distance) }
				return at(80) - (at(70)+at(90))/2
			},
		})
	}
	return all
}
