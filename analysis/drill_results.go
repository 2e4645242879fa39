package analysis

import (
	"strokeledger/analysis/golf"
	"strokeledger/analysis/practice"
	"strokeledger/analysis/startline"
)

// DrillSession is what was written down of a drill on a day.
type DrillSession struct {
	ID      int64
	Name    string // what the drill was called
	Day     golf.Date
	Feet    float64 // 0 for a drill that cannot be moved
	Tries   golf.Tries
	Counted []int // by station
	Tried   []int // by station
	Minutes int   // 0 when not written down
	Note    string
}

// Made is how many tries counted, and of how many.
func (s DrillSession) Made() (counted, of int) {
	for i := range s.Counted {
		counted, of = counted+s.Counted[i], of+s.Tried[i]
	}
	return counted, of
}

// SessionResult is a session with what it says.
type SessionResult struct {
	DrillSession
	Read   practice.Result // zero for a drill without a mark
	Mark   practice.Mark   // of as many tries; zero where Judged is false
	Judged bool            // there were tries enough for a mark
	Passed bool            // it was reached
}

// latelyDays is how far back sessions are read together: eight weeks.
const latelyDays = 56

// Lately is what the sessions of the last eight weeks say together.
type Lately struct {
	Since    golf.Date // the first day that counts
	Sessions int
	Counted  int
	Of       int
	Read     practice.Result    // zero without a session
	Line     *startline.Reading // of those from the distance of the drill; nil for another drill
	Toward   SessionResult      // the latest of them up to the tries of a mark that is for several; zero for another mark
}

// results reads the sessions of a drill.
func (e *Engine) results(f *DrillFor, in DrillInput) error {
	from := in.Today.AddDays(-latelyDays)
	f.Lately.Since = from
	var lately []DrillSession
	for _, s := range in.Sessions {
		if !f.NoMark && len(s.Counted) != len(f.Drill.Stations) || len(s.Counted) != len(s.Tried) {
			continue // of a drill that had other stations then
		}
		r, err := e.resultOf(f, s)
		if err != nil {
			return err
		}
		f.Results = append(f.Results, r)
		if s.Day.Compare(from) > 0 {
			lately = append(lately, s)
		}
	}
	if f.NoMark || len(lately) == 0 {
		f.Lately.Sessions = len(lately)
		return nil
	}
	return e.together(f, lately)
}

// resultOf is what a session says.
func (e *Engine) resultOf(f *DrillFor, s DrillSession) (SessionResult, error) {
	r := SessionResult{DrillSession: s}
	counted, of := s.Made()
	if f.NoMark || of == 0 {
		return r, nil
	}
	levels, err := e.levelsOf(f.Drill, s.Feet)
	if err != nil {
		return r, err
	}
	r.Read = levels.Read(countsOf(s), f.Target, f.Today)
	if of >= practice.MinTries {
		r.Judged, r.Mark = true, practice.MarkOf(levels.At(f.Target), levels.At(f.Today), of)
		r.Passed = counted >= r.Mark.Pass
	}
	return r, nil
}

func countsOf(s DrillSession) []practice.Count {
	counts := make([]practice.Count, len(s.Counted))
	for i := range counts {
		counts[i] = practice.Count{Counted: s.Counted[i], Of: s.Tried[i]}
	}
	return counts
}

// together reads sessions as one, each distance with its own chances.
func (e *Engine) together(f *DrillFor, sessions []DrillSession) error {
	l := &f.Lately
	l.Sessions = len(sessions)
	all, counts, err := e.pooled(f.Drill, sessions)
	if err != nil {
		return err
	}
	for _, s := range sessions {
		counted, of := s.Made()
		l.Counted, l.Of = l.Counted+counted, l.Of+of
	}
	l.Read = all.Read(counts, f.Target, f.Today)
	if l.Line, err = e.lineOf(f, sessions); err != nil || f.Mark.Sessions < 2 {
		return err
	}
	l.Toward, err = e.resultOf(f, latestTries(f, sessions))
	return err
}

// byFeet adds up sessions from the same distance.
func byFeet(sessions []DrillSession) []DrillSession {
	var all []DrillSession
	at := map[float64]int{}
	for _, s := range sessions {
		i, known := at[s.Feet]
		if !known {
			i = len(all)
			at[s.Feet], all = i, append(all, DrillSession{Feet: s.Feet, Counted: make([]int, len(s.Counted)), Tried: make([]int, len(s.Tried))})
		}
		all[i].add(s)
	}
	return all
}

func (s *DrillSession) add(more DrillSession) {
	for i := range more.Counted {
		s.Counted[i] += more.Counted[i]
		s.Tried[i] += more.Tried[i]
	}
}

// latestTries are the latest sessions from the distance of the drill, together, until
// there are as many tries as its mark is for.
func latestTries(f *DrillFor, sessions []DrillSession) DrillSession {
	sum := DrillSession{Feet: f.Feet, Counted: make([]int, len(f.Drill.Stations)), Tried: make([]int, len(f.Drill.Stations))}
	for i := len(sessions) - 1; i >= 0; i-- {
		if _, of := sum.Made(); of >= f.Mark.Tries {
			break
		}
		if sessions[i].Feet == f.Feet {
			sum.add(sessions[i])
		}
	}
	return sum
}
