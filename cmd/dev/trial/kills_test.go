package trial

import (
	"strings"
	"testing"
	"time"
)

// Twenty kills of the app and twenty of its Postgres lose no save that was
// acknowledged.
func TestKillsLoseNoSave(t *testing.T) {
	result, err := Run(Plan{App: 20, Postgres: 20, Seed: 84, Root: "../../.."}, t.Output())
	if err != nil {
		t.Fatal(err)
	}
	if err := result.Err(); err != nil {
		t.Error(err)
	}
	if result.App != 20 || result.Postgres != 20 || result.Acknowledged < 60 {
		t.Error(result)
	}
	t.Log(result)
}

func TestWhatIsWrongWithAResult(t *testing.T) {
	for _, c := range []struct {
		result Result
		want   string
	}{
		{Result{Lost: []string{"round 1, hole 2"}}, "1 acknowledged saves are lost, as round 1, hole 2"},
		{Result{SlowestStart: 26 * time.Second}, "longer than 25s"},
		{Result{SlowestReady: 26 * time.Second}, "longer than 25s"},
	} {
		if err := c.result.Err(); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%v", err)
		}
	}
	if err := (Result{SlowestStart: 24 * time.Second}).Err(); err != nil {
		t.Error(err)
	}
}
