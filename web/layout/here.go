package layout

import (
	"strokeledger/web/paths"
)

// Here is the entry of the navigation that a player’s page belongs to: own for the
// player, and always Coach for a coach.
func Here(whose paths.Whose, own string) string {
	if whose.Own {
		return own
	}
	return paths.Coaching
}
