package analysis

import (
	"math"
	"slices"
	"strings"
	"testing"

	"strokeledger/analysis/golf"
)

// putted is a session of putts of a length.
func putted(t *testing.T, day int, feet float64, text string) DrillSession {
	t.Helper()
	tries, err := golf.ParseTries(text)
	if err != nil {
		t.Fatal(err)
	}
	counted, tried := tries.By(1)
	return DrillSession{Day: golf.Date{Year: 2026, Month: 11, Day: day}, Feet: feet, Tries: tries, Counted: counted, Tried: tried}
}

func told(t *testing.T, key string, level float64, sessions ...DrillSession) DrillFor {
	t.Helper()
	in := DrillInput{PlanInput: PlanInput{Target: 79}, Sessions: sessions, Today: golf.Date{Year: 2026, Month: 11, Day: 26}}
	f, err := engine.Told(key, level, in)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// Forty putts leave the level open, so it is not told; many sessions together narrow
// it. What is expected is the share of the golfer times the tries.
func TestALevelIsToldOnlyWhenItIsNarrow(t *testing.T) {
	forty := strings.Repeat("mmmml", 8)
	one := told(t, "start-line", 90, putted(t, 20, 4, forty))
	if r := one.Results[0]; r.Read.Tells() || !r.Judged || math.Abs(r.Read.Target-40*one.Of) > .05 || math.Abs(r.Read.Today-40*one.OfToday) > .05 {
		t.Errorf("%+v, %g and %g", r, one.Of, one.OfToday)
	}
	var many []DrillSession
	for day := 1; day <= 25; day++ {
		many = append(many, putted(t, day, 4, forty+forty))
	}
	all := told(t, "start-line", 90, many...)
	if l := all.Lately; !l.Read.Tells() || l.Sessions != 25 || l.Of != 2000 || l.Counted != 1600 || l.Line == nil || !(l.Line.Interval.Low < l.Line.Spread && l.Line.Spread < l.Line.Interval.High) {
		t.Errorf("%+v", l)
	}
}

// The mark of a session is that of as many tries, and is reached or not by one more.
func TestAMarkIsReachedOrNot(t *testing.T) {
	mark := told(t, "start-line", 85, putted(t, 20, 6, strings.Repeat("m", 20))).Results[0].Mark
	if mark.Tries != 20 || mark.Pass < 5 || mark.Pass > 18 {
		t.Fatalf("%+v", mark)
	}
	for _, c := range []struct {
		made   int
		passed bool
	}{{mark.Pass, true}, {mark.Pass - 1, false}} {
		r := told(t, "start-line", 85, putted(t, 20, 6, strings.Repeat("m", c.made)+strings.Repeat("r", 20-c.made))).Results[0]
		if r.Passed != c.passed || !r.Judged {
			t.Errorf("%d of 20: %+v", c.made, r)
		}
	}
	if r := told(t, "start-line", 85, putted(t, 20, 6, "mmmmmmmmm")).Results[0]; r.Judged || r.Passed {
		t.Errorf("nine tries have a mark: %+v", r)
	}
}

// Sessions from several distances are read together, each with its own chances; those
// from more than eight weeks ago are left out, and the line is told of one distance.
func TestSessionsAreReadTogether(t *testing.T) {
	old := putted(t, 20, 4, "mmmmmmmmmm")
	old.Day = golf.Date{Year: 2026, Month: 9, Day: 1}
	f := told(t, "start-line", 85, old, putted(t, 10, 4, "mmmmmmmmml"), putted(t, 20, 8, "mmmllllrrr"))
	if l := f.Lately; l.Sessions != 2 || l.Counted != 12 || l.Of != 20 || len(f.Results) != 3 || f.Feet != 8 || len(l.Read.Counts) != 2 {
		t.Errorf("%+v", l)
	}
	near, far := told(t, "start-line", 85, putted(t, 10, 4, "mmmmmmmmml")), told(t, "start-line", 85, putted(t, 20, 8, "mmmllllrrr"))
	if got, want := f.Lately.Read.Target, near.Lately.Read.Target+far.Lately.Read.Target; math.Abs(got-want) > 1e-9 {
		t.Errorf("expected together %g, want %g", got, want)
	}
	alone := far.Lately.Line
	if f.Lately.Line == nil || *f.Lately.Line.Bias != *alone.Bias || f.Lately.Line.Spread != alone.Spread {
		t.Errorf("the line is %+v, want that of 8 ft alone %+v", f.Lately.Line, alone)
	}
}

// A mark that is for several sessions is held against the latest of them together.
func TestAMarkForSeveralSessions(t *testing.T) {
	const putts = 50
	fifty := strings.Repeat("mmmml", putts/5)
	f := told(t, "start-line", 82, putted(t, 18, 4, fifty), putted(t, 19, 4, fifty), putted(t, 20, 4, fifty), putted(t, 21, 4, fifty))
	if f.Mark.Sessions < 2 {
		t.Fatalf("the mark %+v is for one session; this test needs a drill whose mark is for several", f.Mark)
	}
	if _, of := f.Lately.Toward.Made(); of < f.Mark.Tries || of >= f.Mark.Tries+putts || !f.Lately.Toward.Passed {
		t.Errorf("%d tries toward %+v: %+v", of, f.Mark, f.Lately.Toward)
	}
}

// A session of a drill that had other stations then is not read.
func TestSessionsOfOtherStations(t *testing.T) {
	f := told(t, "wedge-ladder", 85, DrillSession{Counted: []int{3, 4}, Tried: []int{9, 9}}, DrillSession{Counted: []int{3, 4, 5}, Tried: []int{9, 9, 9}, Day: golf.Date{Year: 2026, Month: 11, Day: 2}})
	if len(f.Results) != 1 || f.Lately.Of != 27 {
		t.Errorf("%+v", f.Results)
	}
}

// A drill without a model has the mark of its author, as a share of more tries.
func TestADrillOfOnesOwn(t *testing.T) {
	in := DrillInput{PlanInput: PlanInput{Target: 79}, Today: golf.Date{Year: 2026, Month: 11, Day: 26}, Sessions: []DrillSession{putted(t, 20, 0, "mmmmmmmxxx"), putted(t, 21, 0, "mmmmmmxxxx"), putted(t, 22, 0, "mmm"), putted(t, 23, 0, strings.Repeat("m", 14)+"xxxxxx")}}
	f := ToldOwn(OwnDrill{Key: "own-3", Name: "Gate", Tries: 10, Mark: 7}, in)
	var passed, judged []bool
	for _, r := range f.Results {
		passed, judged = append(passed, r.Passed), append(judged, r.Judged)
	}
	if !slices.Equal(passed, []bool{true, false, false, true}) || !slices.Equal(judged, []bool{true, true, false, true}) || !f.Own || f.Lately.Sessions != 4 || f.Lately.Counted != 30 {
		t.Errorf("%v %v %+v", passed, judged, f.Lately)
	}
}
