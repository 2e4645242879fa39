package forecast

import (
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/stat"
)

// Chance is how likely a score is, and what would change that.
type Chance struct {
	Target    float64         // score of the holes of the card
	Levels    golfer.Levels   // that were played
	Rounds    int             // that were played
	Played    int             // rounds of the player that it stands on; 0 with a note
	Thin      golf.Thin       // why the target's golfer was played, and there is no interval
	Mean, SD  float64         // of the score
	Scores    map[int]float64 // share of the rounds with each score
	Chance    float64         // of the target or better
	Interval  stat.Interval   // of Chance, 95 %; not known with a note
	NoDoubles float64         // chance of a round without one
	WhatIf    []WhatIf        // the one that helps most first
	Pairs     []WhatIf        // any two of them together, likewise
	Takes     Takes
}

// AtOrBetter is the chance of a score or better.
func (c Chance) AtOrBetter(score int) float64 {
	sum := 0.0
	for s, share := range c.Scores {
		if s <= score {
			sum += share
		}
	}
	return sum
}

// WhatIf is what a change would do.
type WhatIf struct {
	Kind    Change
	Second  Change  // 0 where it is one change alone
	Strokes float64 // a round, negative where it helps
	Chance  float64 // of the target or better
}

// Change is something that a player may change. The zero value is none.
type Change uint8

// The changes.
const (
	TeeShotsAt    Change = iota + 1 // tee shots of the target's golfer
	ApproachAt                      // and so on
	ShortGameAt                     //
	PuttingAt                       //
	ShortPuttsAt                    // putts of 6 ft and in holed at the rate of the target's golfer
	NoCompounding                   // no second error after the first of a chain
	Longer                          // 15 yd longer off the tee
	PlansAims                       // the aims of the plan; only where holes have pictures
	OneClubLess                     // one club less off the tee; only where holes have pictures
)

// Takes is the smallest single improvement by which the target comes in one round
// of two.
type Takes struct {
	Known   bool          // there is one
	Already bool          // it comes in one of two as it is
	Part    golf.Category // that improves
	Level   float64       // to which
	Strokes float64       // a round that it wins
	Chance  float64       // then
}
