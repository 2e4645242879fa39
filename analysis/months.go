package analysis

import (
	"slices"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

// MonthsInput is what a comparison of a player's rounds is made of.
type MonthsInput struct {
	History  []golf.Played // all rounds, in the order of their days
	Choice   golf.Comparison
	Target   float64       // the player's
	Boundary golf.Distance // the player's
}

// Months answers "has my game changed, where, and how sure is that?": spans of
// rounds side by side.
type Months struct {
	Choice  golf.Comparison // what of the choice holds for these rounds
	First   golf.Date       // of all rounds, the zero value without one
	Last    golf.Date
	Courses []string // of all rounds, by name
	Rounds  []Listed // of the spans and those left out of them, the latest first
	Level   float64  // of the golfer compared with; 0 for the tour
	Sheet   compare.Sheet
	Line    []compare.Point // the season, on the course where the golfer compared with takes the level
	Thin    golf.Thin       // why the line has no mean; no note when it has one
	Curve   []compare.Holed // putts of the spans by length
	Putter  golfer.Putter   // of the player's target
	Tour    golfer.Putter

	boundary golf.Distance
}

// Listed is a round that may be left out of a comparison.
type Listed struct {
	ID     golf.RoundID
	Day    golf.Date
	Course string
	Score  float64 // in whole strokes, 0 for a round that is left out
	Holes  int     // entered
	Out    bool
}

// Months sets spans of rounds side by side. A course that no round was played
// on chooses none, and rounds that are not there are not left out. Targets
// outside golf.MinTarget to golf.MaxTarget are an error.
func (e *Engine) Months(in MonthsInput) (Months, error) {
	m := Months{Choice: in.Choice, boundary: in.Boundary}
	m.look(in.History)
	lens, err := Against(in.Choice.Versus, in.Target).fixed()
	if err != nil {
		return m, err
	}
	m.Level = lens.Level()
	if m.Putter, err = e.putter(in.Target); err != nil {
		return m, err
	}
	m.Tour = e.golfer.Putter(0)
	rounds, err := compare.Judge(m.chosen(in.History), lens, in.Boundary)
	if err != nil {
		return m, err
	}
	spans := m.Choice.Spans
	if len(spans) == 0 {
		spans = golf.Months(m.First, m.Last)
	}
	m.Sheet = compare.NewSheet(rounds, spans, in.Boundary, e.ladder, drawSeed)
	m.Line = compare.Trend(rounds, lens.Course(expect.ReferenceCourse()))
	m.Thin = compare.TrendThin(m.Line)
	m.Curve = compare.PuttingCurve(m.Sheet.Columns)
	m.Rounds = m.listed(in.History)
	return m, nil
}

// putter is the putting of the golfer of a target.
func (e *Engine) putter(target float64) (golfer.Putter, error) {
	skill, err := expect.SkillOf(target)
	if err != nil {
		return golfer.Putter{}, err
	}
	return e.golfer.Putter(skill), nil
}

// look fills in what all rounds have in common, and drops from the choice what
// they do not have.
func (m *Months) look(history []golf.Played) {
	there := make(map[golf.RoundID]bool, len(history))
	for _, h := range history {
		there[h.ID] = true
		if !slices.Contains(m.Courses, h.Round.Course) {
			m.Courses = append(m.Courses, h.Round.Course)
		}
	}
	if n := len(history); n > 0 {
		m.First, m.Last = history[0].Round.Date, history[n-1].Round.Date
	}
	slices.Sort(m.Courses)
	if !slices.Contains(m.Courses, m.Choice.Course) {
		m.Choice.Course = ""
	}
	m.Choice.Without = slices.DeleteFunc(slices.Clone(m.Choice.Without), func(id golf.RoundID) bool { return !there[id] })
}

// chosen are the rounds that the choice leaves.
func (m *Months) chosen(history []golf.Played) []golf.Played {
	var left []golf.Played
	for _, h := range history {
		if (m.Choice.Course == "" || h.Round.Course == m.Choice.Course) && !slices.Contains(m.Choice.Without, h.ID) {
			left = append(left, h)
		}
	}
	return left
}

// listed lists the rounds of the spans and those left out of them.
func (m *Months) listed(history []golf.Played) []Listed {
	scores := map[golf.RoundID]float64{}
	for _, c := range m.Sheet.Columns {
		for _, r := range c.Rounds {
			scores[r.ID] = float64(r.Account.Whole())
		}
	}
	var all []Listed
	for _, h := range slices.Backward(history) {
		score, in := scores[h.ID]
		if out := slices.Contains(m.Choice.Without, h.ID); in || out {
			all = append(all, Listed{ID: h.ID, Day: h.Round.Date, Course: h.Round.Course, Score: score, Holes: len(h.Round.Holes), Out: out})
		}
	}
	return all
}

// Now is the last span.
func (m *Months) Now() *compare.Column { return &m.Sheet.Columns[len(m.Sheet.Columns)-1] }

// Before is the span before the last.
func (m *Months) Before() *compare.Column { return &m.Sheet.Columns[len(m.Sheet.Columns)-2] }

// Form is what each part of the game plays to in the last span, beside the one
// before.
func (m *Months) Form() compare.Form { return compare.FormOf(m.Before(), m.Now()) }
