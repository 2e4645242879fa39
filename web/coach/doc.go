// Package coach holds the pages of coaching: the roster, pupils side by side,
// lessons and practice, the report, and who opened what.
package coach
