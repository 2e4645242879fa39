package golfer

import (
	"cmp"
	_ "embed"
	"encoding/csv"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Result is a target and what the family reaches of it.
type Result struct {
	Target
	Reached float64
}

// Misfit is how far off the target is, in units of its spread.
func (r Result) Misfit() float64 { return (r.Reached - r.Want) / r.Spread }

// Results measures every target.
func (p Parameters) Results() []Result {
	l := newLineup(&p)
	var all []Result
	for _, t := range Targets() {
		all = append(all, Result{t, t.measure(l)})
	}
	return all
}

// What the first calibration reached, before strikes near the green, sand and
// penalties were fitted: the same figures, measured on its parameters.
//
//go:embed first_calibration.csv
var firstCSV string

// before reads what the first calibration reached, by figure.
func before() map[string]float64 {
	rows, err := csv.NewReader(strings.NewReader(firstCSV)).ReadAll()
	if err != nil {
		panic("golfer: the first calibration: " + err.Error())
	}
	all := map[string]float64{}
	for _, row := range rows[1:] {
		reached, err := strconv.ParseFloat(row[1], 64)
		if err != nil {
			panic("golfer: the first calibration: " + err.Error())
		}
		all[row[0]] = reached
	}
	return all
}

// Report writes results as a Markdown page: a summary by group, where the figures
// contradict each other, each figure, and how sure expected strokes are. The
// misfit is the miss in units of the spread that the calibration gave the figure.
func Report(results []Result, table []Uncertain) string {
	var b strings.Builder
	b.WriteString("# Calibration: published figures and what the golfer reaches\n\n")
	b.WriteString("Written by `strokeledger calibrate`. Do not edit. *Before* is the first calibration, which had no figures for strikes near the green, sand, greens, penalties and three-putts.\n\n")
	b.WriteString("| group | figures | root mean square misfit |\n| --- | ---: | ---: |\n")
	for _, g := range groups(results) {
		fmt.Fprintf(&b, "| %s | %d | %.2f |\n", g.name, g.n, math.Sqrt(g.sum/float64(g.n)))
	}
	writeContradictions(&b, results)
	b.WriteString("\n## Every figure\n\n| figure | wanted | before | reached | misfit | source |\n| --- | ---: | ---: | ---: | ---: | --- |\n")
	first := before()
	for _, r := range results {
		was := "–"
		if v, known := first[r.Name]; known {
			was = fmt.Sprintf("%.3f", v)
		}
		fmt.Fprintf(&b, "| %s | %.3f | %s | %.3f | %+.2f | %s |\n", r.Name, r.Want, was, r.Reached, r.Misfit(), r.Source)
	}
	writeUncertainty(&b, table)
	return b.String()
}

// writeUncertainty writes the spread of expected strokes by level and place.
func writeUncertainty(b *strings.Builder, table []Uncertain) {
	b.WriteString("\n## How sure expected strokes are\n\n")
	b.WriteString("Standard deviation of expected strokes when every figure above moves by its spread, by the delta method on the Gauss-Newton Hessian. In brackets: how far they moved in one calibration to figures that were moved at random (seed " +
		strconv.Itoa(RefitSeed) + "), and what the method says of that draw.\n\n| from |")
	for _, level := range watchedLevels {
		fmt.Fprintf(b, " %g |", level)
	}
	b.WriteString("\n| --- |" + strings.Repeat(" --- |", len(watchedLevels)) + "\n")
	places := len(table) / len(watchedLevels)
	for i := range places {
		fmt.Fprintf(b, "| %s %g %s |", table[i].Lie, table[i].Far, table[i].Lie.Unit())
		for k := range watchedLevels {
			u := table[k*places+i]
			fmt.Fprintf(b, " %.3f (%+.3f, %+.3f) |", u.SD, u.Refit, u.Linear)
		}
		b.WriteString("\n")
	}
}

type group struct {
	name string
	n    int
	sum  float64
}

func groups(results []Result) []group {
	var all []group
	place := map[string]int{}
	for _, r := range results {
		name := cmp.Or(r.Group, r.Name)
		at, known := place[name]
		if !known {
			at = len(all)
			place[name] = at
			all = append(all, group{name: name})
		}
		all[at].n++
		all[at].sum += r.Misfit() * r.Misfit()
	}
	return all
}

// Difference is how far one free number is from another set's, as a share of
// the skill.
type Difference struct {
	Name  string
	Share float64
}

// Differences compares the free numbers of two sets of parameters.
func (p Parameters) Differences(other Parameters) []Difference {
	var all []Difference
	for _, f := range freeNumbers() {
		all = append(all, Difference{f.String(), p.away(f) - other.away(f)})
	}
	return all
}

// Disturbed moves every free number by share, one up and the next down.
func (p Parameters) Disturbed(share float64) Parameters {
	for _, f := range freeNumbers() {
		p = p.moved(f, share)
		share = -share
	}
	return p
}
