package analysis

import (
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golfer"
)

// Engine answers questions about many rounds. It holds what every answer needs
// and is slow to make, the ladder of levels and the golfer: a program makes one
// and shares it between goroutines.
type Engine struct {
	ladder compare.Ladder
	golfer golfer.Parameters
	levels levelsOfDrills
	rows   rosterRows
}

// NewEngine makes what every answer needs.
func NewEngine() *Engine { return &Engine{ladder: compare.NewLadder(), golfer: golfer.Committed()} }

// drawSeed makes the same answer from the same rounds, on every page.
const drawSeed = 18
