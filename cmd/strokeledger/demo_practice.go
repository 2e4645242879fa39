package main

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/practice"
	"strokeledger/db"
	pages "strokeledger/web/practice"
)

// The demo's practice: when its plan was taken, how often its drills were done since,
// and the levels of the golfer who did them, on the first day and on the last.
const (
	demoPlanDays  = 190 // before the day on which the demo is made
	demoRest      = 12  // days between two sessions of a drill
	demoDrills    = 3   // of the plan
	demoFrom      = 88.0
	demoTo        = 81.0
	demoLean      = .3 // degrees to the right, of putts
	demoSeed      = 79
	demoPlanItems = 28 // days that what a plan sets is due
	demoPuttsFrom = 6  // feet of the putts on the start line, outside the plan
	demoPuttDays  = 50 // before the day on which the demo is made, since when there are any
	demoPutting   = 40 // putts a session
)

// demoPractice takes a plan in spring and does its drills since. The golfer of the
// model does them, a little better from one session to the next.
func demoPractice(ctx context.Context, store *db.Store, who golf.PlayerID, today golf.Date) error {
	day := today.AddDays(-demoPlanDays)
	plan, err := demoPlan(ctx, store, who, day)
	if err != nil {
		return err
	}
	rng := rand.New(rand.NewPCG(demoSeed, demoSeed))
	drilled := map[string]bool{}
	for i, c := range plan.Candidates[:min(demoDrills, len(plan.Candidates))] {
		drilled[c.Drill.Key] = true
		if err := demoSessions(ctx, store, who, rng, c.Drill, c.Mark, day.AddDays(3+2*i), today); err != nil {
			return err
		}
	}
	putts, err := practice.Find("start-line")
	if err != nil || drilled[putts.Key] {
		return err
	}
	if putts, err = putts.At(demoPuttsFrom); err != nil {
		return err
	}
	return demoSessions(ctx, store, who, rng, putts, practice.Mark{Tries: demoPutting}, today.AddDays(-demoPuttDays), today)
}

// demoSessions are the sessions of a drill from a day on.
func demoSessions(ctx context.Context, store *db.Store, who golf.PlayerID, rng *rand.Rand, drill practice.Drill, mark practice.Mark, first, today golf.Date) error {
	for day, n := first, 0; day.Compare(today) < 0; day, n = day.AddDays(demoRest), n+1 {
		since := 1 - today.Time().Sub(day.Time()).Hours()/24/demoPlanDays
		s, err := demoSession(rng, drill, mark, demoFrom+(demoTo-demoFrom)*since)
		if err != nil {
			return err
		}
		s.EnteredAs, s.Day, s.Minutes = fmt.Sprintf("demo-%s-%d", drill.Key, n), day.Time(), 20+5*rng.IntN(3)
		if _, err := store.SaveDrillSession(ctx, who, s); err != nil {
			return err
		}
	}
	return nil
}

// demoPlan takes the plan of a day, and ticks off what it set.
func demoPlan(ctx context.Context, store *db.Store, who golf.PlayerID, day golf.Date) (plan analysis.Plan, err error) {
	history, err := store.History(ctx, who, who)
	if err != nil {
		return plan, err
	}
	for len(history) > 0 && history[len(history)-1].Round.Date.Compare(day) > 0 {
		history = history[:len(history)-1]
	}
	const target, minutes = 79, 180
	if plan, err = analysis.NewEngine().Plan(analysis.PlanInput{History: history, Target: target, Minutes: minutes}); err != nil {
		return plan, err
	}
	figures, err := plan.Kept()
	if err != nil {
		return plan, err
	}
	var items []db.Assignment
	for _, i := range pages.ItemsOf(plan) {
		items = append(items, db.Assignment{What: i.What, Amount: i.Amount, PassMark: i.Mark, DueOn: day.AddDays(demoPlanItems).Time(), Drill: i.Drill, Feet: i.Feet})
	}
	id, err := store.TakePlan(ctx, who, db.TakenPlan{Day: day.Time(), FirstDay: plan.First.Time(), LastDay: plan.Last.Time(), Rounds: plan.Game.Rounds, Target: target,
		Minutes: minutes, Engine: analysis.EngineVersion(), Figures: figures}, items)
	if err != nil {
		return plan, err
	}
	set, err := store.Assignments(ctx, who, who, 0)
	if err != nil {
		return plan, err
	}
	for _, a := range set {
		if a.PlanID != nil && *a.PlanID == id {
			if err := store.TickOff(ctx, who, a.ID, true); err != nil {
				return plan, err
			}
		}
	}
	return plan, nil
}

// demoSession is a drill as the golfer of a level does it.
func demoSession(rng *rand.Rand, d practice.Drill, mark practice.Mark, level float64) (s db.DrillSession, err error) {
	s = db.DrillSession{Drill: d.Key, Name: d.Name}
	parameters := golfer.Committed()
	chances, err := d.Chances(&parameters, level)
	if err != nil {
		return s, err
	}
	if d.NoMark {
		s.Note = "ten balls, mostly as planned"
		return s, nil
	}
	tries := max(mark.Tries/max(mark.Sessions, 1), d.Set())
	switch {
	case d.Written == practice.Sides:
		s.Feet = d.Stations[0].Distance.Feet()
		striker, err := parameters.Striker(level)
		if err != nil {
			return s, err
		}
		t := demoPutts(rng, striker.Putter(), s.Feet, tries)
		s.Tries = t.String()
		s.Counted, s.Tried = t.By(1)
	case d.Written == practice.Run:
		var t golf.Tries
		for i := range tries {
			t = append(t, outcome(rng.Float64() < chances[i%len(chances)]))
		}
		s.Tries = t.String()
		s.Counted, s.Tried = t.By(len(chances))
	default:
		s.Counted, s.Tried = make([]int, len(chances)), make([]int, len(chances))
		for i := range tries {
			at := i % len(chances)
			s.Tried[at]++
			if rng.Float64() < chances[at] {
				s.Counted[at]++
			}
		}
	}
	return s, nil
}

func outcome(counts bool) golf.Outcome {
	if counts {
		return golf.TryMade
	}
	return golf.TryMissed
}

// demoPutts are straight putts of a putter who leans to the right: off the line they
// miss on that side, on it the speed decides.
func demoPutts(rng *rand.Rand, p golfer.Putter, feet float64, tries int) golf.Tries {
	var t golf.Tries
	short, fit, _ := p.Pace(feet)
	window := golfer.StartLineWindow(feet)
	for range tries {
		angle, speed := rng.NormFloat64()*p.StartLineSpread(feet)+demoLean*math.Pi/180, rng.Float64()
		switch {
		case angle < -window:
			t = append(t, golf.TryLeft)
		case angle > window:
			t = append(t, golf.TryRight)
		case speed < short:
			t = append(t, golf.TryShort)
		case speed < short+fit:
			t = append(t, golf.TryMade)
		default:
			t = append(t, golf.TryLong)
		}
	}
	return t
}
