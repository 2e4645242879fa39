package sample

import (
	"net/url"
	"strings"
	"time"

	"strokeledger/analysis/golf"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
	"strokeledger/web/site"
)

// stewardPages are the steward's list of accounts, and where its password links
// lead.
func stewardPages() []Page {
	kim := site.ListedAccount{ID: 1, Name: Player, Email: "robin@harrowfen.example", Since: "1 May 2026", Steward: true}
	ann := site.ListedAccount{ID: 2, Name: "Ann Merrow", Email: "ann@harrowfen.example", Since: "2 May 2026", ResetUntil: "3 Nov, 10:00 UTC"}
	second := site.ListedAccount{ID: 3, Name: "Theophilus Featherstonehaugh-Cholmondeley", Email: "theophilus.featherstonehaugh@harrowfen.example", Since: "9 May 2026", Steward: true}
	open := []site.OpenInvitation{{MadeBy: Player, Until: "9 Nov, 10:00 UTC", Token: "t1"}, {MadeBy: second.Name, Until: "8 Nov, 18:30 UTC", Token: "t2"}}
	accounts := func(state string, in site.AccountsInput) Page {
		return Page{"site", "accounts", state, site.NewAccountsPage(signedIn(paths.Account), in).View()}
	}
	return []Page{
		accounts("only-steward", site.AccountsInput{All: []site.ListedAccount{kim}}),
		accounts("full", site.AccountsInput{All: []site.ListedAccount{kim, ann, second}, Invitations: open}),
		accounts("link", site.AccountsInput{All: []site.ListedAccount{kim, ann}, For: 2, Link: "https://golf.example/reset?player=2&token=nvzf3kq7"}),
		accounts("refused", site.AccountsInput{All: []site.ListedAccount{kim, ann}, Problem: "You are the only steward. Make another account a steward first."}),
		{"site", "reset", "open", site.NewResetPage(layout.Page{}, "2", "nvzf3kq7", "").View()},
		{"site", "reset", "refused", site.NewResetPage(layout.Page{}, "2", "nvzf3kq7", "Too short. Allowed: 10 characters or more.").View()},
	}
}

// removedPages list what can be restored.
func removedPages() []Page {
	at, day := time.Date(2026, 11, 4, 18, 5, 0, 0, time.UTC), golf.Date{Year: 2026, Month: 10, Day: 31}
	all := []site.RemovedThing{
		{Name: "round.7", Kind: "round", Day: day, Text: "Harrow Fen", Removed: at},
		{Name: "note.3", Kind: "note", Day: day, Text: "Hold the finish on every pitch until the ball has stopped, then look back at the divot.", Of: "Ann Merrow", Removed: at},
		{Name: "reply.2", Kind: "reply", Day: day, Text: "It felt better with the shorter swing.", Removed: at},
		{Name: "assignment.4", Kind: "assignment", Text: "Putts from 6 feet", Of: "Ann Merrow", Removed: at},
		{Name: "result.1", Kind: "result", Day: day, Text: "14 of 20", Removed: at},
		{Name: "course.2.1", Kind: "course", Text: "Quarry Hill", Removed: at},
	}
	return []Page{
		{"site", "removed", "empty", site.NewRemovedPage(signedIn(paths.Account), nil).View()},
		{"site", "removed", "full", site.NewRemovedPage(signedIn(paths.Account), all).View()},
	}
}

// problemPages say that something went wrong, and the one that a phone shows
// without a connection.
func problemPages() []Page {
	busy := func() site.ProblemPage {
		return site.NewProblemPage(signedIn(""), "Temporarily unavailable", "The database is busy or restarting.", "")
	}
	return []Page{
		{"site", "offline", "kept", site.NewOfflinePage().View()},
		{"site", "problem", "not-found", site.NewProblemPage(signedIn(""), "Not found", "There is no such page, or you do not have access to it.", "").View()},
		{"site", "problem", "failed", site.NewProblemPage(signedIn(""), "Something went wrong", "This is a fault on the server, not yours. Nothing was changed. Go back and try again.", "7f3a-12").View()},
		{"site", "problem", "reload", busy().Again("/rounds", true, nil).View()},
		{"site", "problem", "resend", busy().Again("/rounds/7/conditions", false, url.Values{"conditions": {"dry, fast greens"}}).View()},
		{"site", "problem", "go-back", busy().Again("/sign-in", false, url.Values{"password": {"secret"}}).View()},
	}
}

// linkEnds is when the link in a letter that asks to confirm an address ends.
var linkEnds = lastVisit.AddDate(0, 0, 3)

