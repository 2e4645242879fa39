// Package aim answers "where should I aim?": it lays the pattern in which a
// player's shots end over the picture of a hole, and finds the aim that costs
// the fewest strokes on average.
//
// A hole is drawn in plan coordinates: yards, the tee at (0, 0), the centre line
// runs up, right is positive. What is not drawn is the country of the golfer
// behind every expected stroke, so that a hole without a row costs what it costs
// anywhere else.
//
// It refuses to know slope, wind, how far a drop may be moved, nerves, and what
// one ball did.
package aim
