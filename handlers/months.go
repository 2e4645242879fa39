package handlers

import (
	"fmt"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/db"
	"strokeledger/web/figures"
	"strokeledger/web/months"
	"strokeledger/web/paths"
)

// monthsSeed makes the same page of the same rounds.
const monthsSeed = 18

// withoutMost is how many rounds may be left out of a comparison.
const withoutMost = 200

func (s *server) myMonths(w http.ResponseWriter, r *http.Request) error {
	return then(w, r, paths.Comparison{Whose: mine(r)}.Months())
}

func (s *server) months(w http.ResponseWriter, r *http.Request) error {
	player, whose, err := s.whose(r)
	if err != nil {
		return err
	}
	at, changed, problems := readComparison(r, whose)
	if changed && len(problems) == 0 {
		return then(w, r, at.Months())
	}
	q, err := s.compared(r, player, at)
	if err != nil {
		return err
	}
	if err := s.looked(r, whose, db.LookMonths, 0); err != nil {
		return err
	}
	q.Problems = problems
	status := http.StatusOK
	if len(problems) > 0 {
		status = http.StatusUnprocessableEntity
	}
	return show(w, r, status, months.NewComparisonPage(shell(r), q).View())
}

// readComparison reads the choice of an address. changed says that it came from
// a form and has a plainer address; problems say what is not allowed.
func readComparison(r *http.Request, whose paths.Whose) (at paths.Comparison, changed bool, problems map[string]string) {
	problems = map[string]string{}
	q := r.URL.Query()
	at = paths.Comparison{Whose: whose, Course: q.Get("course")}
	at.Versus, changed = readVersus(q.Get("versus"), q.Get("level"), problems)
	for _, text := range q["without"] {
		if n, err := strconv.ParseInt(text, 10, 64); err == nil && !slices.Contains(at.Without, golf.RoundID(n)) {
			at.Without = append(at.Without, golf.RoundID(n))
		}
		if len(at.Without) > withoutMost {
			at.Without = at.Without[:withoutMost]
			problems[months.FieldSpans] = fmt.Sprintf("More than %d rounds are left out. Choose fewer.", withoutMost)
			break
		}
	}
	for _, text := range slices.Concat(q["span"], pairs(q["from"], q["to"])) {
		span, err := compare.ParseSpan(text)
		if err != nil {
			problems[months.FieldSpans] = capitalized(err.Error()) + "."
			continue
		}
		at.Spans = append(at.Spans, span.String())
	}
	if n := len(at.Spans); n == 1 || n > compare.MaxSpans {
		problems[months.FieldSpans] = fmt.Sprintf("%d spans were chosen; allowed: %d to %d.", n, compare.MinSpans, compare.MaxSpans)
		at.Spans = nil
	}
	return at, changed || len(q["from"]) > 0, problems
}

// pairs writes the days of a form as spans; a row left empty is none.
func pairs(from, to []string) []string {
	var spans []string
	for i := range min(len(from), len(to)) {
		if from[i] != "" || to[i] != "" {
			spans = append(spans, from[i]+".."+to[i])
		}
	}
	return spans
}

// readVersus reads whom to compare with, as a form or an address tells it.
func readVersus(versus, level string, problems map[string]string) (plain string, changed bool) {
	switch versus {
	case "", "tour":
		return versus, false
	case "target":
		return "", true
	case "level":
		versus, changed = level, true
	}
	x := between(versus, expect.MinLevel, expect.MaxLevel, months.FieldLevel, problems)
	if problems[months.FieldLevel] != "" {
		return "", changed
	}
	return number(x), changed
}

