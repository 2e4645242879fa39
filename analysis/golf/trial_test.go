package golf

import "testing"

// Every value is read as it is written, and nothing else is.
func TestNamesOfTrials(t *testing.T) {
	for _, u := range TrialUnits {
		if got, err := ParseTrialUnit(u.String()); err != nil || got != u {
			t.Errorf("%s: %v, %v", u, got, err)
		}
	}
	for _, s := range GreenSpeeds {
		if got, err := ParseGreenSpeed(s.String()); err != nil || got != s {
			t.Errorf("%s: %v, %v", s, got, err)
		}
	}
	for _, s := range GreenSlopes {
		if got, err := ParseGreenSlope(s.String()); err != nil || got != s {
			t.Errorf("%s: %v, %v", s, got, err)
		}
	}
	for _, name := range []string{"", "ft", "Fast", "steep"} {
		_, unit := ParseTrialUnit(name)
		_, speed := ParseGreenSpeed(name)
		_, slope := ParseGreenSlope(name)
		if unit == nil || speed == nil || slope == nil {
			t.Errorf("%q is read", name)
		}
	}
	if TrialUnit(0).String() != "" || GreenSpeed(9).String() != "" || GreenSlope(9).String() != "" {
		t.Error("what is not valid has a name")
	}
}

// A pace is a yard; one yard is .9144 m exactly (international yard and pound
// agreement, 1959).
func TestLengthsOfTrials(t *testing.T) {
	for unit, want := range map[TrialUnit]float64{TrialYards: 12, TrialPaces: 12, TrialMetres: 12 / .9144} {
		carry, total := Trial{Carry: 12, Total: 24, Unit: unit}.Yards()
		if d := carry - want; d > 1e-9 || d < -1e-9 || total-2*carry > 1e-9 {
			t.Errorf("12 %s are %g yd", unit, carry)
		}
	}
	for _, c := range []struct {
		carry, total float64
		unit         TrialUnit
		sound        bool
	}{
		{12, 21, TrialYards, true}, {60, 100, TrialPaces, true}, {54, 91, TrialMetres, true}, {12, 10, TrialYards, true},
		{0, 5, TrialYards, false}, {61, 70, TrialYards, false}, {12, 0, TrialYards, false}, {12, 101, TrialPaces, false}, {56, 60, TrialMetres, false},
	} {
		if got := (Trial{Carry: c.carry, Total: c.total, Unit: c.unit}).Allowed(); (got == "") != c.sound {
			t.Errorf("%+v: %q", c, got)
		}
	}
}
