package play

import (
	"fmt"
	"math"
	"strings"

	"strokeledger/analysis/aim"
	"strokeledger/analysis/golf"
	"strokeledger/web/words"
)

// measure writes distances in a player's unit; they come in yards.
type measure struct{ unit golf.Unit }

// number is a distance without its unit.
func (m measure) number(yd float64) string {
	return fmt.Sprintf("%.0f", math.Round(math.Abs(m.unit.In(golf.Yards.Of(yd))))+0)
}

// distance is a distance with its unit.
func (m measure) distance(yd float64) string { return m.number(yd) + " " + m.unit.String() }

// none reports whether a distance is printed as 0.
func (m measure) none(yd float64) bool { return m.number(yd) == "0" }

// side is where an aim is by the middle: 7 yd right.
func (m measure) side(yd float64) string {
	if m.none(yd) {
		return "middle"
	}
	return m.distance(yd) + " " + sideOf(yd)
}

// ofMiddle is an aim in a sentence: 7 yd right of the middle.
func (m measure) ofMiddle(yd float64) string {
	if m.none(yd) {
		return "down the middle"
	}
	return "aim " + m.side(yd) + " of the middle"
}

// ofFlag is an aim at the green: 4 yd right of the flag and 3 short.
func (m measure) ofFlag(a aim.Aim) string { return m.byFlag(a.Side, a.Long) }

// byFlag is a place by the flag: 4 yd right of the flag and 3 short.
func (m measure) byFlag(side, long float64) string {
	depth := ""
	if !m.none(long) {
		depth = map[bool]string{true: "short", false: "long"}[long < 0]
	}
	switch {
	case m.none(side) && depth == "":
		return "at the flag"
	case m.none(side):
		return m.distance(long) + " " + depth + " of the flag"
	case depth == "":
		return m.side(side) + " of the flag"
	default:
		return m.side(side) + " of the flag and " + m.number(long) + " " + depth
	}
}

// strokes is a cost with two decimals.
func strokes(x float64) string { return strings.Replace(fmt.Sprintf("%.2f", x), "-", words.Minus, 1) }

// printedStep is what is printed of a cost.
func printedStep(x float64) float64 { return math.Round(x*100) / 100 }

// saved is what one printed cost is under another.
func saved(straight, best float64) float64 { return printedStep(straight) - printedStep(best) + 0 }

// matters reports whether a gain is worth a plan.
func matters(gain float64) bool { return gain >= aim.MattersFrom-1e-9 }

// capital begins a club or an aim as a sentence does.
func capital(text string) string { return words.Capital(text) }

// sides names the safe sides.
func sides(all []aim.Side) string {
	var names []string
	for _, s := range all {
		names = append(names, s.String())
	}
	return words.List(names)
}

// ShareRow is how many balls of a hundred end somewhere, with an aim and with another.
type ShareRow struct {
	Name            string
	Best, Straight  string
	BestAt, ThereAt string // how long their bars are
}

// shareKinds are where balls end, in the order of the table.
var shareKinds = []struct {
	name string
	of   func(aim.Shares) float64
}{
	{"Green", func(s aim.Shares) float64 { return s.Green }}, {"Fairway", func(s aim.Shares) float64 { return s.Fairway }}, {"Rough", func(s aim.Shares) float64 { return s.Rough }},
	{"Bunker", func(s aim.Shares) float64 { return s.Bunker }}, {"Trees", func(s aim.Shares) float64 { return s.Trees }}, {"Water", func(s aim.Shares) float64 { return s.Water }},
	{"Out of bounds", func(s aim.Shares) float64 { return s.Out }}, {"Lost or unplayable", func(s aim.Shares) float64 { return s.Penalty }},
}

// shareRows are the rows of a table of shares; what no ball of a hundred reaches is
// left out.
func shareRows(best, straight aim.Shares) []ShareRow {
	a, b := ofHundred(best), ofHundred(straight)
	var all []ShareRow
	for i, k := range shareKinds {
		if a[i] == 0 && b[i] == 0 {
			continue
		}
		all = append(all, ShareRow{k.name, fmt.Sprint(a[i]), fmt.Sprint(b[i]), fmt.Sprintf("%d%%", a[i]), fmt.Sprintf("%d%%", b[i])})
	}
	return all
}

// ofHundred shares out a hundred balls, so that what is printed adds up to them.
func ofHundred(s aim.Shares) []int {
	out, rest := make([]int, len(shareKinds)), make([]float64, len(shareKinds))
	left := 100
	for i, k := range shareKinds {
		x := 100 * k.of(s)
		out[i] = int(math.Floor(x + 1e-9))
		rest[i] = x - float64(out[i])
		left -= out[i]
	}
	for ; left > 0; left-- {
		largest := 0
		for i := range rest {
			if rest[i] > rest[largest] {
				largest = i
			}
		}
		out[largest]++
		rest[largest] = -1
	}
	return out
}

// trouble says what falls most of what costs strokes, in a sentence; empty when nothing
// falls by two balls of a hundred.
func trouble(best, straight aim.Shares) string {
	a, b := ofHundred(best), ofHundred(straight)
	worst, name := 1, ""
	for i, k := range shareKinds {
		if i < 3 { // green, fairway and rough are no trouble
			continue
		}
		if d := b[i] - a[i]; d > worst {
			worst, name = d, fmt.Sprintf("%s falls from %s in 100 to %d.", capital(strings.ToLower(k.name)), balls(b[i]), a[i])
		}
	}
	return name
}

func balls(n int) string { return words.Plural(n, "ball", "balls") }

func biasWords(m measure, yd float64) string {
	if m.none(yd) {
		return "within a yard"
	}
	return m.side(yd)
}

// biasSure says how sure the side of a pattern is.
func biasSure(p aim.Pattern) string {
	if p.SideIn.Low > 0 || p.SideIn.High < 0 {
		return "clear"
	}
	return "which could be chance"
}
