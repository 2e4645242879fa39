package statement

import (
	"cmp"
	"slices"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
	"strokeledger/web/figures"
)

// holeAmounts are the losses of the holes as they are printed, tenths that add up
// to what the lines come to without the line of the course.
type holeAmounts struct {
	lost    map[int]float64 // by number
	balance map[int]float64 // with the holes before it
}

func newHoleAmounts(holes []account.Hole, total float64) holeAmounts {
	var exact []float64
	for _, h := range holes {
		exact = append(exact, h.Lost)
	}
	a, balance, tenths := holeAmounts{map[int]float64{}, map[int]float64{}}, 0.0, figures.Tenths(exact, total)
	for _, i := range byNumber(holes) {
		balance += tenths[i]
		a.lost[holes[i].Number], a.balance[holes[i].Number] = tenths[i], balance
	}
	return a
}

// byNumber lists the places of holes in the order of the card, which is not that
// of play where a round began on another hole.
func byNumber(holes []account.Hole) []int {
	all := make([]int, len(holes))
	for i := range all {
		all[i] = i
	}
	slices.SortFunc(all, func(i, j int) int { return cmp.Compare(holes[i].Number, holes[j].Number) })
	return all
}

// holesTotal is what the printed lines come to without what the course costs,
// which no hole is charged with.
func holesTotal(lines map[string]float64) float64 {
	total := 0.0
	for name, tenths := range lines {
		if name != courseLine {
			total += tenths
		}
	}
	return figures.Tenth(total)
}

// roundedUp is what counting a hole that was picked up in whole strokes added to its
// loss.
func roundedUp(h account.Hole) float64 {
	if !h.PickedUp {
		return 0
	}
	sum := h.Lost
	for _, s := range h.Shots {
		sum -= s.Lost
	}
	return sum
}

// half is 0 for a hole of the front nine and 1 for one of the back nine.
func half(number int) int {
	if number > 9 {
		return 1
	}
	return 0
}

// partAmounts share the printed lines out among the nines, as tenths: the parts of
// a nine add up to its holes, and a part of both nines to its line.
func partAmounts(in RoundInput, lines map[string]float64, amounts holeAmounts) [2]map[string]float64 {
	exact, total, back := [2]map[string]float64{{}, {}}, 0.0, false
	for _, h := range in.Account.Holes {
		side := half(h.Number)
		back = back || side == 1
		if side == 0 {
			total += amounts.lost[h.Number]
		}
		if !h.Detailed {
			exact[side][scoreOnly] += h.Lost
		}
		exact[side][rounding] += roundedUp(h)
		for c, lost := range byPart(h) {
			if lost != 0 {
				exact[side][partName(golf.Category(c))] += lost
			}
		}
	}
	if !back {
		return [2]map[string]float64{lines, {}}
	}
	var names []string
	var values []float64
	for _, name := range lineNames {
		if line, known := lines[name]; known {
			// half-way between what the front nine lost and what the printed line leaves
			// of the back nine, so that what rounding moves is shared between them
			names, values = append(names, name), append(values, (exact[0][name]+line-exact[1][name])/2)
		}
	}
	front, rest := map[string]float64{}, map[string]float64{}
	for i, tenths := range figures.Tenths(values, total) {
		front[names[i]] = tenths
		rest[names[i]] = figures.Tenth(lines[names[i]] - tenths)
	}
	return [2]map[string]float64{front, rest}
}
