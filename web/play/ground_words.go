package play

import (
	"fmt"
	"math"
	"strconv"

	"strokeledger/analysis/aim"
	"strokeledger/web/words"
)

// kindWords say what a place is.
var kindWords = map[aim.Kind]string{
	aim.Out: "out of bounds", aim.Water: "water", aim.Trees: "trees", aim.Bunker: "bunker", aim.Rough: "open rough", aim.OnFairway: "fairway", aim.OnGreen: "green",
}

// yards writes yards without needless decimals.
func yards(x float64) string { return strconv.FormatFloat(math.Round(x*10)/10, 'f', -1, 64) }

// InWords says what is drawn of a hole, a sentence a row, in the order of the rows.
func InWords(p aim.Picture) []string {
	all := []string{fmt.Sprintf("Par %d, %s yd.", p.Par, yards(p.Length))}
	for _, b := range p.Bends {
		all = append(all, bendWords(b)+".")
	}
	if text := fairwayWords(p.Fairway); text != "" {
		all = append(all, text+".")
	}
	for _, z := range p.Zones {
		all = append(all, zoneWords(z)+".")
	}
	if p.Green.Drawn() {
		all = append(all, greenWords(p.Green)+".")
	}
	return all
}

func bendWords(b aim.Bend) string {
	return fmt.Sprintf("Bends %s degrees %s at %s yd", yards(math.Abs(b.Degrees)), sideOf(b.Degrees), yards(b.At))
}

func sideOf(x float64) string {
	if x < 0 {
		return "left"
	}
	return "right"
}

// fairwayWords sums up the fairway in a sentence; empty for none.
func fairwayWords(all []aim.Width) string {
	if len(all) == 0 {
		return ""
	}
	first, last := all[0], all[len(all)-1]
	text := fmt.Sprintf("Fairway from %s to %s yd", yards(first.At), yards(last.At))
	sign := ": "
	for _, w := range all {
		text += sign + widthWords(w)
		sign = ", "
	}
	return text
}

func widthWords(w aim.Width) string {
	return fmt.Sprintf("at %s yd %s left and %s right of the middle", yards(w.At), yards(w.Left), yards(w.Right))
}

func greenWords(g aim.Green) string {
	text := fmt.Sprintf("Green from %s yd, %s wide, %s deep", yards(g.Front), yards(g.Width), yards(g.Depth))
	if g.Turn != 0 {
		text += fmt.Sprintf(", turned %s degrees %s", yards(math.Abs(g.Turn)), sideOf(g.Turn))
	}
	return text
}

// zoneWords says what a zone is and where.
func zoneWords(z aim.Zone) string {
	return words.Capital(kindWords[z.Kind]) + ", " + alongWords(z.From, z.To) + ", " + acrossWords(z.Left, z.Right)
}

func alongWords(from, to float64) string {
	switch first, last := math.IsInf(from, -1), math.IsInf(to, 1); {
	case first && last:
		return "all the way"
	case first:
		return "up to " + yards(to) + " yd"
	case last:
		return "from " + yards(from) + " yd on"
	default:
		return yards(from) + " to " + yards(to) + " yd"
	}
}

func acrossWords(left, right float64) string {
	switch first, last := math.IsInf(left, -1), math.IsInf(right, 1); {
	case first && last:
		return "right across"
	case first && right < 0:
		return "from " + aside(right) + " outward"
	case last && left > 0:
		return "from " + aside(left) + " outward"
	case first:
		return "everything left of " + aside(right)
	case last:
		return "everything right of " + aside(left)
	case left >= 0:
		return yards(left) + " to " + aside(right)
	case right <= 0:
		return yards(-right) + " to " + aside(left)
	default:
		return aside(left) + " to " + aside(right)
	}
}

// aside is a place across the line.
func aside(x float64) string {
	if x == 0 {
		return "the middle"
	}
	return yards(math.Abs(x)) + " yd " + sideOf(x)
}
