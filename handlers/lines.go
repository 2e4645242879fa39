package handlers

import (
	"strokeledger/db"
	"strokeledger/web/form"
)

// shownLine is the line of a hole in a player's units.
func shownLine(h db.Hole, p db.Player) string {
	return form.Shown(h.Line, h.Card(), form.Units(h.Units), unitsOf(p))
}

// typed puts a line, read in the player's units, into its hole. A line that is still
// as it was shown changes nothing.
func typed(h db.Hole, l form.Line, p db.Player) db.Hole {
	if h.Line != "" && l.Text == shownLine(h, p) {
		return h
	}
	h.Hole, h.Line, h.Units = l.Hole, l.Text, db.Units(unitsOf(p))
	return h
}
