// Package analysis is the front door of the engine: a round goes in, with the
// golfer to compare with, and the whole account of it comes out.
//
// The steps, each a package of its own:
//
//  1. golf says what a round is and whether it is a legal one;
//  2. expect finds the golfer whose mean over the holes played is the target,
//     and the fixed golfer of that level;
//  3. account charges every shot, sorts the losses into parts of the game and
//     judges the doubles;
//  4. compare and the other packages named after a question answer what many
//     rounds say together.
//
// It is pure computing: no network, no database, no clock, and no randomness
// without a seed that the caller passes.
package analysis
