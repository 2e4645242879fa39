package db

// The statements whose plans are asserted.
const (
	PlayedRounds = playedRounds
	PlayedShots  = playedShots
)

// The statements of the roster, for a look at their plans.
var (
	RosterStatement    = roster
	SummariesStatement = summaries
)
