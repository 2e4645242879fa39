package handicap

import (
	"cmp"
	"slices"

	"strokeledger/analysis/golf"
)

// Score is a round as the rules see it. Rating and Slope are those of the holes
// played, 18 or nine; 0 where they are not known.
type Score struct {
	Round  golf.RoundID
	Date   golf.Date
	Holes  []Hole
	Rating float64
	Slope  float64
}

// Hole is one score.
type Hole struct {
	Par     int
	Index   int // stroke index, 0 where it is not known
	Strokes int
}

// Note says why a score does not count.
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
	Note         Note
	Adjusted     int     // gross score, each hole at its most
	Differential float64 // with the reductions of exceptional scores
	Exceptional  int     // by how much it reduced the record
	Used         bool    // it is among the lowest of the present Index
	Index        float64 // after it
	HasIndex     bool
	Cap          Cap // what held that Index back
}

// Record is a player's scores in the order of their days, and where the Index
// stands after the last.
type Record struct {
	Entries  []Entry
	Index    float64
	HasIndex bool
	Cap      Cap
	Low      float64 // Low Index, where there is one
	HasLow   bool
	Thin     golf.Thin // why there is no Index
}

// Estimate goes through scores, in any order, as they were played.
func Estimate(scores []Score) Record {
	sorted := slices.Clone(scores)
	slices.SortStableFunc(sorted, func(a, b Score) int { return a.Date.Compare(b.Date) })
	var r Record
	var counted []int // places of the entries with a differential
	for _, s := range sorted {
		e := Entry{Score: s, Note: noteOf(s, r.HasIndex)}
		if e.Note == Counts {
			r.differential(&e)
		}
		r.Entries = append(r.Entries, e)
		if e.Note == Counts {
			counted = append(counted, len(r.Entries)-1)
			r.exceptional(counted)
			r.renew(counted)
		}
		last := &r.Entries[len(r.Entries)-1]
		last.Index, last.HasIndex, last.Cap = r.Index, r.HasIndex, r.Cap
	}
	r.use(counted)
	r.Thin = golf.Enough(golf.ThinIndex, len(counted), fewestScores)
	return r
}

func noteOf(s Score, hasIndex bool) Note {
	switch {
	case len(s.Holes) != 18 && len(s.Holes) != 9:
		return Holes
	case !(s.Rating > 0 && s.Slope > 0):
		return NoRating
	case len(s.Holes) == 9 && !hasIndex:
		return NineFirst
	default:
		return Counts
	}
}

// differential fills in what a score comes to at the Index of the day.
func (r *Record) differential(e *Entry) {
	s := e.Score
	par := 0
	for _, h := range s.Holes {
		par += h.Par
	}
	nine := len(s.Holes) == 9
	received := 0
	if r.HasIndex {
		index := r.Index
		if nine {
			index = tenth(index / 2) // Rule 6.1b, from memory
		}
		received = CourseHandicap(index, s.Slope, s.Rating, par)
	}
	e.Adjusted = adjusted(s.Holes, received, r.HasIndex)
	e.Differential = Differential(float64(e.Adjusted), s.Rating, s.Slope)
	if nine {
		e.Differential = tenth(e.Differential + expectedPerPoint*r.Index + expectedBase)
	}
}

// exceptional reduces the last twenty differentials when the newest is far
// below the Index of the day (Rule 5.9).
func (r *Record) exceptional(counted []int) {
	if !r.HasIndex {
		return
	}
	newest := &r.Entries[counted[len(counted)-1]]
	switch below := r.Index - newest.Differential; {
	case below >= veryExceptional-tiny:
		newest.Exceptional = 2
	case below >= exceptionalAt-tiny:
		newest.Exceptional = 1
	default:
		return
	}
	for _, i := range counted[max(0, len(counted)-recordLength):] {
		r.Entries[i].Differential = tenth(r.Entries[i].Differential - float64(newest.Exceptional))
	}
}

// renew works out the Index after the newest score.
func (r *Record) renew(counted []int) {
	var all []float64
	for _, i := range counted {
		all = append(all, r.Entries[i].Differential)
	}
	r.low(counted)
	if r.Index, r.HasIndex = Index(all); r.HasIndex && r.HasLow {
		r.Index, r.Cap = Capped(r.Index, r.Low)
	}
}

// low finds the Low Index: the lowest of the 365 days before the newest score,
// from when twenty scores stood (Rule 5.7).
func (r *Record) low(counted []int) {
	r.HasLow, r.Low, r.Cap = false, 0, NoCap
	newest := r.Entries[counted[len(counted)-1]].Score.Date
	from := newest.AddDays(-lowIndexDays)
	for k, i := range counted[:len(counted)-1] {
		e := r.Entries[i]
		if k+1 < recordLength || !e.HasIndex || e.Score.Date.Compare(from) < 0 {
			continue
		}
		if !r.HasLow || e.Index < r.Low {
			r.HasLow, r.Low = true, e.Index
		}
	}
}

// use marks the lowest differentials, of which the present Index is made.
func (r *Record) use(counted []int) {
	latest := slices.Clone(counted[max(0, len(counted)-recordLength):])
	n, _ := bestOf(len(latest))
	slices.SortStableFunc(latest, func(a, b int) int { return cmp.Compare(r.Entries[a].Differential, r.Entries[b].Differential) })
	for _, i := range latest[:n] {
		r.Entries[i].Used = true
	}
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
