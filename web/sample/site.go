package sample

import (
	"net/url"
	"slices"

	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/site"
)

// sitePages are the way in and help.
func sitePages() []Page {
	backup, _ := site.NewGuidePage(signedIn(""), "backup")
	return slices.Concat(wayIn(), []Page{
		{"site", "guide", "backup", backup.View()},
		{"site", "help", "signed-out", site.NewHelpPage(layout.Page{}).View()},
		{"site", "help", "signed-in", site.NewHelpPage(signedIn(paths.Help)).View()},
	})
}

// wayIn are the pages of a visitor who is not signed in or has just joined.
func wayIn() []Page {
	return []Page{
		{"site", "front", "open", site.NewFrontPage(layout.Page{}, "", "", site.DoorOpen).View()},
		{"site", "front", "first", site.NewFrontPage(layout.Page{}, "", "", site.DoorFirst).View()},
		{"site", "front", "closed", site.NewFrontPage(layout.Page{}, "", "", site.DoorClosed).View()},
		{"site", "front", "refused", site.NewFrontPage(layout.Page{}, "robin@harrowfen.example", "That address and password do not go together.", site.DoorInvited).View()},
		{"site", "join", "first", site.NewJoinPage(layout.Page{}, form.Join{}, site.DoorFirst).View()},
		{"site", "join", "refused", site.NewJoinPage(layout.Page{}, form.ParseJoin(url.Values{"name": {Player}}), site.DoorOpen).View()},
	}
}
