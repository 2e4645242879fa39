// Package site holds the pages around the rest: the front page, signing in, the
// account, help, what was removed, stewards and problems.
package site
