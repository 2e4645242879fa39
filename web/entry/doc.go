// Package entry holds the pages that get a round in: courses, starting a round,
// its holes, clubs and notes for its shots, its details, and imported files.
package entry
