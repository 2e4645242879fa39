package coach

import (
	"fmt"

	"strokeledger/web/notes"
	"strokeledger/web/words"
)

// What fits on the printed page: so many lines of notes and as many of practice,
// each of so many letters, and so many of the latest results of an assignment.
const (
	reportLines   = 15
	reportLetters = 56
	reportResults = 2
)

// fitting is how many of n things fit, where thing i takes lines(i) lines. The
// first always does.
func fitting(n int, lines func(i int) int) int {
	sum := 0
	for i := range n {
		if sum += lines(i); sum > reportLines && i > 0 {
			return i
		}
	}
	return n
}

// fit leaves out notes and practice that do not fit on one page, and counts them.
func (r *ReportPage) fit() {
	var left []string
	room := fitting(len(r.Written), func(i int) int { return r.Written[i].Lines(reportLetters) })
	if n := len(r.Written) - room; n > 0 {
		r.Written, left = r.Written[:room], append(left, words.Plural(n, "earlier note", "earlier notes"))
	}
	for i := range r.Practice {
		a := &r.Practice[i]
		a.Results = a.Results[max(0, len(a.Results)-reportResults):]
	}
	room = fitting(len(r.Practice), func(i int) int { return notes.HeadLines + 1 + len(r.Practice[i].Results) })
	if n := len(r.Practice) - room; n > 0 {
		r.Practice, left = r.Practice[:room], append(left, words.Plural(n, "more thing to practise", "more things to practise"))
	}
	if len(left) > 0 {
		r.More = fmt.Sprintf("Not shown here: %s. See Lessons and practice.", words.List(left))
	}
}
