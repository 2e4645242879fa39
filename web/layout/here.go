package layout

import (
	"strokeledger/web/paths"
)

// Here is the entry of the navigation of a player's page; for a coach it is
// always the coach's.
func Here(whose paths.Whose, own string) string {
	if whose.Own {
		return own
	}
	return paths.Coaching
}
