package analysis

import (
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/practice"
	"strokeledger/analysis/stat"
)

// CarrySessions is how many sessions of a drill it takes to set them beside the course.
const CarrySessions = 4

// carryMonths is how many months are shown at most, the latest of them.
const carryMonths = 12

// CarryInput is a drill and the rounds to set beside it.
type CarryInput struct {
	Drill    DrillFor      // with what came of it
	History  []golf.Played // all rounds, in the order of their days
	Boundary golf.Distance // the player's
	Today    golf.Date
}

// Carry is a drill beside its part of the game on the course. The sessions are halved,
// and so are the rounds from the month before the first session on: at the last
// session of the earlier half.
type Carry struct {
	Enough   bool          // there are sessions enough; the rest is zero otherwise
	Part     golf.Category // of the game
	From     golf.Date     // the first day of the earlier half
	Until    golf.Date     // its last
	Sessions []CarrySession
	Months   []CarryMonth // up to that of today, the latest last
	Halves   [2]CarryHalf // the earlier, the later
	Drill    compare.Change
	Course   compare.Change // in strokes lost for 18 holes
}

// CarrySession is a session with where its share of tries lies, 95 %.
type CarrySession struct {
	SessionResult
	Share stat.Interval
}

// CarryMonth is what a month says of both.
type CarryMonth struct {
	Span        golf.Span
	Counted, Of int
	Rounds      int // with a hole whose strokes are known
	PlaysTo     compare.PlaysTo
}

// CarryHalf is half of the sessions, and the rounds of those days.
type CarryHalf struct {
	Sessions int
	Share    compare.Cell
	Rounds   int
	Lost     compare.Cell // for 18 holes, in the drill's part of the game
	PlaysTo  compare.PlaysTo
}

// StandsBeside reports whether there are sessions enough of the drill to set it beside
// the course. A drill of somebody's own and one without a mark have no part of the game
// to stand beside.
func (f DrillFor) StandsBeside() bool {
	n := 0
	for _, r := range f.Results {
		if _, of := r.Made(); of > 0 {
			n++
		}
	}
	return !f.Own && !f.NoMark && n >= CarrySessions
}

// CarryOver answers "does the drill carry over to the course?", for a drill that
// StandsBeside it.
func (e *Engine) CarryOver(in CarryInput) (c Carry, err error) {
	if !in.Drill.StandsBeside() {
		return c, nil
	}
	for _, r := range in.Drill.Results {
		if counted, of := r.Made(); of > 0 {
			c.Sessions = append(c.Sessions, CarrySession{r, compare.ShareOf(counted, of)})
		}
	}
	n := len(c.Sessions)
	c.Enough, c.Part, c.Until = true, in.Drill.Part, c.Sessions[n/2-1].Day
	if err := e.carryDrill(&c, in.Drill); err != nil {
		return c, err
	}
	return c, e.carryCourse(&c, in)
}

// carryDrill compares the halves of the sessions: each with what the golfer of one
// level would have reached, the level that all of them point to.
func (e *Engine) carryDrill(c *Carry, f DrillFor) error {
	all := make([]DrillSession, len(c.Sessions))
	for i, s := range c.Sessions {
		all[i] = s.DrillSession
	}
	levels, counts, err := e.pooled(f.Drill, all)
	if err != nil {
		return err
	}
	level := levels.Read(counts, f.Target, f.Today).Level
	tries := make([]compare.Tries, len(all))
	for i, s := range all {
		of, err := e.levelsOf(f.Drill, s.Feet)
		if err != nil {
			return err
		}
		t := compare.Tries{Expected: of.Read(countsOf(s), level, level).Target}
		t.Counted, t.Of = s.Made()
		tries[i] = t
	}
	half := len(tries) / 2
	c.Halves[0].Sessions, c.Halves[1].Sessions = half, len(tries)-half
	c.Halves[0].Share, c.Halves[1].Share = e.ladder.Practised(tries[:half], tries[half:], drawSeed)
	c.Drill = c.Halves[1].Share.Change
	return nil
}

// pooled are the chances at every level of sessions read as one, each distance with
// its own, and what counted in them.
func (e *Engine) pooled(d practice.Drill, sessions []DrillSession) (all practice.Levels, counts []practice.Count, err error) {
	for _, group := range byFeet(sessions) {
		levels, err := e.levelsOf(d, group.Feet)
		if err != nil {
			return nil, nil, err
		}
		if all == nil {
			all = levels
		} else {
			all = all.Beside(levels)
		}
		counts = append(counts, countsOf(group)...)
	}
	return all, counts, nil
}

// carryCourse compares the rounds of the halves, and looks at each month.
func (e *Engine) carryCourse(c *Carry, in CarryInput) error {
	first := c.Sessions[0].Day
	c.From = golf.Month(first.Year, first.Month-1).From
	spans := []golf.Span{{From: c.From, To: c.Until}, {From: c.Until.AddDays(1)}}
	spans = append(spans, monthsFrom(c.From, in.Today)...)
	months, err := e.Months(MonthsInput{History: in.History, Choice: golf.Comparison{Spans: spans}, Target: in.Drill.Target, Boundary: in.Boundary})
	if err != nil {
		return err
	}
	columns := months.Sheet.Columns
	for i := range c.Halves {
		h, of := &c.Halves[i], columns[i]
		h.Rounds, h.Lost, h.PlaysTo = len(of.Rounds), of.Cells[c.Part], of.PlaysTo[c.Part]
	}
	if columns[0].Cells[c.Part].Known {
		c.Course = c.Halves[1].Lost.Change
	}
	for i, of := range columns[len(c.Halves):] {
		m := CarryMonth{Span: spans[len(c.Halves)+i], Rounds: len(of.Rounds), PlaysTo: of.PlaysTo[c.Part]}
		for _, s := range c.Sessions {
			if m.Span.Holds(0, 0, s.Day) {
				counted, tries := s.Made()
				m.Counted, m.Of = m.Counted+counted, m.Of+tries
			}
		}
		c.Months = append(c.Months, m)
	}
	return nil
}

// monthsFrom are the latest months from one day to another.
func monthsFrom(from, to golf.Date) []golf.Span {
	var all []golf.Span
	for at := golf.Month(to.Year, to.Month); ; at = golf.Month(at.From.Year, at.From.Month-1) {
		all = append([]golf.Span{at}, all...)
		if len(all) == carryMonths || at.From.Compare(from) <= 0 {
			return all
		}
	}
}

// Moves say which way the drill and the course went: Better or Worse where that is
// clear or leaning, and Within where it could be chance or cannot be told.
func (c *Carry) Moves() (drill, course compare.Past) {
	return moved(c.Drill, c.Drill.Mean > 0), moved(c.Course, c.Course.Mean < 0)
}

func moved(c compare.Change, better bool) compare.Past {
	switch {
	case c.Word != compare.Clear && c.Word != compare.Leaning:
		return compare.Within
	case better:
		return compare.Better
	default:
		return compare.Worse
	}
}
