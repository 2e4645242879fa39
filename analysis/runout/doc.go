// Package runout keeps how far a ball runs after it lands: per club and lie, from
// trials of where it landed and where it stopped, and says where to land a shot.
//
// The run-out is total less carry. With five trials or more whose carries range
// over 3 yd, it is a straight line in the carry (least squares, never falling);
// otherwise the mean. Intervals are Student's.
//
// It answers "where do I land this one?" and refuses to know the speed and slope
// of a green beyond the words that a player chose for them.
package runout