// accountPages are the player's own account, and the questions to a new player.
func accountPages() []Page {
	kept := form.Settings{Name: form.TextOf(Player), Target: form.NumberOf(79), Boundary: form.NumberOf(50), Far: form.ChoiceOf(golf.Yards), Green: form.ChoiceOf(golf.Feet), Clubs: form.TextOf("d 3w 5i 7i 9i pw sw"), Zone: form.TextOf("Europe/London")}
	devices := []site.Device{{Name: "Safari on iPhone", Seen: "today 06:22 GMT", This: true}, {Name: "Firefox on Linux", Seen: "2 Nov", Token: "b2"}}
	account := func(state string, in site.AccountInput) Page {
		return Page{"site", "account", state, site.NewAccountPage(signedIn(paths.Account), in).View()}
	}
	const wrong = "This is not the password of your account."
	return []Page{
		account("one-device", site.AccountInput{Settings: kept, Devices: devices[:1]}),
		account("full", site.AccountInput{Settings: kept, Devices: devices, Steward: true, Invites: true}),
		account("invited", site.AccountInput{Settings: kept, Devices: devices, Steward: true, Invites: true, Invited: "https://golf.example/join?token=nvzf3kq7"}),
		account("feed-made", site.AccountInput{Settings: kept, Devices: devices, ElsewhereInput: site.ElsewhereInput{FeedSince: lastVisit, FeedMade: "https://golf.example/notices/feed?player=1&token=" + strings.Repeat("NVZF3KQ7", 6)}}),
		account("feed-on", site.AccountInput{Settings: kept, Devices: devices, ElsewhereInput: site.ElsewhereInput{FeedSince: lastVisit, Mail: true, Email: "robin@harrowfen.example", Every: "weekly", ProvedAt: &lastVisit}}),
		account("mail-off", site.AccountInput{Settings: kept, Devices: devices, ElsewhereInput: site.ElsewhereInput{Mail: true, Email: "robin@harrowfen.example"}}),
		account("mail-waiting", site.AccountInput{Settings: kept, Devices: devices, ElsewhereInput: site.ElsewhereInput{Mail: true, Email: "robin@harrowfen.example", Every: "daily", AskedAt: &lastVisit, AskedUntil: &linkEnds, AskedOpen: true}}),
		account("mail-expired", site.AccountInput{Settings: kept, Devices: devices, ElsewhereInput: site.ElsewhereInput{Mail: true, Email: "robin@harrowfen.example", Every: "daily", AskedAt: &lastVisit, AskedUntil: &linkEnds}}),
		account("mail-owed", site.AccountInput{Settings: kept, Devices: devices, ElsewhereInput: site.ElsewhereInput{Mail: true, Email: "robin@harrowfen.example", Every: "daily", MailWrong: "No e-mail was sent: enough went to this address lately. Try again tomorrow."}}),
		{"site", "mail-confirm", "asked", site.NewDigestProofPage(layout.Page{}, site.DigestProofInput{Name: Player, Email: "robin@harrowfen.example", Daily: true, Player: 1, Token: "NVZF3KQ7"}).View()},
		{"site", "mail-confirm", "started", site.NewDigestProofPage(layout.Page{}, site.DigestProofInput{Started: true}).View()},
		{"site", "mail-confirm", "refused", site.NewDigestProofPage(layout.Page{}, site.DigestProofInput{Refused: true}).View()},
		{"site", "mail-confirm", "no-link", site.NewDigestProofPage(layout.Page{}, site.DigestProofInput{}).View()},
		{"site", "mail-end", "asked", site.NewDigestEndPage(layout.Page{}, paths.DigestEndOf(1, "NVZF3KQ7")).View()},
		{"site", "mail-end", "done", site.NewDigestEndPage(layout.Page{}, "").View()},
		account("refused", site.AccountInput{Settings: form.ParseSettings(url.Values{"target": {"60"}, "clubs": {"7i/8i"}, "zone": {"Greenwich time"}}), Devices: devices}),
		account("wrong-password", site.AccountInput{Settings: kept, Devices: devices, OldWrong: wrong, NewWrong: "Too short. Allowed: 10 characters or more."}),
		account("not-deleted", site.AccountInput{Settings: kept, Devices: devices, DeleteWrong: wrong}),
		welcomePage("open", form.FirstSettings{Target: kept.Target, Far: kept.Far, Green: kept.Green}),
		welcomePage("refused", form.ParseFirstSettings(url.Values{"target": {"60"}})),
	}
}

// welcomePage asks a new player, with what was typed.
func welcomePage(state string, typed form.FirstSettings) Page {
	return Page{"site", "welcome", state, site.NewWelcomePage(signedIn(""), typed).View()}
}
