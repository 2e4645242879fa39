package analysis

import (
	"math/rand/v2"
	"testing"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/practice"
)

// practised are eight sessions of sixty putts from some feet, a week apart, the later
// four at another level, and eight rounds on each side of their middle.
func practised(t *testing.T, drill, course [2]float64, feet [2]float64) CarryInput {
	t.Helper()
	first := golf.Date{Year: 2026, Month: 9, Day: 3}
	dice := rand.New(rand.NewPCG(5, 18))
	putting, err := practice.Find("start-line")
	if err != nil {
		t.Fatal(err)
	}
	var sessions []DrillSession
	for i := range 8 {
		levels, err := engine.levelsOf(putting, feet[i/4])
		if err != nil {
			t.Fatal(err)
		}
		s := DrillSession{Day: first.AddDays(7 * i), Feet: feet[i/4], Counted: []int{0}, Tried: []int{60}}
		for range s.Tried[0] {
			if dice.Float64() < levels.At(drill[i/4])[0] {
				s.Counted[0]++
			}
		}
		sessions = append(sessions, s)
	}
	p := golfer.Committed()
	var history []golf.Played
	for half, level := range course {
		season := golfer.Season{Player: "Bea", Course: "Harrow Fen", Tee: "white", Card: expect.ReferenceCourse(), Levels: golfer.Levels{Tee: 84, Approach: 84, ShortGame: 84, Putting: level},
			First: first.AddDays(28*half - 5), Days: 3, Rounds: 8, Seed: uint64(11 + half)}
		rounds, err := season.Play(&p)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range rounds {
			history = append(history, golf.Played{ID: golf.RoundID(len(history) + 1), Round: r, Target: 79})
		}
	}
	f, err := engine.Told("start-line", 90, DrillInput{PlanInput: PlanInput{Target: 79}, Sessions: sessions, Today: first.AddDays(60)})
	if err != nil {
		t.Fatal(err)
	}
	return CarryInput{Drill: f, History: history, Boundary: golf.StandardBoundary, Today: first.AddDays(60)}
}

// A golfer who is better in both is told so, and so is one whose course does not
// follow, and one who is as before. One who only steps back to longer putts holes
// fewer of them, and has not changed.
func TestADrillCarriesOver(t *testing.T) {
	same, farther := [2]float64{4, 4}, [2]float64{4, 8}
	for name, c := range map[string]struct {
		in            CarryInput
		drill, course compare.Past
	}{
		"both":              {practised(t, [2]float64{104, 78}, [2]float64{104, 76}, same), compare.Better, compare.Better},
		"the drill alone":   {practised(t, [2]float64{104, 78}, [2]float64{92, 92}, same), compare.Better, compare.Within},
		"neither":           {practised(t, [2]float64{90, 90}, [2]float64{92, 92}, same), compare.Within, compare.Within},
		"worse in both":     {practised(t, [2]float64{78, 104}, [2]float64{76, 104}, same), compare.Worse, compare.Worse},
		"from farther away": {practised(t, [2]float64{90, 90}, [2]float64{92, 92}, farther), compare.Within, compare.Within},
	} {
		carry, err := engine.CarryOver(c.in)
		if err != nil {
			t.Fatal(err)
		}
		if drill, course := carry.Moves(); drill != c.drill || course != c.course {
			t.Errorf("%s: %d and %d, want %d and %d; %+v, %+v", name, drill, course, c.drill, c.course, carry.Drill, carry.Course)
		}
	}
}

// Each half has its sessions and the rounds of its days, each with an interval about
// it, and what the months hold adds up to both.
func TestCarryIsToldByMonth(t *testing.T) {
	in := practised(t, [2]float64{104, 78}, [2]float64{104, 76}, [2]float64{4, 4})
	c, err := engine.CarryOver(in)
	if err != nil || !c.Enough || c.Part != golf.Putting || len(c.Sessions) != 8 || c.Until != c.Sessions[3].Day {
		t.Fatalf("%+v, %v", c, err)
	}
	rounds, tries, counted := 0, 0, 0
	for _, m := range c.Months {
		rounds, tries, counted = rounds+m.Rounds, tries+m.Of, counted+m.Counted
	}
	if rounds != len(in.History) || c.Halves[0].Rounds != 8 || c.Halves[1].Rounds != 8 || tries != 480 || len(c.Months) != 4 || c.Months[0].Span.From != (golf.Date{Year: 2026, Month: 8, Day: 1}) {
		t.Errorf("%d rounds, %d tries, %+v", rounds, tries, c.Months)
	}
	if share := (c.Halves[0].Share.Mean + c.Halves[1].Share.Mean) / 2; !equal(share, float64(counted)/480) {
		t.Errorf("%g, want %d of 480", share, counted)
	}
	for _, h := range c.Halves {
		s := h.Share
		if !(s.Interval.Low < s.Mean && s.Mean < s.Interval.High) || !h.PlaysTo.Known() || !(h.PlaysTo.Low.Value <= h.PlaysTo.Level.Value && h.PlaysTo.Level.Value <= h.PlaysTo.High.Value) {
			t.Errorf("%+v", h)
		}
	}
	for _, s := range c.Sessions {
		if made, of := s.Made(); !(s.Share.Low < float64(made)/float64(of) && float64(made)/float64(of) < s.Share.High) {
			t.Errorf("%+v", s)
		}
	}
}

// Under four sessions nothing is said, under six no word of the drill; without a round
// there is no word of the course, and what has no mark says nothing.
func TestCarryOfFewSessions(t *testing.T) {
	in := practised(t, [2]float64{104, 78}, [2]float64{104, 76}, [2]float64{4, 4})
	all := in.Drill.Results
	in.Drill.Results, in.History = all[:3], nil
	if c, err := engine.CarryOver(in); err != nil || c.Enough {
		t.Errorf("three sessions: %+v, %v", c, err)
	}
	in.Drill.Results = all[2:6]
	c, err := engine.CarryOver(in)
	if drill, course := c.Moves(); err != nil || !c.Enough || !c.Drill.Thin.Any() || c.Course.Known || drill != compare.Within || course != compare.Within {
		t.Errorf("four sessions: %+v, %v", c, err)
	}
	in.Drill.Results, in.Drill.NoMark = all, true
	if c, err := engine.CarryOver(in); err != nil || c.Enough {
		t.Errorf("without a mark: %+v, %v", c, err)
	}
}

func equal(a, b float64) bool { return a-b < 1e-9 && b-a < 1e-9 }
