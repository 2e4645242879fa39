package sample

import (
	"net/url"
	"slices"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/site"
)

// sitePages are the pages that belong to no round: the way in, the account,
// help, and what is shown when something is not there.
func sitePages() []Page {
	backup, _ := site.NewGuidePage(signedIn(""), "backup")
	return slices.Concat(wayIn(), accountPages(), stewardPages(), []Page{
		{"site", "guide", "backup", backup.View()},
		{"site", "help", "signed-out", site.NewHelpPage(layout.Page{}).View()},
		{"site", "help", "signed-in", site.NewHelpPage(signedIn(paths.Help)).View()},
		{"site", "offline", "only", site.NewOfflinePage().View()},
		{"site", "problem", "not-found", site.NewProblemPage(layout.Page{}, "Not found", "There is nothing at this address.", "").View()},
		{"site", "problem", "failed", site.NewProblemPage(signedIn(""), "Something went wrong", "This is written down in the log of the server.", "7f3a").Again(paths.Rounds, true, nil).View()},
		{"site", "problem", "failed-form", site.NewProblemPage(signedIn(""), "Something went wrong", "This is written down in the log of the server.", "7f3b").
			Again(paths.NewCourse, false, url.Values{"name": {"Harrow Fen"}, "tee": {"white"}}).View()},
	})
}

// wayIn are the pages of a visitor who is not signed in, or has just joined.
func wayIn() []Page {
	return []Page{
		{"site", "front", "open", site.NewFrontPage(layout.Page{}, "", "", site.DoorOpen).View()},
		{"site", "front", "refused", site.NewFrontPage(layout.Page{}, "robin@harrowfen.example", "That address and password do not go together.", site.DoorInvited).View()},
		{"site", "join", "first", site.NewJoinPage(layout.Page{}, site.JoinInput{}, site.DoorFirst).View()},
		{"site", "join", "refused", site.NewJoinPage(layout.Page{}, site.JoinInput{Name: Player, Problems: map[string]string{"email": "Give an address."}}, site.DoorOpen).View()},
		{"site", "reset", "asked", site.NewResetPage(layout.Page{}, "1", "token", "").View()},
		{"site", "reset", "refused", site.NewResetPage(layout.Page{}, "1", "token", "10 characters or more.").View()},
		{"site", "welcome", "new", site.NewWelcomePage(signedIn(""), site.WelcomeInput{Target: "79", Far: "yd", Green: "ft"}).View()},
		{"site", "welcome", "refused", site.NewWelcomePage(signedIn(""), site.WelcomeInput{Target: "60", Problems: map[string]string{"target": "68 to 110.", "far": "Choose one.", "green": "Choose one."}}).View()},
	}
}

// accountPages are the player's account, and what the player removed.
func accountPages() []Page {
	account := site.AccountInput{Name: Player, Target: "79", Boundary: "50", Far: "yd", Green: "ft", Clubs: "d 3w 5i 7i 9i pw",
		Devices: []site.Device{{Name: "Firefox on Linux", Seen: "today", Token: "a", This: true}, {Name: "Safari on an iPhone", Seen: "yesterday", Token: "b"}}}
	steward := account
	steward.Steward, steward.Invites, steward.Invited = true, true, "https://golf.example.org/join?token=abcdef"
	wrong := account
	wrong.Problems = map[string]string{"name": "Give a name.", "target": "68 to 110.", "password": "Not your password.", "new": "10 characters or more.", "confirm": "Not your password."}
	day, removed := golf.Date{Year: 2026, Month: 5, Day: 2}, time.Date(2026, 5, 3, 9, 0, 0, 0, time.UTC)
	things := []site.RemovedThing{
		{Name: "round-7", Kind: "round", Day: day, Text: "Harrow Fen", Removed: removed},
		{Name: "course-2", Kind: "course", Text: "Saltmarsh Links", Removed: removed},
		{Name: "note-3", Kind: "note", Of: "Bea Lindqvist", Day: day, Text: "A steady round.", Removed: removed},
	}
	undone := signedIn(paths.Rounds)
	undone.Undo = site.NewUndo(things[0])
	return []Page{
		{"site", "account", "player", site.NewAccountPage(signedIn(""), account).View()},
		{"site", "account", "steward", site.NewAccountPage(signedIn(""), steward).View()},
		{"site", "account", "refused", site.NewAccountPage(signedIn(""), wrong).View()},
		{"site", "removed", "full", site.NewRemovedPage(undone, things).View()},
		{"site", "removed", "empty", site.NewRemovedPage(signedIn(""), nil).View()},
	}
}

// stewardPages are the list of accounts.
func stewardPages() []Page {
	list := site.AccountsInput{
		All: []site.ListedAccount{
			{ID: 1, Name: "Ines Halloran", Email: "ines@harrowfen.example", Since: "2 May 2024", Steward: true},
			{ID: 2, Name: Player, Email: "robin@harrowfen.example", Since: "3 May 2024", ResetUntil: "tomorrow"},
			{ID: 3, Name: "Bea Lindqvist", Email: "bea@harrowfen.example", Since: "4 May 2024", Steward: true},
		},
		Invitations: []site.OpenInvitation{{MadeBy: "Ines Halloran", Until: "9 May", Token: "abc"}},
		Link:        "https://golf.example.org/reset?player=2&token=abcdef", For: 2,
	}
	return []Page{
		{"site", "accounts", "full", site.NewAccountsPage(signedIn(""), list).View()},
		{"site", "accounts", "alone", site.NewAccountsPage(signedIn(""), site.AccountsInput{All: list.All[:1]}).View()},
		{"site", "accounts", "refused", site.NewAccountsPage(signedIn(""), site.AccountsInput{All: list.All[:1], Problem: "One steward always remains."}).View()},
	}
}
