package golf

import "errors"

// PlayerID identifies an account among all others on a server.
type PlayerID int64

// RoundID identifies a round among all others of its player.
type RoundID int64

// CourseID identifies a course among all others on a server.
type CourseID int64

// ErrNotFound says that there is no such thing, or that the person who asks may not
// know of it: the two look alike.
var ErrNotFound = errors.New("not found")

// ErrConflict says that somebody changed the thing in the meantime.
var ErrConflict = errors.New("changed in the meantime")
