package practice

// How a mark is set. Our own choice: a mark that the target's golfer passes three
// times in five is worth passing, and one that today's golfer passes one time in
// three tells something.
const (
	passTarget = .6  // the least chance of the target's golfer
	passToday  = .35 // the most of today's, for a number of tries that tells the two apart
	minTries   = MinTries
	maxTries   = 60  // of one session
	mostTries  = 120 // of several sessions together
)

// MinTries is from how many tries a session can be told to have passed.
const MinTries = 10

// Mark is what to reach in a drill.
type Mark struct {
	Tries    int
	Pass     int     // how many must count
	Target   float64 // chance that the target's golfer passes
	Today    float64 // the same of today's golfer
	Sessions int     // over how many sessions the tries are spread; 1 for most
	Tells    bool    // today's golfer passes seldom enough for the mark to tell the two apart
}

// MarkOf is the mark of a number of tries: the most that the target's golfer
// reaches three times in five. Chances are by station, see Drill.Chances.
func MarkOf(target, today []float64, tries int) Mark {
	p, q := counts(target, tries), counts(today, tries)
	m := Mark{Tries: tries, Target: 1, Today: 1, Sessions: (tries + maxTries - 1) / maxTries}
	for k := tries; k > 0; k-- {
		if c := atLeast(p, k); c >= passTarget {
			m.Pass, m.Target, m.Today = k, c, atLeast(q, k)
			break
		}
	}
	m.Tells = m.Pass > 0 && m.Today <= passToday
	return m
}

// Mark is the mark of the fewest whole sets whose mark tells the target's golfer
// from today's: up to 60 tries in one session, up to 120 in several. Where not
// even those tell them apart it is that of one session, with Tells false.
func (d Drill) Mark(target, today []float64) Mark {
	for tries := d.Sets(minTries); tries <= mostTries; tries += d.Set() {
		if m := MarkOf(target, today, tries); m.Tells {
			return m
		}
	}
	return MarkOf(target, today, d.Sets(maxTries-d.Set()+1))
}

// Sets is the smallest number of tries in whole sets that is at least some tries.
func (d Drill) Sets(tries int) int {
	return (tries + d.Set() - 1) / d.Set() * d.Set()
}
