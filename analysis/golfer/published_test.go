package golfer

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"gonum.org/v1/gonum/optimize"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
)

func golferOf(t *testing.T, level float64) *Golfer {
	skill, err := expect.SkillOf(level)
	if err != nil {
		t.Fatal(err)
	}
	p := Committed()
	return p.Solve(skill)
}

// Source: M. Broadie 2014 (book), from memory: one-putt share of a 90 golfer.
func TestNinetyMakesPutts(t *testing.T) {
	g := golferOf(t, 90)
	for ft, share := range map[float64]float64{3: .84, 4: .65, 5: .50, 6: .39, 8: .27, 10: .20, 15: .11, 20: .06, 30: .02} {
		if made := g.MakeRate(ft); math.Abs(made-share) > .05 {
			t.Errorf("%g ft: makes %.3f, published %.2f", ft, made, share)
		}
	}
}

// Source: M. Broadie 2012 (cited copy): a 90 golfer makes half of 5 ft putts
// and takes two putts on average from 19 ft.
func TestNinetyAnchors(t *testing.T) {
	g := golferOf(t, 90)
	if half := crossing(g.MakeRate, .5); math.Abs(half-5) > 1 {
		t.Errorf("makes half from %.2f ft", half)
	}
	two := crossing(func(ft float64) float64 { return -g.Strokes(golf.Green, golf.Feet.Of(ft)) }, -2)
	if math.Abs(two-19) > 4 {
		t.Errorf("takes two putts from %.2f ft", two)
	}
}

// crossing is where a falling figure passes a value, in feet.
func crossing(figure func(ft float64) float64, value float64) float64 {
	ft := 1.0
	for figure(ft) > value {
		ft += .01
	}
	return ft
}

// Source: M. Broadie, interview 2014 (read): roughly two thirds of the gap
// between an 80 and a 90 golfer are shots from outside 100 yd.
func TestLongGameShareOfTheGap(t *testing.T) {
	eighty, ninety := golferOf(t, 80), golferOf(t, 90)
	lost := ninety.Visits(expect.ReferenceCourse()).Lost(eighty, func(f From) bool {
		return f.Lie != golf.Green && f.Distance > 100*golf.Yard
	})
	gap := ninety.course(expect.ReferenceCourse()) - eighty.course(expect.ReferenceCourse())
	if share := lost / gap; share < .60 || share > .70 {
		t.Errorf("%.3f of the gap", share)
	}
}

type puttRow struct{ ft, share float64 }

// puttsMade reads M. Broadie's data of 2018 in A. Gelman's case study of 2019
// (read): 1,253,196 putts.
func puttsMade(t *testing.T) []puttRow {
	file, err := os.Open("testdata/putts_made.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var all []puttRow
	for _, row := range rows[1:] {
		var x [3]float64
		for i := range x {
			if x[i], err = strconv.ParseFloat(row[i], 64); err != nil {
				t.Fatal(err)
			}
		}
		all = append(all, puttRow{x[0], x[2] / x[1]})
	}
	return all
}

// Source: A. Gelman, Model building and expansion for golf putting, 2019
// (read): with one angle for all lengths and a length spread on (x + 1) ft the
// data give 1.02 degrees and .080. Refitted by least squares on the shares.
func TestPuttingModelRefitsThePublishedOne(t *testing.T) {
	rows := puttsMade(t)
	misfit := func(x []float64) float64 {
		sum := 0.0
		for _, r := range rows {
			p := putt{ft: r.ft, angle: radians(x[0]), sd: x[1] * (r.ft + 1), window: StartLineWindow(r.ft)}
			sum += (p.made() - r.share) * (p.made() - r.share)
		}
		return sum
	}
	fit, err := optimize.Minimize(optimize.Problem{Func: misfit}, []float64{1.5, .05}, nil, &optimize.NelderMead{})
	if err != nil {
		t.Fatal(err)
	}
	if angle, length := fit.X[0], fit.X[1]; math.Abs(angle/1.02-1) > .03 || math.Abs(length/.080-1) > .03 {
		t.Errorf("angle %.4f degrees, length %.4f", angle, length)
	}
}

// The same data, read by the golfer at skill 0, who putts about as the tour.
func TestTourGolferMakesPutts(t *testing.T) {
	p := Committed()
	g := p.Solve(0)
	for _, r := range puttsMade(t) {
		if made := g.MakeRate(r.ft); math.Abs(made-r.share) > .03 {
			t.Errorf("%g ft: makes %.3f, data %.3f", r.ft, made, r.share)
		}
	}
}

// Source: A. Gelman and D. Nolan, A probability model for golf putting, 2002
// (window, as cited), with the radii of the Rules of Golf: computed by hand.
func TestStartLineWindow(t *testing.T) {
	for ft, degrees := range map[float64]float64{3: 2.046, 5: 1.227, 6: 1.023, 8: .767, 10: .614, 20: .307} {
		if got := StartLineWindow(ft) * 180 / math.Pi; math.Abs(got-degrees) > .0006 {
			t.Errorf("%g ft: %.4f degrees, published %.3f", ft, got, degrees)
		}
	}
	if StartLineWindow(.05) != math.Pi/2 {
		t.Error("a ball on the edge of the hole can miss it")
	}
}
