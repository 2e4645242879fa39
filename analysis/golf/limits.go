package golf

// The ends of what a player or a card may say of a round.
// Common practice: wide enough for every course and every golfer.
const (
	MinTarget, MaxTarget = 68, 110 // score of 18 holes that a player is after
	MinPar18, MaxPar18   = 27, 108 // par of a whole course
	MaxNine              = 200     // a card's score of nine holes
	MaxIndex             = 18      // stroke index
	MaxShot              = 99      // the place of a shot on its hole

	MaxTries   = 200 // of a drill in one session
	MaxMinutes = 600 // of a session, and of practice in a week
	MinWeek    = 60  // minutes of practice in a week
	WeekStep   = 5   // of those minutes

	MaxAhead                   = 366     // days until something that is arranged
	MaxTeeClubs                = 7       // clubs for the tee in a bag
	MinClubYards, MaxClubYards = 60, 400 // length of one of them, in yards
	MinBendYards, MaxBendYards = 1, 60   // by which its ball ends beside its aim
	MaxAimSide, MaxAimLong     = 60, 30  // yards of an aim beside the middle or the flag, and beyond it
	MaxRangeText               = 8000    // bytes of the balls of a session on the range

	MinRating, MaxRating         = 20, 90  // course rating of a whole course
	MinNineRating, MaxNineRating = 10, 50  // course rating of nine holes
	MinSlope, MaxSlope           = 55, 155 // slope rating: Rules of Handicapping, Appendix A

	MinPar, MaxPar = minPar, maxPar
	MaxHole        = maxHoleNumber
	MaxPenalty     = maxPenalty
	MaxScoreOnly   = maxScoreOnly
)
