// Package shotsfile reads and writes the shots file, version 1: a CSV file with
// a row for every stroke made at the ball.
//
// It answers "which rounds does this file hold, or what exactly is wrong with
// it?". A file with one fault is refused whole; the reader goes on to find the
// others, up to a hundred, and says of each where it stands, by line and column. It reads round by
// round, keeping one round and the names of the others, and never panics
// whatever it is given.
package shotsfile
