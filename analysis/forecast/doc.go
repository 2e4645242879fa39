// Package forecast answers "what would many rounds look like?": it sends a
// golfer of given levels out on given holes and counts scores, fairways,
// greens, putts and doubles. The golfer is the one behind every expected
// stroke, so that the mean agrees with the expectation.
//
// It refuses to know weather, nerves or the day's pins.
package forecast
