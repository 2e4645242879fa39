package analysis

import (
	"math"
	"strings"
	"testing"

	"strokeledger/analysis/golf"
)

// session is a session of putts from 6 ft.
func puttSession(t *testing.T, day golf.Date, letters string) DrillSession {
	t.Helper()
	tries, err := golf.ParseTries(letters)
	if err != nil {
		t.Fatal(err)
	}
	counted, tried := tries.By(1)
	return DrillSession{Day: day, Feet: 6, Tries: tries, Counted: counted, Tried: tried}
}

func TestStartLine(t *testing.T) {
	engine, today := NewEngine(), golf.Date{Year: 2026, Month: 11, Day: 26}
	in := StartLineInput{PlanInput: PlanInput{Target: 79}, Today: today}
	none, err := engine.StartLine(in)
	if err != nil || none.Read != nil || none.Feet != 4 || none.Aim.Spread <= none.Tour.Spread || none.Mark.Tries == 0 {
		t.Fatalf("without a session: %+v, %v", none, err)
	}
	wide := strings.Repeat("mrrlmrsmrm", 4)
	old := puttSession(t, today.AddDays(-90), wide)
	in.Sessions = []DrillSession{old, puttSession(t, today.AddDays(-9), wide), puttSession(t, today.AddDays(-4), wide), puttSession(t, today.AddDays(-3), wide)}
	in.Sessions = append(in.Sessions, func() DrillSession { s := old; s.Day, s.Feet = today, 4; return s }())
	l, err := engine.StartLine(in)
	if err != nil || l.Feet != 6 || l.Tries.Of != 120 || l.Tries.Made != 48 || l.Tries.Right != 48 || !l.Tries.Sides {
		t.Fatalf("%+v, %v", l, err)
	}
	if len(l.OtherFeet) != 1 || l.OtherFeet[0] != 4 {
		t.Errorf("other lengths: %v", l.OtherFeet)
	}
	if l.Read.Bias == nil || !l.Read.Bias.Clear() || l.Read.Bias.Mean <= 0 || l.Read.Spread <= l.Aim.Spread {
		t.Errorf("%+v", l.Read)
	}
	// 26 November 2026 is a Thursday
	if len(l.Weeks) != 3 || l.Weeks[0].Monday != (golf.Date{Year: 2026, Month: 11, Day: 23}) || l.Weeks[0].Tries.Of != 40 || l.Weeks[1].Tries.Of != 80 {
		t.Errorf("%+v", l.Weeks)
	}
	if l.Worth != nil {
		t.Errorf("worth something without rounds: %+v", l.Worth)
	}
}

// The target's spread is worth strokes to a golfer who putts worse, more to one whose
// putts start wider, and what is worth nothing is told as less than nothing.
func TestWhatTheTargetsSpreadIsWorth(t *testing.T) {
	engine := NewEngine()
	worthOf := func(made, left, right int) float64 {
		t.Helper()
		tries := PuttTries{Feet: 6, Of: 60, Made: made, Sides: true, Left: left, Right: right, Short: 60 - made - left - right}
		l, err := engine.StartLine(StartLineInput{PlanInput: PlanInput{History: played(t, 90, 12), Target: 79}, Tries: &tries})
		if err != nil || l.Worth == nil || l.Feet != 6 || !l.Known {
			t.Fatalf("%+v, %v", l, err)
		}
		w := l.Worth
		if w.Interval.Low > w.Strokes || w.Interval.High < w.Strokes || w.Putts < 14 || w.Putts > 19 || math.IsNaN(w.Strokes) {
			t.Errorf("%+v", w)
		}
		return w.Strokes
	}
	narrow, wide := worthOf(50, 3, 3), worthOf(20, 18, 18)
	if narrow >= 0 || wide <= .5 || wide > 5 {
		t.Errorf("worth %g and %g strokes a round", narrow, wide)
	}
}

func BenchmarkStartLine(b *testing.B) {
	engine, history := NewEngine(), played(b, 90, 12)
	tries := PuttTries{Feet: 6, Of: 60, Made: 30}
	for b.Loop() {
		if _, err := engine.StartLine(StartLineInput{PlanInput: PlanInput{History: history, Target: 79}, Tries: &tries}); err != nil {
			b.Fatal(err)
		}
	}
}
