package main

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// The goals of the sizes. The limits of source.go are harder: a test holds them.
const (
	goalFileP90     = 200 // lines of a file, nine in ten
	goalFunctionP90 = 20  // lines of a function, nine in ten
	goalFunction    = 40  // lines of the longest function
	goalParameters  = 5
	goalComments    = .2 // of the lines of the engine that say something
	goalTests       = .5 // lines of tests to a line of code in web
)

// testData is the package that holds values for the gallery and for tests, which
// need no tests of their own.
const testData = "web/sample"

// testsWanted reports whether the goal of tests to code is for the package.
func (m measured) testsWanted() bool {
	return inside(m.name, "web") && m.name != testData && m.code > 0
}

// missed lists the goals that a package misses.
func (m measured) missed() []string {
	var all []string
	add := func(format string, values ...any) { all = append(all, fmt.Sprintf(format, values...)) }
	files := m.files()
	if p90 := percentile(files, 90); p90 > goalFileP90 {
		add("p90 of its files is %d lines; the goal is %d", p90, goalFileP90)
	}
	if longest := percentile(files, 100); longest > mostLines {
		add("a file has %d lines; at most %d", longest, mostLines)
	}
	if p90 := percentile(m.functionLines(), 90); p90 > goalFunctionP90 {
		add("p90 of its functions is %d lines; the goal is %d", p90, goalFunctionP90)
	}
	for _, f := range m.functions {
		if f.lines > goalFunction {
			add("%s: %s has %d lines; at most %d", f.at, f.name, f.lines, goalFunction)
		}
		if f.parameters > goalParameters {
			add("%s: %s has %d parameters; at most %d", f.at, f.name, f.parameters, goalParameters)
		}
	}
	if share := m.commentShare(); inside(m.name, "analysis") && m.code > 0 && share < goalComments {
		add("%.1f %% of its lines are comments; the goal is %.0f %%", 100*share, 100*goalComments)
	}
	if ratio := m.testRatio(); m.testsWanted() && ratio < goalTests {
		add("%.2f lines of tests to a line of code; the goal is %.1f", ratio, goalTests)
	}
	return all
}

// inside reports a package that is a folder or lies in it.
func inside(name, folder string) bool {
	return name == folder || strings.HasPrefix(name, folder+"/")
}

// percentile is the smallest value that at least p of a hundred values do not
// exceed, 0 of none.
func percentile(values []int, p float64) int {
	if len(values) == 0 {
		return 0
	}
	sorted := slices.Sorted(slices.Values(values))
	rank := int(math.Ceil(p / 100 * float64(len(sorted))))
	return sorted[max(rank, 1)-1]
}
