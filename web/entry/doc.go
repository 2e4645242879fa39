// Package entry holds the pages on which a round comes in: courses, the start of
// a round, its holes, its details and files.
package entry
