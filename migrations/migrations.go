// Package migrations holds the schema of the database as numbered steps, up and
// down, embedded into the program.
package migrations

import "embed"

// Files are the steps, in the order of their numbers.
//
//go:embed *.sql
var Files embed.FS
