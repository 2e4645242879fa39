// Package statement holds the list of rounds and the statement of a round: what
// every shot cost, from the target to the score.
package statement
