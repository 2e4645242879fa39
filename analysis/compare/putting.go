package compare

import (
	"fmt"
	"math"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/stat"
)

// Holed is putts of some lengths: how many were tried, how many went in, and
// how many of them a golfer holes.
type Holed struct {
	From, To golf.Distance // (From, To]; To is 0 for no end
	Tried    int           // putts
	Made     int           // of these
	Length   golf.Distance // mean of those tried; NaN when none was
	feet     []float64     // length of each
}

// String names the lengths as an address writes them, in feet: 3-4.
func (h Holed) String() string { return fmt.Sprintf("%g-%g", h.From.Feet(), h.To.Feet()) }

// Share is the part that went in. It is NaN when none was tried.
func (h Holed) Share() float64 { return float64(h.Made) / float64(h.Tried) }

// Interval is where the share lies, with 95 %.
func (h Holed) Interval() stat.Interval { return stat.ShareInterval(h.Made, h.Tried, confidence) }

// By is the share of these very putts that a golfer holes. It is NaN when none
// was tried.
func (h Holed) By(p golfer.Putter) float64 {
	sum := 0.0
	for _, ft := range h.feet {
		sum += p.MakeRate(ft)
	}
	return sum / float64(h.Tried)
}

// puttEnds are the lengths between which putts are counted together. They are
// finer than the bands of an account, since the curve is steep there.
var puttEnds = []golf.Distance{2 * golf.Foot, 3 * golf.Foot, 4 * golf.Foot, 5 * golf.Foot, 6 * golf.Foot, 8 * golf.Foot,
	10 * golf.Foot, 15 * golf.Foot, 20 * golf.Foot, 30 * golf.Foot}

// PuttingCurve says how many putts went in by length, over the rounds of some
// columns. A round in two of them counts once. Lengths of which none was tried
// are left out.
func PuttingCurve(columns []Column) []Holed {
	var curve []Holed
	rounds := together(columns)
	from := golf.Distance(0)
	for _, to := range append(puttEnds, 0) {
		if h := holed(rounds, from, to); h.Tried > 0 {
			curve = append(curve, h)
		}
		from = to
	}
	return curve
}

// together lists the rounds of columns, each once.
func together(columns []Column) []*Judged {
	var all []*Judged
	seen := map[golf.RoundID]bool{}
	for _, c := range columns {
		for _, r := range c.Rounds {
			if !seen[r.ID] {
				seen[r.ID] = true
				all = append(all, r)
			}
		}
	}
	return all
}

// isPutt reports whether a shot is a putt of (from, to]; 0 for no end.
func isPutt(s golf.Shot, from, to golf.Distance) bool {
	return s.Lie == golf.Green && s.Distance > from && (to == 0 || s.Distance <= to)
}

// holed counts the putts of (from, to] in rounds.
func holed(rounds []*Judged, from, to golf.Distance) Holed {
	h := Holed{From: from, To: to, Length: golf.Distance(math.NaN())}
	sum := golf.Distance(0)
	for _, r := range rounds {
		for _, hole := range r.Round.Holes {
			sum += h.count(hole)
		}
	}
	if h.Tried > 0 {
		h.Length = sum / golf.Distance(h.Tried)
	}
	return h
}

// count counts the putts of a hole and returns their length together. One that was
// picked up instead of holed does not count as made.
func (h *Holed) count(hole golf.Hole) (sum golf.Distance) {
	played := hole.Played()
	for i, s := range played {
		if !isPutt(s, h.From, h.To) {
			continue
		}
		h.Tried++
		sum += s.Distance
		h.feet = append(h.feet, s.Distance.Feet())
		if i == len(played)-1 && !hole.PickedUp {
			h.Made++
		}
	}
	return sum
}
