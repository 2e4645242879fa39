package compare

import (
	"cmp"
	"fmt"
	"slices"

	"strokeledger/analysis/account"
	"strokeledger/analysis/golf"
)

// Behind is a shot, or a whole hole, that a figure is made of.
type Behind struct {
	Round *Judged // in which it was played
	Hole  int     // place in the round
	Shot  int     // place in the hole, -1 for the hole
	Lost  float64 // by the shot or on the hole, in strokes
	Hit   bool    // it counts as a success in a share
}

// ShotsOf lists the shots behind a row of a column, the costliest first.
func (c *Column) ShotsOf(row Row) []Behind {
	var all []Behind
	for _, r := range c.Rounds {
		for i, h := range r.Account.Holes {
			for k, s := range h.Shots {
				if row.holds(s.Band) {
					all = append(all, Behind{r, i, k, s.Lost, false})
				}
			}
		}
	}
	return costliestFirst(all)
}

// holds reports whether shots of a band belong to the row.
func (r Row) holds(b account.Band) bool {
	return r.Category == 0 || r.Band == b || r.Band == (account.Band{}) && r.Category == b.Category
}

// ShortPutts lists the putts of 6 ft and less of a column, the costliest first; a
// hit is one that went in.
func (c *Column) ShortPutts() []Behind { return puttsBehind(c.Rounds, 0, 6*golf.Foot) }

// PuttsBehind lists the putts of a length of the putting curve of some columns,
// the costliest first; a hit is one that went in.
func PuttsBehind(columns []Column, h Holed) []Behind {
	return puttsBehind(together(columns), h.From, h.To)
}

// puttsBehind lists the putts of (from, to].
func puttsBehind(rounds []*Judged, from, to golf.Distance) []Behind {
	var all []Behind
	for _, r := range rounds {
		for i, h := range r.Account.Holes {
			for k, s := range h.Shots {
				if isPutt(r.Round.Holes[i].Shots[k], from, to) {
					all = append(all, Behind{r, i, k, s.Lost, k == len(h.Shots)-1 && !h.PickedUp})
				}
			}
		}
	}
	return costliestFirst(all)
}

// HolesOf lists the holes behind a measure of a column, the costliest first: for
// a share those with a chance, otherwise those that count.
func (c *Column) HolesOf(measure Measure, boundary golf.Distance) []Behind {
	var all []Behind
	for _, r := range c.Rounds {
		doubles := map[int]account.Double{}
		for _, d := range r.Account.Doubles {
			doubles[d.Hole] = d
		}
		for i, h := range r.Account.Holes {
			value, chances := measure.of(r.only(i, doubles, boundary))
			if value > 0 || measure.Share && chances > 0 {
				all = append(all, Behind{r, i, -1, h.Lost, value > 0})
			}
		}
	}
	return costliestFirst(all)
}

// only is the round as if one hole of it had been played alone.
func (j *Judged) only(i int, doubles map[int]account.Double, boundary golf.Distance) *Judged {
	one := &Judged{Holes: 1}
	one.Account.Counts.Hole(j.Round.Holes[i], boundary)
	if d, double := doubles[j.Account.Holes[i].Number]; double {
		one.Account.Doubles = []account.Double{d}
		one.Account.Counts.Double(d.Kind)
	}
	return one
}

// costliestFirst sorts by what was lost; equals stay in the order of play.
func costliestFirst(all []Behind) []Behind {
	slices.SortStableFunc(all, func(a, b Behind) int { return cmp.Compare(b.Lost, a.Lost) })
	return all
}

// String names the row for addresses: "putting 3-6", distances in feet on the
// green and in yards elsewhere. RowAt reads it.
func (r Row) String() string {
	b := r.Band
	switch {
	case r.Category == 0:
		return "all"
	case b == (account.Band{}):
		return r.Category.String()
	case r.Category == golf.TeeShots:
		return fmt.Sprintf("tee par %d", b.Par)
	case r.Category == golf.Putting:
		return fmt.Sprintf("putting %g-%g", b.Low.Feet(), b.High.Feet())
	case r.Category == golf.ShortGame:
		return fmt.Sprintf("short game %s %g-%g", b.Lie, b.Low.Yards(), b.High.Yards())
	default:
		return fmt.Sprintf("approach %g-%g", b.Low.Yards(), b.High.Yards())
	}
}

// Whole reports whether the row is a part of the game, or everything, not a band.
func (r Row) Whole() bool { return r.Band == (account.Band{}) }

// RowAt finds the row of a name; ok is false for none.
func RowAt(boundary golf.Distance, name string) (r Row, ok bool) {
	for _, r := range rowsOf(boundary) {
		if r.String() == name {
			return r, true
		}
	}
	return Row{}, false
}
