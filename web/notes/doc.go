// Package notes shows what coach and player write to each other, on a statement,
// in lessons and in a report.
package notes
