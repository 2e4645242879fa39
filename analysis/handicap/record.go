package handicap

import (
	"cmp"
	"slices"

	"strokeledger/analysis/golf"
)

// Record is a player's scores in the order of their days, and where the Index
// stands after the last.
type Record struct {
	Entries  []Entry
	Index    float64   // at most 54.0, below 0 for a plus player; 0 without one
	HasIndex bool      // three scores or more count
	Cap      Cap       // what holds the Index back
	Low      float64   // Low Index; 0 without one
	HasLow   bool      // twenty scores stood before one of the last 365 days
	Thin     golf.Thin // why there is no Index; no note when there is one
}

// Estimate goes through scores in the order in which they were played, whatever
// order they come in, and works out the Index after each.
func Estimate(scores []Score) Record {
	sorted := slices.Clone(scores)
	slices.SortStableFunc(sorted, func(a, b Score) int { return a.Date.Compare(b.Date) })
	var r Record
	var counted []int // places of the entries with a differential
	for _, s := range sorted {
		counted = r.take(s, counted)
	}
	r.use(counted)
	r.Thin = golf.Enough(golf.ThinIndex, len(counted), fewestScores)
	return r
}

// take adds a score to the record and returns the places of the entries with a
// differential, its own included when it has one.
func (r *Record) take(s Score, counted []int) []int {
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
	return counted
}

// noteOf decides whether a score counts.
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
	n := best[len(latest)].n
	slices.SortStableFunc(latest, func(a, b int) int { return cmp.Compare(r.Entries[a].Differential, r.Entries[b].Differential) })
	for _, i := range latest[:n] {
		r.Entries[i].Used = true
	}
}
