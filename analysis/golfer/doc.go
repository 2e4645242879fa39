// Package golfer is the one golfer behind every number: how a stroke of a
// player of any skill may turn out, how many strokes follow on average, and
// what many rounds come to.
//
// A golfer is a point on a line of skill: coordinate 0 is about a tour player,
// 1 a 90 golfer. Every skill number is a smooth function of the coordinate. A
// stroke (flight, putt) spreads over the country (ground); solving follows it
// by dynamic programming over lie and distance; Visits follows it forward
// without a random number; Player plays it with one. The three use the same
// strokes, so that their numbers agree.
//
// It answers "how would such a golfer play?" and refuses to know slope, wind,
// clubs or nerves. Above about level 95 nothing published anchors it.
//
// The structure is a prototype's, with these departures. The nodes across the
// line of a stroke are Gauss-Legendre on each side, since expected strokes have
// their only corner on the line: equally spaced ones were .02 off over a course
// at level 90, these are .003. The grid is finer under 10 yd, where steps of a
// yard were .02 off. A chip with too little green spreads wider as well as
// running past: with the run alone, the cost of a short side was too small for
// what a golfer judges by hand. Bad strikes near the green, balls that stay in the
// sand or hardly leave the grass, bad full shots and penalties are numbers that the
// calibration moves, since published figures say how often they happen. The
// shortest putts have a number of their own: of a weak golfer's, more go in than
// one spread of the start line for all lengths allows.
//
// Penalties have no published source: a golfer of 84 to 90 is drawn to .9 a round,
// in the middle of what is common practice.
//
// A bad stroke makes the next one worse only by where it leaves the ball.
package golfer
