// Package coach holds the pages of coaching: who has access, the roster, pupils
// side by side, lessons and practice, the report, and what coaches opened.
package coach
