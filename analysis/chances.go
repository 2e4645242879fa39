package analysis

import (
	"errors"

	"strokeledger/analysis/aim"
	"strokeledger/analysis/forecast"
	"strokeledger/analysis/golf"
)

// ChanceInput is what the chance of a target is asked for.
type ChanceInput struct {
	History  []golf.Played // all rounds, in the order of their days
	Target   float64       // score of 18 holes
	Par18    int           // par of the whole course; 0 where it is not known
	Card     []golf.CardHole
	Pictures map[int]aim.Picture // by number of the hole; others are the model's ground
	Clubs    []aim.Club          // for holes with a picture; none stands for ClubsOf
	Planned  bool                // holes with a picture are played with the plan's aims, not straight
	Rounds   int                 // to play; 0 stands for 20,000
	Seed     uint64
}

// Chance answers "how likely is the target on this course, and what would change
// that?".
func (e *Engine) Chance(in ChanceInput) (forecast.Chance, error) {
	return forecast.Chance{}, errUnfinished
}

var errUnfinished = errors.New("not worked out yet")
