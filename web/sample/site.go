package sample

import (
	"strokeledger/web/layout"
	"strokeledger/web/pages"
	"strokeledger/web/paths"
)

// sitePages are the pages that belong to no round: the way in, the account,
// help, and what is shown when something is not there.
func sitePages() []Page {
	return []Page{
		{"site", "front", "open", pages.NewFront(layout.Page{}, "", "", pages.DoorOpen).View()},
		{"site", "front", "refused", pages.NewFront(layout.Page{}, "robin@harrowfen.example", "That address and password do not go together.", pages.DoorInvited).View()},
		{"site", "join", "first", pages.NewJoin(layout.Page{}, pages.JoinForm{}, pages.DoorFirst).View()},
		{"site", "join", "refused", pages.NewJoin(layout.Page{}, pages.JoinForm{Name: Player, Problems: map[string]string{"email": "Give an address."}}, pages.DoorOpen).View()},
		{"site", "help", "signed-out", pages.NewHelp(layout.Page{}).View()},
		{"site", "help", "signed-in", pages.NewHelp(signedIn(paths.Help)).View()},
	}
}
