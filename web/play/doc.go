// Package play holds the pages of preparing a round: drawing a hole, where to aim on
// it, the plan of a round with its card to carry, the bag, and the chance of the
// target.
package play
