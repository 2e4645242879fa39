// Package figures holds the pictures and tables that several subjects share: the
// bars and whiskers of a span, the line of a season, putts by length, levels, the
// list of rounds and the chain of a double.
package figures
