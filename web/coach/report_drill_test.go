package coach

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/web/layout"
)

// What a player practised in the span without being set it stands on the report with
// its latest results, between what is to be done and what is done; what was done
// before or after the span does not.
func TestReportDrillsThatNobodySet(t *testing.T) {
	in := reported(bea)
	session := func(days int, result string) DrillSession {
		return DrillSession{Day: today.AddDays(-days), Result: result, Passed: "not yet"}
	}
	in.Drills = []DrillDone{
		{"Ladder", []DrillSession{session(60, "9 of 16")}},
		{"Start line", []DrillSession{session(40, "10 of 20"), session(20, "11 of 20"), session(10, "12 of 20"), session(3, "15 of 20"), session(-1, "16 of 20")}},
	}
	in.Assignments = []Assignment{{ID: 1, What: "Lag", Done: true}, {ID: 2, What: "Bunker", Due: today}}
	all := NewReportPage(layout.Page{}, in).Practice
	if len(all) != 3 || all[0].What != "Bunker" || all[2].What != "Lag" {
		t.Fatalf("what is to be done, what was done unasked, what is done: %+v", all)
	}
	want := []AssignmentCard{{What: "Start line", Facts: []string{"3 sessions", "not set by anybody"},
		Results: []ResultRow{{Day: "21 Aug 2026", Result: "12 of 20", Passed: "not yet"}, {Day: "28 Aug 2026", Result: "15 of 20", Passed: "not yet"}}}}
	if diff := cmp.Diff(want, all[1:2]); diff != "" {
		t.Error(diff)
	}
}
