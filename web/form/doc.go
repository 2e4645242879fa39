// Package form reads what a person typed: the text stays as it was, beside what
// it meant and what was wrong with it, in one value, so that a page can show
// all three again.
//
// It answers "what did this mean?" and refuses to guess: what is not allowed is
// said beside the place, with what is.
package form