func capitalized(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// compared works a comparison out.
func (s *server) compared(r *http.Request, p db.Player, at paths.Comparison) (figures.ComparisonInput, error) {
	q := figures.ComparisonInput{At: at, Name: p.Name, Target: p.Target, Units: unitsOf(me(r))}
	history, err := s.store.History(r.Context(), me(r).ID, at.Player)
	if err != nil {
		return q, err
	}
	marks, err := s.store.Marks(r.Context(), me(r).ID, at.Player)
	if err != nil {
		return q, err
	}
	for _, m := range marks {
		q.Marks = append(q.Marks, figures.MarkedDay{ID: m.ID, Day: golf.DateOf(m.MarkedOn), What: m.What})
	}
	lens, err := lensOf(at.Versus, p.Target)
	if err != nil {
		return q, err
	}
	q.Level = lens.Level()
	if q.Putter, q.TourPutt, err = putters(p.Target); err != nil {
		return q, err
	}
	return q, s.judge(&q, history, lens, golf.Yards.Of(p.BoundaryYd))
}

// judge works out the rounds that the choice leaves, and sets them side by side.
func (s *server) judge(q *figures.ComparisonInput, history []db.PlayedRound, lens *expect.Baseline, boundary golf.Distance) error {
	if !slices.ContainsFunc(history, func(h db.PlayedRound) bool { return h.Round.Course == q.At.Course }) {
		q.At.Course = "" // a course that no round was played on chooses none
	}
	var kept []compare.Kept
	for _, h := range history {
		if q.First.IsZero() {
			q.First = h.Round.Date
		}
		q.Last = h.Round.Date
		if !slices.Contains(q.Courses, h.Round.Course) {
			q.Courses = append(q.Courses, h.Round.Course)
		}
		if (q.At.Course == "" || h.Round.Course == q.At.Course) && !slices.Contains(q.At.Without, h.ID) {
			kept = append(kept, compare.Kept{ID: h.ID, Round: h.Round, Target: h.Target})
		}
	}
	slices.Sort(q.Courses)
	q.At.Without = slices.DeleteFunc(slices.Clone(q.At.Without), func(id golf.RoundID) bool {
		return !slices.ContainsFunc(history, func(h db.PlayedRound) bool { return h.ID == id })
	})
	rounds, err := compare.Judge(kept, lens, boundary)
	if err != nil {
		return err
	}
	spans := compare.Months(q.First, q.Last)
	if len(q.At.Spans) > 0 {
		spans = nil
		for _, text := range q.At.Spans {
			span, err := compare.ParseSpan(text)
			if err != nil {
				return err
			}
			spans = append(spans, span)
		}
	}
	q.Sheet = compare.NewSheet(rounds, spans, boundary, compare.NewLadder(), monthsSeed)
	q.Line = compare.Trend(rounds, lens.Course(expect.ReferenceCourse()))
	q.Rounds = choosable(q, history)
	return nil
}

// choosable lists the rounds of the spans and those left out of them.
func choosable(q *figures.ComparisonInput, history []db.PlayedRound) []figures.SpanRound {
	shown := map[golf.RoundID]string{}
	for _, c := range q.Sheet.Columns {
		for _, r := range c.Rounds {
			shown[r.ID] = fmt.Sprintf("%.0f", r.Account.Score)
		}
	}
	var all []figures.SpanRound
	for _, h := range slices.Backward(history) {
		score, in := shown[h.ID]
		if out := slices.Contains(q.At.Without, h.ID); in || out {
			all = append(all, figures.SpanRound{ID: h.ID, Day: h.Round.Date, Course: h.Round.Course, Score: score, Out: out})
		}
	}
	return all
}

func lensOf(versus string, target float64) (*expect.Baseline, error) {
	switch versus {
	case "":
		return expect.Level(target)
	case "tour":
		return expect.Tour(), nil
	default:
		level, err := strconv.ParseFloat(versus, 64)
		if err != nil {
			return nil, err
		}
		return expect.Level(level)
	}
}

// putters are the putting of the golfer of a target, and of a tour player.
func putters(target float64) (own, tour golfer.Putter, err error) {
	skill, err := expect.SkillOf(target)
	if err != nil {
		return own, tour, err
	}
	p := golfer.Committed()
	return p.Putter(skill), p.Putter(0), nil
}
