package sample

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"golang.org/x/net/html"
)

// Sums is what a page says of its own arithmetic, and what is wrong with it.
//
// A page marks every figure that is added up. An element with data-part="name" is
// added to the sum of that name, and one with data-part="-name" is taken away. One
// with data-sum="name" is the sum of all of them, one with data-balance="name" of
// those that stand before it, and one with data-mean="name" is their mean. An
// element may carry several names. Figures are read as they are printed.
type Sums struct {
	Checked int      // how many sums, balances and means were added up
	Faults  []string // what does not add up, and totals that are not marked
}

// SumsOf adds up a page.
func SumsOf(page string) Sums {
	root, err := html.Parse(strings.NewReader(page))
	if err != nil {
		return Sums{Faults: []string{err.Error()}}
	}
	a := adder{parts: map[string][]milli{}}
	for n := range root.Descendants() {
		if n.Type == html.ElementNode {
			a.take(n)
		}
	}
	for _, t := range a.totals {
		a.compare(t, a.parts[t.name])
	}
	for _, name := range slices.Sorted(maps.Keys(a.parts)) {
		if !a.summed[name] {
			a.fault("no sum of %s is marked", name)
		}
	}
	return a.Sums
}

// milli is a figure in thousandths, so that sums are exact.
type milli int64

func (m milli) String() string { return strconv.FormatFloat(float64(m)/1000, 'f', -1, 64) }

// total is a figure that a page marks as a sum or a mean.
type total struct {
	name   string
	figure figure
	mean   bool
}

// adder goes through a page in its order.
type adder struct {
	Sums
	parts  map[string][]milli
	summed map[string]bool
	totals []total // that are compared at the end, when all parts are known
}

func (a *adder) fault(format string, values ...any) {
	a.Faults = append(a.Faults, fmt.Sprintf(format, values...))
}

// take reads the marks of an element.
func (a *adder) take(n *html.Node) {
	if strings.Contains(attribute(n, "class"), "working-line") {
		a.working(text(n))
	}
	if total := named(n); total != "" && !marked(n) && len(numbers.FindAllString(text(n), -1)) > 0 {
		a.fault("%s %q is not marked as a sum", total, text(n))
	}
	marks := [][]string{strings.Fields(attribute(n, "data-part")), strings.Fields(attribute(n, "data-sum")), strings.Fields(attribute(n, "data-balance")), strings.Fields(attribute(n, "data-mean"))}
	if len(slices.Concat(marks...)) == 0 {
		return
	}
	f, ok := a.read(n)
	if !ok {
		return
	}
	if a.summed == nil {
		a.summed = map[string]bool{}
	}
	for i, kind := range marks[1:] {
		for _, name := range kind {
			t := total{name, f, i == 2}
			if a.summed[name] = true; i == 1 {
				a.compare(t, a.parts[name])
			} else {
				a.totals = append(a.totals, t)
			}
		}
	}
	for _, name := range marks[0] {
		if minus, ok := strings.CutPrefix(name, "-"); ok {
			a.parts[minus] = append(a.parts[minus], -f.amount)
		} else {
			a.parts[name] = append(a.parts[name], f.amount)
		}
	}
}

// compare adds up the parts of a total.
func (a *adder) compare(t total, parts []milli) {
	a.Checked++
	sum := milli(0)
	for _, p := range parts {
		sum += p
	}
	switch {
	case len(parts) == 0 && t.figure.amount != 0:
		a.fault("%s of %s has no parts", t.figure.text, t.name)
	case t.mean && len(parts) > 0:
		// the mean of what is printed, to less than one unit of its last digit
		if n := milli(len(parts)); (sum-t.figure.amount*n)*1000 >= t.figure.unit*1000*n || (t.figure.amount*n-sum)*1000 >= t.figure.unit*1000*n {
			a.fault("%s is the mean of %s, whose parts %v come to %v", t.figure.text, t.name, parts, sum)
		}
	case !t.mean && sum != t.figure.amount:
		a.fault("%s is the sum of %s, whose parts %v come to %v", t.figure.text, t.name, parts, sum)
	}
}

// ending reads how a working ends: 0.51 lost, 0.20 won back, nothing lost.
func ending(said string) milli {
	n := numbers.FindString(said)
	switch {
	case n == "":
		return 0
	case wonBack.MatchString(said):
		return -parsed(n).amount
	}
	return parsed(n).amount
}

// working adds up a line that says how a loss comes about.
func (a *adder) working(said string) {
	if m := ofShots.FindStringSubmatch(said); m != nil {
		a.Checked++
		sum := -parsed(m[1]).amount
		for _, add := range m[2:5] {
			if add != "" {
				sum += parsed(add).amount
			}
		}
		if sum != ending(m[5]) {
			a.fault("the working %q comes to %v", said, sum)
		}
	}
	if m := ofScores.FindStringSubmatch(said); m != nil {
		a.Checked++
		if sum, lost := parsed(m[2]).amount-parsed(m[1]).amount, ending(m[3]); sum != lost {
			a.fault("the working %q comes to %v", said, sum)
		}
	}
	if m := ofRounds.FindStringSubmatch(said); m != nil {
		a.Checked++
		lost, holes, each := parsed(m[1]), parsed(m[2]).amount/1000, parsed(m[3])
		half := each.unit * holes
		if lost.unit < 1000 { // counts are exact, strokes may be rounded
			half += 18 * lost.unit
		}
		if off := lost.amount*18 - each.amount*holes; 2*off > half || -2*off > half {
			a.fault("the working %q does not come to %v", said, each.amount)
		}
	}
	if m := ofHits.FindStringSubmatch(said); m != nil {
		a.Checked++
		if off := parsed(m[1]).amount*100 - parsed(m[3]).amount/1000*parsed(m[2]).amount; 2*off > parsed(m[2]).amount || -2*off > parsed(m[2]).amount {
			a.fault("the working %q is another share", said)
		}
	}
}
