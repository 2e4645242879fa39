// Package compare answers "how good is this part of the game, and has it
// changed?": the level a player plays to in each part, with how sure that is,
// and what one span of rounds differs from another by.
//
// It refuses a word where fewer than three rounds stand on a side, and a level
// from fewer than five: one round says almost nothing.
package compare
