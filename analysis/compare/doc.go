// Package compare answers "how good is this part of the game, and has it
// changed?": the level a player plays to in each part, with how sure that is,
// and what one span of rounds differs from another by.
//
// It refuses to say how sure a change is where fewer than three rounds stand on a
// side, and to give a level from fewer than five: one round says almost nothing.
package compare
