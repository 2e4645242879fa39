package analysis

import (
	"math"
	"slices"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/parallel"
	"strokeledger/analysis/practice"
	"strokeledger/analysis/startline"
	"strokeledger/analysis/stat"
)

// startLineDrill is the drill whose sessions say how straight putts start.
const startLineDrill = "start-line"

// PuttTries are straight putts of one length.
type PuttTries = startline.Tries

// StartLineInput is what is told of a player's start line.
type StartLineInput struct {
	PlanInput
	Sessions []DrillSession // of the start line drill, the earliest first
	Today    golf.Date
	Tries    *PuttTries // to be read instead of the sessions; nil for the sessions
}

// StartLine is how straight a player starts putts of one length.
type StartLine struct {
	Feet        float64
	Tries       PuttTries // what was read; of the last eight weeks unless others were asked about
	Since       golf.Date // the first day of the sessions that count; zero for tries that were asked about
	Read        *startline.Reading
	Target      float64
	Level       float64       // at which the player putts; the target where that is not known
	Known       bool          // Level comes from rounds
	Aim, Tour   LineOf        // of the target's golfer and of a tour player
	Mark        practice.Mark // of the drill from that length
	Weeks       []LineWeek    // with sessions from that length, the latest first
	Worth       *Worth        // nil where it cannot be told
	OtherFeet   []float64     // other lengths that were putted from in the last eight weeks
	OtherLonger bool          // there are earlier weeks than Weeks
}

// LineOf is how a golfer starts putts of a length.
type LineOf struct {
	Spread float64 // degrees, one standard deviation
	Holed  float64 // share
}

// LineWeek is a week of practice.
type LineWeek struct {
	Monday golf.Date
	Tries  PuttTries
	Read   startline.Reading
	Judged bool // there were tries enough for a mark
	Passed bool // it was reached
}

// Worth is how many strokes a round the target's spread would be worth to the player:
// what changes when only that number does.
type Worth struct {
	Strokes  float64
	Interval stat.Interval // of the spread that was read, 95 %
	Putts    float64       // first putts for 18 holes that it stands on
}

// mostWeeks is how many weeks of a start line are told.
const mostWeeks = 12

// StartLine answers "how straight do I start putts?" from sessions of the drill, or
// from tries that are asked about and that startline finds nothing wrong with. Read
// is nil where there is nothing to read. A target outside golf.MinTarget to
// golf.MaxTarget is an error.
func (e *Engine) StartLine(in StartLineInput) (StartLine, error) {
	game, chosen, err := gameOf(in.PlanInput)
	if err != nil {
		return StartLine{}, err
	}
	l := StartLine{Target: in.Target, Level: in.Target, Known: len(chosen) >= practice.MinRounds}
	if l.Known {
		l.Level = game.Played[golf.Putting]
	}
	if in.Tries != nil {
		l.Feet, l.Tries = in.Tries.Feet, *in.Tries
	} else {
		l.lately(in)
	}
	drill, err := practice.Find(startLineDrill)
	if err != nil {
		return l, err
	}
	if l.Feet == 0 {
		l.Feet = drill.Stations[0].Distance.Feet()
	}
	if err := e.lineOfOthers(&l, drill); err != nil {
		return l, err
	}
	own, err := e.golfer.Striker(l.Level)
	if err != nil {
		return l, err
	}
	model := startline.NewModel(own.Putter(), l.Feet)
	if err := e.weeks(&l, in, model); err != nil {
		return l, err
	}
	if l.Tries.Of == 0 {
		return l, nil
	}
	read := model.Read(l.Tries)
	l.Read = &read
	if l.Known {
		l.Worth = worth(own.Putter(), read, l, firstPutts(chosen), game.Holes)
	}
	return l, nil
}

// lately adds up the sessions of the last eight weeks from the length that was putted
// from most; with the sides where every miss has one.
func (l *StartLine) lately(in StartLineInput) {
	l.Since = in.Today.AddDays(-latelyDays + 1)
	of := map[float64]PuttTries{}
	for _, s := range in.Sessions {
		if s.Day.Compare(l.Since) >= 0 && s.Feet > 0 {
			of[s.Feet] = added(of[s.Feet], s)
		}
	}
	for feet, t := range of {
		if t.Of > l.Tries.Of || t.Of == l.Tries.Of && feet < l.Feet {
			l.Feet, l.Tries = feet, t
		}
	}
	for feet := range of {
		if feet != l.Feet {
			l.OtherFeet = append(l.OtherFeet, feet)
		}
	}
	slices.Sort(l.OtherFeet)
}

