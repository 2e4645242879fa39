// Package account answers "what did each shot of this round cost, and where
// did the doubles begin?".
//
// What a shot lost is 1 + its penalty strokes + expected strokes after it -
// expected strokes before it. Over a round the losses add up to the score less
// what the golfer compared with takes, exactly; nothing is rounded here.
//
// Errors, trouble, chains and kinds of doubles are always judged by the fixed
// golfer of the player's level, whatever the shots are charged against, so
// that a double is the same double on every page. The package refuses to guess
// what happened on a hole that is known by its score alone.
package account
