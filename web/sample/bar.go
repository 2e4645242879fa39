package sample

import (
	"strokeledger/web/coach"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/statement"
)

// longName has 48 letters, about as many as a name of three words may have.
const longName = "Maximiliane-Charlotte von Falkenstein-Rothenberg"

// barPages are the bar over each page at its fullest: a long name and a dozen notices,
// for a player, a coach, and a coach at the own game.
func barPages() []Page {
	full := func(page layout.Page) layout.Page {
		page.Player, page.Notices = longName, 12
		return page
	}
	return []Page{
		{"coach", "bar", "player", statement.NewRoundsPage(full(signedIn(paths.Rounds)), statement.RoundsInput{Whose: ownPages}).View()},
		{"coach", "bar", "of-a-coach", coach.NewFormerNotesPage(full(teaches(paths.Coaching)), nil).View()},
		{"coach", "bar", "own-game", statement.NewRoundsPage(full(teaches(paths.Rounds)), statement.RoundsInput{Whose: ownPages}).View()},
	}
}
