package db

// The statements whose plans are asserted.
const (
	PlayedRounds = playedRounds
	PlayedShots  = playedShots
)
