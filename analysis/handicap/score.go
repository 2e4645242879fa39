package handicap

import (
	"slices"

	"strokeledger/analysis/golf"
)

// Score is a round as the rules see it.
type Score struct {
	Round  golf.RoundID
	Date   golf.Date // on which it was played
	Holes  []Hole    // in the order of play; 18 or nine, or it does not count
	Rating float64   // Course Rating of these holes in strokes, 0 where it is not known
	Slope  float64   // Slope Rating of these holes, 113 for the standard; 0 where it is not known
}

// Hole is one score.
type Hole struct {
	Par     int
	Index   int // stroke index, 0 where it is not known
	Strokes int // penalties included; of a hole that was picked up the most likely score
}

// Note says why a score does not count. The zero value says that it does.
type Note uint8

// The reasons.
const (
	Counts    Note = iota
	Holes          // neither 18 nor nine holes
	NoRating       // course or slope rating is not known
	NineFirst      // nine holes before there is an Index, from which the other nine are expected
)

// Entry is a score in the record.
type Entry struct {
	Score        Score
	Note         Note    // why it does not count; it then leaves the rest as it was
	Adjusted     int     // gross score with every hole limited (Rule 3.1)
	Differential float64 // of 18 holes in strokes, less the reductions of exceptional scores
	Exceptional  int     // by how much it reduced the record: 0, 1 or 2
	Used         bool    // it is among the lowest of the present Index
	Index        float64 // after it
	HasIndex     bool    // there was one after it
	Cap          Cap     // what held that Index back
}

// adjusted is the gross score with no hole above net double bogey, or above par
// + 5 while there is no Index (Rule 3.1).
func adjusted(holes []Hole, received int, hasIndex bool) int {
	sum := 0
	strokes := strokesOn(holes, received)
	for i, h := range holes {
		most := h.Par + 5
		if hasIndex {
			most = h.Par + 2 + strokes[i]
		}
		sum += min(h.Strokes, most)
	}
	return sum
}

// strokesOn spreads the strokes that a player receives over holes by their
// stroke index, the hardest first; holes whose index is not known come in the
// order of play. A player who gives strokes gives them on the easiest.
func strokesOn(holes []Hole, received int) []int {
	order := make([]int, len(holes))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return holes[a].Index - holes[b].Index })
	n := len(holes)
	each, rest := received/n, received%n
	if rest < 0 {
		each, rest = each-1, rest+n
	}
	strokes := make([]int, n)
	for k, i := range order {
		strokes[i] = each
		if k < rest {
			strokes[i]++
		}
	}
	return strokes
}