// added are tries with those of a session. Sides are kept while every miss has one.
func added(t PuttTries, s DrillSession) PuttTries {
	more := PuttTries{Left: s.Tries.Count(golf.TryLeft), Right: s.Tries.Count(golf.TryRight), Short: s.Tries.Count(golf.TryShort), Long: s.Tries.Count(golf.TryLong)}
	more.Made, more.Of = s.Made()
	more.Sides = more.Left+more.Right+more.Short+more.Long == more.Of-more.Made
	sum := PuttTries{Feet: s.Feet, Made: t.Made + more.Made, Of: t.Of + more.Of, Sides: more.Sides && (t.Sides || t.Of == 0)}
	if sum.Sides {
		sum.Left, sum.Right, sum.Short, sum.Long = t.Left+more.Left, t.Right+more.Right, t.Short+more.Short, t.Long+more.Long
	}
	return sum
}

// lineOfOthers works out what the target's golfer and a tour player do from that
// length, and the mark of the drill there.
func (e *Engine) lineOfOthers(l *StartLine, drill practice.Drill) error {
	aim, err := e.golfer.Striker(l.Target)
	if err != nil {
		return err
	}
	for to, of := range map[*LineOf]golfer.Putter{&l.Aim: aim.Putter(), &l.Tour: e.golfer.Putter(0)} {
		*to = LineOf{of.StartLineSpread(l.Feet) * 180 / math.Pi, of.MakeRate(l.Feet)}
	}
	if drill, err = drill.At(l.Feet); err != nil {
		return err
	}
	target, err := drill.Chances(&e.golfer, l.Target)
	if err != nil {
		return err
	}
	today, err := drill.Chances(&e.golfer, max(l.Level, l.Target))
	if err != nil {
		return err
	}
	l.Mark = drill.Mark(target, today)
	return nil
}

// weeks reads the sessions week by week.
func (e *Engine) weeks(l *StartLine, in StartLineInput, model *startline.Model) error {
	drill, err := practice.Find(startLineDrill)
	if err != nil {
		return err
	}
	levels, err := e.levelsOf(drill, l.Feet)
	if err != nil {
		return err
	}
	for _, s := range slices.Backward(in.Sessions) {
		if s.Feet != l.Feet {
			continue
		}
		monday := mondayOf(s.Day)
		if n := len(l.Weeks); n == 0 || l.Weeks[n-1].Monday != monday {
			if n == mostWeeks {
				l.OtherLonger = true
				break
			}
			l.Weeks = append(l.Weeks, LineWeek{Monday: monday})
		}
		w := &l.Weeks[len(l.Weeks)-1]
		w.Tries = added(w.Tries, s)
	}
	l.Weeks = slices.DeleteFunc(l.Weeks, func(w LineWeek) bool { return w.Tries.Check() != nil })
	parallel.Do(len(l.Weeks), func(i int) {
		w := &l.Weeks[i]
		w.Read = model.Read(w.Tries)
		if w.Judged = w.Tries.Of >= practice.MinTries; w.Judged {
			w.Passed = w.Tries.Made >= practice.MarkOf(levels.At(l.Target), levels.At(max(l.Level, l.Target)), w.Tries.Of).Pass
		}
	})
	return nil
}

// mondayOf is the first day of a day's week.
func mondayOf(d golf.Date) golf.Date {
	return d.AddDays(-(int(d.Time().Weekday()-time.Monday) + 7) % 7)
}

// firstPutts are the lengths of the first putts of rounds, in feet.
func firstPutts(rounds []golf.Played) []float64 {
	var all []float64
	for _, r := range rounds {
		for _, h := range r.Round.Holes {
			for _, s := range h.Shots {
				if s.Lie == golf.Green {
					all = append(all, s.Distance.Feet())
					break
				}
			}
		}
	}
	return all
}

// worth is what the target's spread would save over the first putts of the rounds,
// the player's putting otherwise being what it is.
func worth(own golfer.Putter, read startline.Reading, l StartLine, putts []float64, holes float64) *Worth {
	if len(putts) == 0 || holes == 0 {
		return nil
	}
	spreads := []float64{l.Aim.Spread, read.Spread, read.Interval.Low, read.Interval.High}
	lost := make([]float64, len(spreads))
	parallel.Do(len(spreads), func(i int) {
		solved := own.WithSpread(spreads[i] / read.Level).Solve()
		for _, ft := range putts {
			lost[i] += solved.Strokes(ft) * 18 / holes
		}
	})
	return &Worth{Strokes: lost[1] - lost[0], Interval: stat.Interval{Low: lost[2] - lost[0], High: lost[3] - lost[0]}, Putts: float64(len(putts)) * 18 / holes}
}
