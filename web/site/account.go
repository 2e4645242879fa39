package site

import (
	"strokeledger/web/components"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// AccountPage is where a player changes settings and password, sees signed-in
// devices, and deletes the account.
type AccountPage struct {
	layout.Page
	Settings  []components.Field // name, target, clubs, and where the short game ends
	Far       components.Radios  // unit off the green
	Green     components.Radios  // unit on the green
	Passwords []components.Field // current and new; never filled in
	Devices   []Device           // signed in, this one included
	Delete    components.Field   // the password that confirms; never filled in
	Wrong     AccountWrong
	Steward   bool   // the player is a steward
	Accounts  string // address of the steward's list
	Invites   bool   // the player can invite others
	Invited   string // invitation link that was just made; empty for none
}

// AccountWrong says what is wrong with each form of the page.
type AccountWrong struct{ Settings, Password, Delete components.Summary }

// Device is one that is signed in.
type Device struct {
	Name  string // “Safari on iPhone”
	Seen  string // when it was last used: “today 06:22”
	Token string // identifies it in the form that signs it out
	This  bool   // the reader is using it now
}

// AccountInput is what the account is, or what was typed, and what was wrong.
type AccountInput struct {
	Name, Target, Boundary, Far, Green, Clubs string
	Problems                                  map[string]string
	Devices                                   []Device
	Steward, Invites                          bool
	Invited                                   string
}

// NewAccountPage makes the page.
func NewAccountPage(page layout.Page, f AccountInput) AccountPage {
	page.Title, page.Here = "Account", paths.Account
	a := AccountPage{Page: page, Devices: f.Devices, Steward: f.Steward, Accounts: paths.Accounts, Invites: f.Invites, Invited: f.Invited,
		Settings: []components.Field{
			{Name: "name", Label: "Name", Value: f.Name, Complete: "name", Problem: f.Problems["name"]},
			{Name: "target", Label: "Target score", Value: f.Target, Mode: "decimal", Hint: "For 18 holes, 68 to 110. A round keeps the target it was started with.", Problem: f.Problems["target"]},
			{Name: "clubs", Label: "Clubs in your bag", Value: f.Clubs, Hint: "Your names for them, with spaces between: d 3w 5i 6i pw. You can pick from these when you enter a club.", Problem: f.Problems["clubs"]},
			{Name: "boundary", Label: "Where the short game ends, in yards", Value: f.Boundary, Mode: "decimal", Hint: "30 to 100, usually 50.", Problem: f.Problems["boundary"]},
		},
		Far:   farChoices(f.Far, f.Problems["far"]),
		Green: greenChoices(f.Green, f.Problems["green"]),
		Passwords: []components.Field{
			{Name: "password", Label: "Current password", Type: "password", Complete: "current-password", Problem: f.Problems["password"]},
			{Name: "new", Label: "New password", Type: "password", Complete: "new-password", Hint: "10 characters or more. Other devices are signed out.", Problem: f.Problems["new"]},
		},
		Delete: components.Field{Name: "confirm", Label: "Password", Type: "password", Complete: "current-password", Problem: f.Problems["confirm"]},
	}
	a.Wrong.Settings = components.Summed(a.Settings...)
	a.Far.AddTo(&a.Wrong.Settings)
	a.Green.AddTo(&a.Wrong.Settings)
	a.Wrong.Password = components.Summed(a.Passwords...).Saying("The password was not changed.")
	a.Wrong.Delete = components.Summed(a.Delete).Saying("The account was not deleted.")
	return a
}
