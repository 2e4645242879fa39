package analysis

import (
	"math"
	"testing"

	"strokeledger/analysis/golf"
)

// trialsOf are trials of a club in yards, from the fairway to a medium green.
func trialsOf(club string, pairs ...float64) (all []golf.Trial) {
	for i := 0; i < len(pairs); i += 2 {
		all = append(all, golf.Trial{Club: club, Lie: golf.Fairway, Speed: golf.MediumGreen, Carry: pairs[i], Total: pairs[i+1], Unit: golf.TrialYards})
	}
	return all
}

// Common practice: a wedge that lands at 12 and stops at 21, and at 13 and 23, runs
// out 9 to 10; a shot of 23 yd is landed at 13 to 13.5.
func TestTheChipOfCommonPractice(t *testing.T) {
	chip := golf.ChipAhead{Lie: golf.Fairway, Distance: 23 * golf.Yard, Green: 17 * golf.Yard, Speed: golf.MediumGreen, Slope: golf.LevelGround}
	trials := append(trialsOf("pw", 12, 21, 13, 23), trialsOf("PW", 12, 21)...)
	trials = append(trials, trialsOf("8i", 7, 21, 8, 25, 9, 26, 10, 31, 12, 34)...)
	engine := NewEngine()
	book, err := engine.RunOut(RunOutInput{Trials: trials, Chip: &chip, Target: 79})
	if err != nil || len(book.Pages) != 1 || len(book.Pages[0].Clubs) != 2 {
		t.Fatalf("%+v, %v", book, err)
	}
	eight, wedge := book.Pages[0].Clubs[0], book.Pages[0].Clubs[1]
	if eight.Name != "8i" || wedge.Name != "pw" || wedge.Page.Trials != 3 || wedge.Run(12) < 9 || wedge.Run(12) > 10 {
		t.Errorf("%+v, %+v", eight, wedge)
	}
	best := book.Chip.Choices[0]
	if best.Club != "pw" || best.Land < 13 || best.Land > 14 || !best.Tried || best.Ends.Low > 23 || best.Ends.High < 23 {
		t.Errorf("%+v", best)
	}
	if other := book.Chip.Choices[1]; other.Possible || !math.IsNaN(other.Strokes) {
		t.Errorf("the 8-iron lands short of the green: %+v", other)
	}
	if book.Chip.Known || book.Chip.Putting != 79 {
		t.Errorf("without rounds: %+v", book.Chip)
	}
	if land, ok := wedge.Land(40); ok || land < 30 {
		t.Errorf("the card tells a carry that was never tried: %g", land)
	}
	chip.Lie = golf.Rough
	if book, err := engine.RunOut(RunOutInput{Trials: trials, Chip: &chip, Target: 79}); err != nil || len(book.Chip.Choices) != 0 {
		t.Errorf("no page from the rough: %+v, %v", book.Chip, err)
	}
}

// The player's own levels count once there are rounds enough.
func TestTheChipOfAPlayerWithRounds(t *testing.T) {
	chip := golf.ChipAhead{Lie: golf.Fairway, Distance: 23 * golf.Yard, Green: 17 * golf.Yard, Speed: golf.MediumGreen, Slope: golf.LevelGround}
	in := RunOutInput{Trials: trialsOf("pw", 12, 21, 13, 23, 14, 24), Chip: &chip, Target: 72}
	engine := NewEngine()
	as72, err := engine.RunOut(in)
	if err != nil {
		t.Fatal(err)
	}
	in.History = played(t, 90, 12)
	own, err := engine.RunOut(in)
	if err != nil || !own.Chip.Known || own.Chip.ShortGame <= 72 || own.Chip.Choices[0].Strokes <= as72.Chip.Choices[0].Strokes {
		t.Errorf("%+v beside %+v, %v", own.Chip, as72.Chip, err)
	}
}
