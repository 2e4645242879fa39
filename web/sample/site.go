package sample

import (
	"slices"

	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/site"
)

// sitePages are the way in, the account and help.
func sitePages() []Page {
	backup, _ := site.NewGuidePage(signedIn(""), "backup")
	return slices.Concat(wayIn(), accountPages(), []Page{
		{"site", "guide", "backup", backup.View()},
		{"site", "help", "signed-out", site.NewHelpPage(layout.Page{}).View()},
		{"site", "help", "signed-in", site.NewHelpPage(signedIn(paths.Help)).View()},
	})
}

// wayIn are the pages of a visitor who is not signed in, or has just joined.
func wayIn() []Page {
	return []Page{
		{"site", "front", "open", site.NewFrontPage(layout.Page{}, "", "", site.DoorOpen).View()},
		{"site", "front", "first", site.NewFrontPage(layout.Page{}, "", "", site.DoorFirst).View()},
		{"site", "front", "closed", site.NewFrontPage(layout.Page{}, "", "", site.DoorClosed).View()},
		{"site", "front", "refused", site.NewFrontPage(layout.Page{}, "robin@harrowfen.example", "That address and password do not go together.", site.DoorInvited).View()},
		{"site", "join", "first", site.NewJoinPage(layout.Page{}, site.JoinInput{}, site.DoorFirst).View()},
		{"site", "join", "refused", site.NewJoinPage(layout.Page{}, site.JoinInput{Name: Player, Problems: map[string]string{"email": "Give an address."}}, site.DoorOpen).View()},
		{"site", "welcome", "new", site.NewWelcomePage(signedIn(""), site.WelcomeInput{Target: "79", Far: "yd", Green: "ft"}).View()},
		{"site", "welcome", "refused", site.NewWelcomePage(signedIn(""), site.WelcomeInput{Target: "60", Problems: map[string]string{"target": "68 to 110.", "far": "Choose one.", "green": "Choose one."}}).View()},
	}
}

// accountPages are the player's account.
func accountPages() []Page {
	account := site.AccountInput{Name: Player, Target: "79", Boundary: "50", Far: "yd", Green: "ft", Clubs: "d 3w 5i 7i 9i pw",
		Devices: []site.Device{{Name: "Firefox on Linux", Seen: "today", Token: "a", This: true}, {Name: "Safari on an iPhone", Seen: "yesterday", Token: "b"}}}
	steward := account
	steward.Steward, steward.Invites, steward.Invited = true, true, "https://golf.example.org/join?token=abcdef"
	wrong := account
	wrong.Problems = map[string]string{"name": "Give a name.", "target": "68 to 110.", "password": "Not your password.", "new": "10 characters or more.", "confirm": "Not your password."}
	return []Page{
		{"site", "account", "player", site.NewAccountPage(signedIn(""), account).View()},
		{"site", "account", "steward", site.NewAccountPage(signedIn(""), steward).View()},
		{"site", "account", "refused", site.NewAccountPage(signedIn(""), wrong).View()},
	}
}
