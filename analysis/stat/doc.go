// Package stat is the arithmetic of averages and their uncertainty, over plain
// float64. It knows no golf, so that it can be checked against handbook
// values.
package stat
