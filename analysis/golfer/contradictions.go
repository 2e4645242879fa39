package golfer

import (
	"fmt"
	"strings"
)

// contradiction is a place where figures cannot all be met by one golfer.
type contradiction struct {
	figures []string // names of the targets
	verdict string   // which won, and why they cannot all be met
}

// contradictions lists where the published figures contradict each other, or the
// shape that one smooth golfer can have.
var contradictions = []contradiction{
	{[]string{"90, on the green in one from inside 60 yd", "90, shots off the green inside 60 yd, a round", "85, greens in regulation", "90, greens in regulation"},
		"A golfer who misses the green with one short shot in five needs about 14 shots from inside 60 yd when the rule of thumb leaves so few greens; strikes and shots inside 60 yd won, and the rule gives way, most at 90."},
	{[]string{"71.5, sand saves", "76.5, sand saves", "90.5, sand saves", "tour, up and down, bunker 15 yd"},
		"From one in two to one in four within five strokes of level, and then one in six fourteen strokes later, is no smooth curve; the tour and the 90 golfer won, the row of 70 to 83 lies below."},
	{[]string{"94.7, mean drive, yd", "100.0, mean drive, yd", "90.5, driving direction, deg", "80 v 90, share of the gap outside 100 yd"},
		"What strikes near the green lose, the long game must win back for two thirds of the gap to lie outside 100 yd; the share won, and weak golfers drive shorter and wider than printed."},
	{[]string{"72.8, strokes for 1,000 yd of course", "94.7, strokes for 1,000 yd of course"},
		"The tour table alone gives 3.3 strokes for 1,000 yd; it won over the scratch golfer's rating formula, and the bogey golfer's won."},
	{[]string{"tour, three-putts a round of 7,200 yd", "tour, putts from 40 ft", "tour, putts from 60 ft"},
		"The table of putts won over the count of three-putts, which also depends on how long first putts are; the golfer's are shorter than the tour's."},
	{[]string{"90.0, made from 3 ft", "90.0, made from 6 ft", "90, putts from 19 ft", "90, three-putts a round"},
		"Two putts on average from 19 ft ask for more three-putts than that golfer's short putts leave; the short putts won."},
	{[]string{"84, penalties a round", "90, penalties a round"},
		"No source is published for either; common practice is .6 to 1.2, and growth with skill is the golfer's own."},
	{[]string{"tour, tee 240 yd", "tour, tee 280 yd"},
		"The printed step from 240 to 280 yd is short par fours that tour players drive; a golfer with one aim has none, and the residual that is laid on the family carries it."},
}

// writeContradictions writes them with how far each figure is missed.
func writeContradictions(b *strings.Builder, results []Result) {
	reached := map[string]Result{}
	for _, r := range results {
		reached[r.Name] = r
	}
	b.WriteString("\n## Where the figures contradict each other\n\n")
	for _, c := range contradictions {
		var misses []string
		for _, name := range c.figures {
			r, known := reached[name]
			if !known {
				panic("golfer: a contradiction names no figure: " + name)
			}
			misses = append(misses, fmt.Sprintf("%s: %.3g wanted, %.3g reached", name, r.Want, r.Reached))
		}
		fmt.Fprintf(b, "- %s (%s.)\n", c.verdict, strings.Join(misses, "; "))
	}
}
