package golf

// Played is a stored round with what it was played for: what the engine needs
// of each round of a history.
type Played struct {
	ID     RoundID
	Round  Round
	Target float64 // of 18 holes, MinTarget to MaxTarget
	Par18  int     // par of the whole course; 0 where it is not known
}
