package figures

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/chart"
)

func TestPartLevel(t *testing.T) {
	now := compare.PlaysTo{Rounds: 10, Level: compare.Level{Value: 84.4}, Low: compare.Level{Value: 80}, High: compare.Level{Value: 90}}
	scale := chart.Range{Low: 80, High: 100, Step: 5}
	past := compare.PlaysTo{Rounds: 10, Level: compare.Level{Value: 68, Past: compare.Better}, Low: compare.Level{Value: 68, Past: compare.Better}, High: compare.Level{Value: 72}}
	for name, c := range map[string]struct {
		in   PartLevelInput
		want PartLevel
	}{
		"too few rounds": {PartLevelInput{Part: golf.TeeShots, Now: compare.PlaysTo{Rounds: 2}, Target: 80}, PartLevel{Name: "Tee", Now: "three more rounds until a level is shown"}},
		"too few rounds before for a level": {PartLevelInput{Part: golf.Approach, Now: now, Change: change(1, compare.Clear), Target: 80},
			PartLevel{Name: "Approach", Now: "84", Moved: "worse, clear", Interval: "80 to 90", Dumbbell: Dumbbell{Known: true, X: "22%", Low: "0%", High: "50%", Target: "0%"}}},
		"within luck": {PartLevelInput{Part: golf.ShortGame, Now: now, Before: compare.Level{Value: 86}, Change: change(-2, compare.Chance), Target: 80},
			PartLevel{Name: "Short game", Now: "84", Was: "was 86", Interval: "80 to 90", Dumbbell: Dumbbell{Known: true, X: "22%", Low: "0%", High: "50%", Target: "0%", HasBefore: true, Before: "30%"}}},
		"better": {PartLevelInput{Part: golf.Putting, Now: now, Before: compare.Level{Value: 100}, Change: change(-2, compare.Clear), Target: 80},
			PartLevel{Name: "Putting", Now: "84", Was: "was 100", Interval: "80 to 90", Moved: "better, clear", Dumbbell: Dumbbell{Known: true, X: "22%", Low: "0%", High: "50%", Target: "0%", HasBefore: true, Before: "100%"}}},
		"worse": {PartLevelInput{Part: golf.Putting, Now: now, Before: compare.Level{Value: 80}, Change: change(.9, compare.Leaning), Target: 80},
			PartLevel{Name: "Putting", Now: "84", Was: "was 80", Interval: "80 to 90", Moved: "worse, leaning", Dumbbell: Dumbbell{Known: true, X: "22%", Low: "0%", High: "50%", Target: "0%", HasBefore: true, Before: "0%"}}},
		"past the best level": {PartLevelInput{Part: golf.Putting, Now: past, Target: 80},
			PartLevel{Name: "Putting", Now: "better than 68", Interval: "better than 68 to 72", Dumbbell: Dumbbell{Known: true, X: "-60%", Low: "-60%", High: "-40%", Target: "0%"}}},
	} {
		if diff := cmp.Diff(c.want, NewPartLevel(c.in, scale)); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}

// Levels that are not known, and their targets, take no room on the line.
func TestLevelScale(t *testing.T) {
	known := PartLevelInput{Now: compare.PlaysTo{Level: compare.Level{Value: 90}, Low: compare.Level{Value: 80}, High: compare.Level{Value: 100}}, Before: compare.Level{Value: 75}, Target: 90}
	unknown := PartLevelInput{Now: compare.PlaysTo{Rounds: 4}, Before: compare.Level{Value: 68}, Target: 110}
	if got, want := LevelScale([]PartLevelInput{known, unknown}), chart.NewRange(5, 75, 100); got != want {
		t.Errorf("the line is %+v, want %+v", got, want)
	}
}
