// Package notes shows what coach and player write to each other, on a statement,
// on the page of lessons and in a report.
package notes
