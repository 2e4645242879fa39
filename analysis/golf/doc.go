// Package golf is the vocabulary of the game: distances, lies, shots, holes,
// rounds, and the rules that make a written hole a legal one.
//
// It answers "what may be said of a round?" and refuses to say what a shot was
// worth: that is the work of the packages that import this one. It imports the
// standard library only, reads no clock and holds no state.
package golf
