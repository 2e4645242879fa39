package analysis

import (
	"strokeledger/analysis/practice"
)

// OwnDrill is a drill that somebody made up. No model stands behind it, so its mark is
// what its author said.
type OwnDrill struct {
	Key, Name   string
	SetUp       string
	Tries, Mark int // 0 where its author set none
}

// ToldOwn answers "what came of this drill?" for a drill of somebody's own: passed is
// what reaches its author's mark, in as many tries or as large a share of them.
func ToldOwn(own OwnDrill, in DrillInput) DrillFor {
	f := DrillFor{Drill: practice.Drill{Key: own.Key, Name: own.Name, SetUp: [3]string{own.SetUp}, Written: practice.Run, NoMark: true},
		Target: in.Target, Today: in.Target, Mark: practice.Mark{Tries: own.Tries, Pass: own.Mark, Sessions: 1}, Own: true}
	f.Lately.Since = in.Today.AddDays(-latelyDays)
	for _, s := range in.Sessions {
		r := SessionResult{DrillSession: s}
		counted, of := s.Made()
		if own.Mark > 0 && of >= own.Tries {
			r.Judged, r.Mark = true, practice.Mark{Tries: of, Pass: (own.Mark*of + own.Tries - 1) / own.Tries}
			r.Passed = counted >= r.Mark.Pass
		}
		f.Results = append(f.Results, r)
		if s.Day.Compare(f.Lately.Since) > 0 {
			f.Lately.Sessions++
			f.Lately.Counted, f.Lately.Of = f.Lately.Counted+counted, f.Lately.Of+of
		}
	}
	return f
}

// OwnKey is where the keys of drills of somebody's own begin; the number of the
// practice that they are set as follows.
const OwnKey = "own-"
