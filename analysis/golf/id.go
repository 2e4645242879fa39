package golf

import "errors"

// PlayerID tells an account from all others on a server.
type PlayerID int64

// RoundID tells a round from all others of its player.
type RoundID int64

// CourseID tells a course from all others on a server.
type CourseID int64

// ErrNotFound says that there is no such thing, or that whoever asks may not
// know of it: the two look alike.
var ErrNotFound = errors.New("not found")

// ErrConflict says that somebody changed the thing in the meantime.
var ErrConflict = errors.New("changed in the meantime")
