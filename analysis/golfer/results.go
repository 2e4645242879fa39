package golfer

import (
	"cmp"
	"fmt"
	"math"
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

// Report writes results as a Markdown page: a summary by group, then each
// figure. The misfit is the miss in units of the spread that the calibration
// gave the figure.
func Report(results []Result) string {
	var b strings.Builder
	b.WriteString("# Calibration: published figures and what the golfer reaches\n\n")
	b.WriteString("Written by `strokeledger calibrate`. Do not edit.\n\n")
	b.WriteString("| group | figures | root mean square misfit |\n| --- | ---: | ---: |\n")
	for _, g := range groups(results) {
		fmt.Fprintf(&b, "| %s | %d | %.2f |\n", g.name, g.n, math.Sqrt(g.sum/float64(g.n)))
	}
	b.WriteString("\n| figure | wanted | reached | misfit | source |\n| --- | ---: | ---: | ---: | --- |\n")
	for _, r := range results {
		fmt.Fprintf(&b, "| %s | %.3f | %.3f | %+.2f | %s |\n", r.Name, r.Want, r.Reached, r.Misfit(), r.Source)
	}
	return b.String()
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
