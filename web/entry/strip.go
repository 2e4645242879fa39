package entry

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/web/chart"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/form"
	"strokeledger/web/paths"
	"strokeledger/web/words"
)

// HoleStrip is one hole over all of a player's rounds: a straight rule from tee to
// green, a row a stroke, with what each stroke cost in the margin.
type HoleStrip struct {
	Heading string            // “Hole 6 over 12 rounds”; empty for no strip
	Lede    string            // what the hole costs, and which stroke most of it
	Holes   []components.Link // every hole that was played, with its cost
	Target  string            // heads where the target's golfer plays from: “A 79 from”
	Ticks   []StripTick       // yards or metres to the hole, from the tee on
	Rows    []StripRow        // in order of play
	Total   string            // strokes lost each time, two decimals; the rows add up to it
}

// StripTick is a figure under the rule.
type StripTick struct{ X, Text string }

// StripRow is one stroke of the hole.
type StripRow struct {
	Name   string      // “Tee shot”, “Second shot”, “On the green”
	Shots  string      // how many
	Marks  []StripMark // where they were played from; none on the green
	Spot   string      // place from where the target's golfer plays; empty for none
	From   string      // the middle of the distances, with the farthest and the nearest
	Target string      // the distance of Spot; empty for none
	Cost   string      // strokes lost each time, signed, two decimals
}

// StripMark is where shots were played from.
type StripMark struct{ X string }

// newHoleStrip makes the strip, without a heading when no hole was played shot by
// shot.
func newHoleStrip(in CourseInput, units form.Units) HoleStrip {
	s := in.Strip
	if len(s.Holes) == 0 {
		return HoleStrip{}
	}
	cost := s.Holes[slices.IndexFunc(s.Holes, func(h analysis.HoleCost) bool { return h.Number == s.Hole.Number })]
	total := math.Round(cost.Lost*100) / 100
	h := HoleStrip{Heading: fmt.Sprintf("Hole %d over %s", s.Hole.Number, words.SpelledPlural(cost.Rounds, "round", "rounds")), Total: words.Signed(total, 2),
		Target: fmt.Sprintf("%s from", words.Capital(words.A(in.Target)))}
	for _, other := range s.Holes {
		h.Holes = append(h.Holes, components.Link{Name: fmt.Sprintf("%d: %s", other.Number, words.Signed(other.Lost, 1)), At: paths.Strip(in.ID, other.Number), Here: other.Number == s.Hole.Number})
	}
	rule := newRule(s, units)
	h.Ticks = rule.ticks()
	var lost []float64
	for _, step := range s.Steps {
		lost = append(lost, step.Lost)
	}
	rounded := figures.Hundredths(lost, total)
	for i, step := range s.Steps {
		row := rule.row(step)
		row.Cost = words.Signed(rounded[i], 2)
		h.Rows = append(h.Rows, row)
	}
	h.Lede = stripLede(in, s, cost, units)
	return h
}

// stripLede says what the hole costs, and with which stroke most of it goes.
func stripLede(in CourseInput, s analysis.Strip, cost analysis.HoleCost, units form.Units) string {
	length := form.WriteLength(s.Hole.Length, units.Far) + " " + units.Far.String()
	text := fmt.Sprintf("Par %d, %s. ", s.Hole.Par, length)
	if cost.Lost < .005 {
		return text + fmt.Sprintf("You lose nothing on it against %s.", words.A(in.Target))
	}
	worst := s.Steps[0]
	for _, step := range s.Steps {
		if step.Lost > worst.Lost {
			worst = step
		}
	}
	return text + fmt.Sprintf("It costs you %.2f each time against %s, most of it %s.", cost.Lost, words.A(in.Target), withStroke(worst.Stroke))
}

// strokeNames name the strokes of a hole, from the green on.
var strokeNames = []string{"On the green", "Tee shot", "Second shot", "Third shot", "Later shots"}

func withStroke(stroke int) string {
	return [...]string{"on the green", "with the tee shot", "with the second shot", "with the third shot", "with later shots"}[stroke]
}

// rule is a straight rule from the tee to the hole.
type rule struct {
	length golf.Distance // the longest that was played
	units  form.Units
}

func newRule(s analysis.Strip, units form.Units) rule {
	r := rule{s.Hole.Length, units}
	for _, step := range s.Steps {
		for _, d := range step.From {
			r.length = max(r.length, d)
		}
	}
	return r
}

// x is the place of a distance to the hole.
func (r rule) x(d golf.Distance) string { return chart.Percent(1 - float64(d/r.length)) }

// ruleStep is how far apart figures stand under the rule, in the player's unit.
const ruleStep = 100

// ticks are the figures under the rule.
func (r rule) ticks() []StripTick {
	var all []StripTick
	for d := 0; r.units.Far.Of(float64(d)) <= r.length; d += ruleStep {
		all = append(all, StripTick{r.x(r.units.Far.Of(float64(d))), fmt.Sprint(d)})
	}
	slices.Reverse(all)
	return all
}

// row lays the shots of a stroke on the rule.
func (r rule) row(step analysis.StripStep) StripRow {
	row := StripRow{Name: strokeNames[step.Stroke], Shots: fmt.Sprint(len(step.From)), From: r.from(step)}
	if step.Stroke > 0 {
		for _, d := range step.From {
			row.Marks = append(row.Marks, StripMark{r.x(d)})
		}
	}
	if step.Target > 0 {
		row.Spot, row.Target = r.x(step.Target), r.write(step, step.Target)
	}
	return row
}

// from is the middle of the distances, with the farthest and the nearest.
func (r rule) from(step analysis.StripStep) string {
	all := slices.Sorted(slices.Values(step.From))
	text := r.write(step, all[len(all)/2])
	if far, near := r.write(step, all[len(all)-1]), r.write(step, all[0]); far != near {
		far, _, _ = strings.Cut(far, " ")
		text += fmt.Sprintf(" (%s to %s)", far, near)
	}
	return text
}

// write writes a distance in whole units of where it was played.
func (r rule) write(step analysis.StripStep, d golf.Distance) string {
	unit := r.units.Far
	if step.Stroke == 0 {
		unit = r.units.Green
	}
	return fmt.Sprintf("%.0f %s", unit.In(d), unit)
}
