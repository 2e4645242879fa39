// Package site holds the pages that belong to no round: the front page, the
// account and how to get one, help, what was removed, the steward's list, what
// shows without a connection, and error pages.
package site
