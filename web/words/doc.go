// Package words writes numbers, days, counts and choices as people read them.
// It decides signs, units, articles and plurals, and computes nothing.
package words
