// Package practice turns losses into practice: drills whose pass marks come from
// the golfer, and what the results of a drill say.
//
// A drill is data: where it is played from, what counts, how it is set up. For
// each, the golfer gives the chance that a try counts at any level, by an exact
// forward step without a random number. From that come the mark to pass, how many
// tries tell two levels apart, and the level that results point to.
//
// It answers "how good is good enough, and did it work?" and refuses to teach
// technique: that is a qualified coach's.
package practice
