package trial

import (
	"testing"
	"time"
)

// Three players save for two seconds, and nothing fails.
func TestAFewPlayersAtOnce(t *testing.T) {
	waits, err := Load(Crowd{Players: 3, Time: 2 * time.Second, Root: "../../.."}, t.Output())
	if err != nil {
		t.Fatal(err)
	}
	if waits.Failures > 0 || len(waits.Saves) < 3 || len(waits.Saves) != len(waits.Pages) {
		t.Errorf("%d saves, %d pages, %d failures", len(waits.Saves), len(waits.Pages), waits.Failures)
	}
	t.Log(waits)
}

func TestQuantiles(t *testing.T) {
	var all []time.Duration
	for i := range 100 {
		all = append(all, time.Duration(100-i)*time.Millisecond)
	}
	for share, want := range map[float64]time.Duration{.5: 50 * time.Millisecond, .95: 95 * time.Millisecond, .99: 99 * time.Millisecond, 1: 100 * time.Millisecond} {
		if got := quantile(all, share); got != want {
			t.Errorf("%.2f: %s, want %s", share, got, want)
		}
	}
	if quantile(nil, .5) != 0 {
		t.Error("a quantile of nothing")
	}
}
