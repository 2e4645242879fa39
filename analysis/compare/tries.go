package compare

import "strokeledger/analysis/stat"

// Tries are those of a session of practice.
type Tries struct {
	Counted, Of int
	Expected    float64 // how many would count for one golfer, the same in all sessions: from farther away fewer do
}

// Practised are the shares of tries that counted in two runs of sessions, one after
// the other. The change of the second is in the share that counted beyond what was
// expected, so more is better; as elsewhere, tries that are independent of each other
// are the least that chance does. All sessions need a try.
func (l Ladder) Practised(before, after []Tries, seed uint64) (was, is Cell) {
	was, from := l.practised(before, seed)
	is, to := l.practised(after, seed)
	is.Change = changeOf(from, to)
	return was, is
}

// practised is the share of tries that counted, and what it is beyond the expected.
func (l Ladder) practised(all []Tries, seed uint64) (share Cell, beyond Figure) {
	drawn := l.drawn.over(len(all), seed)
	counted, over, of := make([]float64, len(all)), make([]float64, len(all)), make([]float64, len(all))
	e := events{kind: ofShare}
	for i, t := range all {
		counted[i], over[i], of[i] = float64(t.Counted), float64(t.Counted)-t.Expected, float64(t.Of)
		e.hits, e.chances = e.hits+t.Counted, e.chances+t.Of
	}
	f := ratio(counted, of, 1, drawn)
	f.events = e
	beyond = ratio(over, of, 1, drawn)
	beyond.events = e
	return drawn.cell(f, e.chances), beyond
}

// ShareOf is where the share of tries of one session lies, 95 %.
func ShareOf(counted, of int) stat.Interval { return stat.ShareInterval(counted, of, confidence) }
