// Package forecast answers "what would many rounds look like?": it sends a
// golfer of given levels out on given holes and counts scores, fairways,
// greens, putts and doubles. The golfer is the one behind every expected
// stroke, so that the mean agrees with the expectation.
//
// A bad shot makes the next one worse only by where it leaves the ball. Given the
// lie, strokes are independent of each other, and what makes a good day or a bad
// one is the form of the day alone, which every part of the game shares. So a
// forecast has the compound errors that bad lies cause, and none that temper
// causes: a golfer who presses after a mistake makes more doubles than it says,
// and has a wider spread of scores.
//
// It also answers "how likely is this score, how sure is that, and what would change
// it?" (Find). Holes that somebody drew are played on the drawing; own lengths and
// patterns of clubs are not counted.
//
// It refuses to know weather, nerves or the day's pins.
package forecast
