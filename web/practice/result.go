package practice

import (
	"fmt"
	"math"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/practice"
	"strokeledger/analysis/startline"
	"strokeledger/web/components"
	"strokeledger/web/words"
)

// ResultPart is what a session says.
type ResultPart struct {
	Heading string
	Made    string
	Passed  string   // whether the mark was reached, in a sentence
	Lines   []string // what was to be expected, the level, the line, the longest run
	Next    string
	Note    string
	Rows    []StationResult // by place; empty for one place
	Target  string          // over the counts that the target's golfer would reach
	Today   string          // over today's; empty where that is the target
	Change  components.Link // where the session is changed; empty for a coach
}

// StationResult is what counted at a place.
type StationResult struct{ From, Made, Target, Today string }

// SessionRow is a session in the list of a drill.
type SessionRow struct {
	Day    string
	From   string // of a drill that can be moved
	Width  string // of the bar, percent
	Goal   string // place of the mark, percent; empty without one
	Made   string
	Level  string // with its interval; empty where it is not sure enough
	Passed string
	At     string // where it is changed; empty for a coach
}

// made is what a try that counts is called in a drill.
func made(d analysis.DrillFor) string {
	if strings.HasSuffix(d.Counts, "holed") {
		return "holed"
	}
	return "counted"
}

// newResult says what a session says. before are those before it.
func newResult(in DrillInput, r analysis.SessionResult, before []analysis.SessionResult) *ResultPart {
	p := &ResultPart{Heading: "Result of " + words.ShortDay(r.Day), Note: r.Note}
	if in.Whose.Own {
		p.Change = components.Link{At: in.Whose.Session(r.ID), Name: "Change or remove this session"}
	}
	counted, of := r.Made()
	if of == 0 {
		return p
	}
	p.Made = fmt.Sprintf("%d of %d %s.", counted, of, made(in.DrillFor))
	if in.Own && r.Judged {
		p.Passed = in.passed(r)
	}
	if in.NoMark {
		return p
	}
	p.Passed = in.passed(r)
	p.Lines = in.lines(r)
	p.Next = in.next(r, before)
	p.stations(in, r)
	return p
}

// passed says whether a session reached its mark.
func (in DrillInput) passed(r analysis.SessionResult) string {
	_, of := r.Made()
	switch {
	case !r.Judged:
		return fmt.Sprintf("Too few tries for a mark: it takes %d.", practice.MinTries)
	case r.Passed:
		return fmt.Sprintf("Passed: the mark for %d tries is %d.", of, r.Mark.Pass)
	default:
		return fmt.Sprintf("Not passed: the mark for %d tries is %d.", of, r.Mark.Pass)
	}
}

// lines say what stands beside a result.
func (in DrillInput) lines(r analysis.SessionResult) []string {
	_, of := r.Made()
	expect := fmt.Sprintf("%s is expected to reach %s of %d", words.Capital(words.A(in.Target)), tenth(r.Read.Target), of)
	if in.Known && in.DrillFor.Today > in.Target {
		expect += fmt.Sprintf(", %s %s", in.who(), tenth(r.Read.Today))
	}
	all := []string{expect + "."}
	if in.Written == practice.Run && len(r.Tries) > 0 {
		all = append(all, fmt.Sprintf("Longest run: %d.", r.Tries.LongestRun()))
	}
	if l := in.Lately; l.Toward.Judged {
		counted, tries := l.Toward.Made()
		all = append(all, fmt.Sprintf("The mark of %s is for several sessions: %d of %d in the latest.", markWords(in.Mark), counted, tries))
	}
	if text := in.level(); text != "" {
		all = append(all, text)
	}
	return append(all, in.line()...)
}

// who is the player of today in a sentence.
func (in DrillInput) who() string {
	if in.Whose.Own {
		return "you today"
	}
	return in.Name + " today"
}

// level says which level the sessions of the last weeks point to.
func (in DrillInput) level() string {
	l := in.Lately
	if l.Of == 0 {
		return ""
	}
	over := fmt.Sprintf("The %s of the last eight weeks", words.OneOrMany(l.Sessions, "session", "sessions"))
	tries := fmt.Sprintf("%d of %d %s", l.Counted, l.Of, made(in.DrillFor))
	if !l.Read.Tells() {
		return fmt.Sprintf("%s, %s: too few tries to show a level.", over, tries)
	}
	return fmt.Sprintf("%s, %s, %s to a level of %s, between %s and %s.", over, tries, words.OneOrMany(l.Sessions, "points", "point"),
		words.Plain(math.Round(l.Read.Level)), words.Plain(l.Read.Interval.Low), words.Plain(l.Read.Interval.High))
}

