// Package expect answers "how many strokes does it take to hole out from
// here?": for a tour player, from the published table, and for a golfer of any
// level from 68 to 110, from stored solutions of one generative golfer
// (package golfer). Level s means that expected strokes summed over the
// reference course are exactly s.
//
// It knows distance, lie and, near the green, how much of it there is to work
// with. It refuses to know slope, wind, the height of the rough or the player.
// Above about level 95 nothing published anchors the stored levels.
package expect
