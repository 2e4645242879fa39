package practice

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis"
	"strokeledger/analysis/practice"
	"strokeledger/web/components"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// The log leads to the drills that stand beside the course, by name: from four
// sessions on, and none that somebody made up.
func TestTheLogLeadsToWhatCarriesOver(t *testing.T) {
	done := func(name string, sessions int, own bool) analysis.DrillFor {
		d := analysis.DrillFor{Drill: practice.Drill{Name: name}, Own: own}
		for range sessions {
			d.Results = append(d.Results, analysis.SessionResult{DrillSession: analysis.DrillSession{Counted: []int{6}, Tried: []int{10}}})
		}
		return d
	}
	told := map[string]analysis.DrillFor{"start-line": done("Start line", 4, false), "ladder": done("Ladder", 5, false), "lag": done("Lag", 3, false), "own-3": done("Gate", 9, true)}
	for _, whose := range []paths.Whose{own, pupil} {
		p := NewLogPage(layout.Page{}, LogInput{Whose: whose, Told: told})
		want := []components.Link{{Name: "Ladder", At: "/players/7/drills/ladder#carry"}, {Name: "Start line", At: "/players/7/drills/start-line#carry"}}
		if diff := cmp.Diff(want, p.Carry); diff != "" {
			t.Error(diff)
		}
	}
	if p := NewLogPage(layout.Page{}, LogInput{Whose: own}); len(p.Carry) != 0 {
		t.Errorf("%+v", p.Carry)
	}
}