// line says how straight the putts of the last weeks started.
func (in DrillInput) line() []string {
	r := in.Lately.Line
	if r == nil {
		return nil
	}
	spread := fmt.Sprintf("Start line from %s ft in those weeks: spread %s, between %s and %s; %s golfer is at %s.", words.Plain(in.Feet), degrees(r.Spread), degrees(r.Interval.Low), degrees(r.Interval.High),
		words.A(math.Round(in.DrillFor.Today)), degrees(r.Level))
	return []string{spread, lean(r) + " A straight putt needs no reading, so the spread looks better than it would on the course."}
}

// lean says where putts start on average.
func lean(r *startline.Reading) string {
	switch {
	case r.Bias == nil || !r.Bias.Clear():
		return "No clear lean to a side."
	case r.Bias.Mean < 0:
		return fmt.Sprintf("They start %s to the left on average: clear.", degrees(-r.Bias.Mean))
	default:
		return fmt.Sprintf("They start %s to the right on average: clear.", degrees(r.Bias.Mean))
	}
}

func degrees(x float64) string { return fmt.Sprintf("%.1f°", x) }

func tenth(x float64) string { return fmt.Sprintf("%.1f", x) }

// next says what to do after a session.
func (in DrillInput) next(r analysis.SessionResult, before []analysis.SessionResult) string {
	switch {
	case !r.Judged:
		return fmt.Sprintf("Next: at least %d tries in one session, so that there is a mark to judge by.", goal(in.DrillFor))
	case !r.Passed:
		return "Next: the same drill again within the week, at a slower pace."
	}
	for i := len(before) - 1; i >= 0; i-- {
		if !before[i].Judged || before[i].Feet != r.Feet {
			continue
		}
		if before[i].Passed {
			if in.MaxFeet > 0 && r.Feet+1 <= in.MaxFeet {
				return fmt.Sprintf("Next: passed twice running, so go back to %s ft, or give the time to the next part of the plan.", words.Plain(r.Feet+1))
			}
			return "Next: passed twice running, so once a month is enough; give the time to the next part of the plan."
		}
		break
	}
	return "Next: pass it once more on another day, since one pass may be luck."
}

// stations fills in what counted at each place, where there are several.
func (p *ResultPart) stations(in DrillInput, r analysis.SessionResult) {
	if len(r.Counted) < 2 || in.Written == practice.Run {
		return
	}
	p.Target = words.Capital(words.A(in.Target))
	if in.Known && in.DrillFor.Today > in.Target {
		p.Today = words.Capital(in.who())
	}
	for i, s := range in.Stations {
		row := StationResult{From: placeOf(in.Drill, s.Station, in.Units), Made: fmt.Sprintf("%d of %d", r.Counted[i], r.Tried[i]),
			Target: tenth(s.Of * float64(r.Tried[i])), Today: tenth(s.OfToday * float64(r.Tried[i]))}
		p.Rows = append(p.Rows, row)
	}
}

// sessionRows are the sessions of a drill, the latest first.
func (in DrillInput) sessionRows() []SessionRow {
	var all []SessionRow
	for i := len(in.Results) - 1; i >= 0 && len(all) < mostRows; i-- {
		r := in.Results[i]
		row := SessionRow{Day: words.ShortDay(r.Day), Made: r.Note, Passed: passedWord(r)}
		if counted, of := r.Made(); of > 0 {
			row.Width, row.Made = percent(float64(counted)/float64(of)), fmt.Sprintf("%d of %d", counted, of)
			if r.Judged {
				row.Goal = percent(float64(r.Mark.Pass) / float64(of))
			}
			if !in.NoMark && r.Read.Tells() {
				row.Level = fmt.Sprintf("%s (%s to %s)", words.Plain(math.Round(r.Read.Level)), words.Plain(r.Read.Interval.Low), words.Plain(r.Read.Interval.High))
			}
		}
		if in.MaxFeet > 0 {
			row.From = words.Plain(r.Feet) + " ft"
		}
		if in.Whose.Own {
			row.At = in.Whose.Session(r.ID)
		}
		all = append(all, row)
	}
	return all
}

// mostRows is how many sessions the page of a drill lists; the log has all.
const mostRows = 16

// passedWord says in a word whether a session reached its mark.
func passedWord(r analysis.SessionResult) string {
	switch {
	case !r.Judged:
		return ""
	case r.Passed:
		return "passed"
	default:
		return "not yet"
	}
}

func percent(share float64) string { return fmt.Sprintf("%.1f%%", 100*share) }
