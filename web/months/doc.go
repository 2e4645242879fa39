// Package months sets spans of rounds side by side, with the shots behind each
// figure and the handicap estimate.
package months
