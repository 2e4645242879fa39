package site

import (
	"strokeledger/web/components"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// AccountPage is where a player sets up the account.
type AccountPage struct {
	layout.Page
	Settings  []components.Field
	Far       components.Radios
	Green     components.Radios
	Passwords []components.Field
	Devices   []Device
	Delete    components.Field
	Wrong     AccountWrong
	Steward   bool
	Accounts  string // address of the steward's list
	Invites   bool   // the steward may invite
	Invited   string // an invitation that was just made
}

// AccountWrong is what was wrong with each form of the page.
type AccountWrong struct{ Settings, Password, Delete components.Summary }

// Device is one that is signed in.
type Device struct {
	Name, Seen, Token string
	This              bool
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
			{Name: "target", Label: "Target score", Value: f.Target, Mode: "decimal", Hint: "For 18 holes, 68 to 110. A round keeps the target it was played for.", Problem: f.Problems["target"]},
			{Name: "clubs", Label: "The clubs in your bag", Value: f.Clubs, Hint: "As you call them, with spaces: d 3w 5i 6i pw. They are offered where a club is asked for.", Problem: f.Problems["clubs"]},
			{Name: "boundary", Label: "Where the short game ends, in yards", Value: f.Boundary, Mode: "decimal", Hint: "30 to 100, usually 50.", Problem: f.Problems["boundary"]},
		},
		Far:   farChoices(f.Far, f.Problems["far"]),
		Green: greenChoices(f.Green, f.Problems["green"]),
		Passwords: []components.Field{
			{Name: "password", Label: "Password now", Type: "password", Complete: "current-password", Problem: f.Problems["password"]},
			{Name: "new", Label: "New password", Type: "password", Complete: "new-password", Hint: "10 characters or more. Other devices are signed out.", Problem: f.Problems["new"]},
		},
		Delete: components.Field{Name: "confirm", Label: "Password", Type: "password", Complete: "current-password", Problem: f.Problems["confirm"]},
	}
	a.Wrong.Settings = components.Summed(a.Settings...)
	a.Far.AddTo(&a.Wrong.Settings)
	a.Green.AddTo(&a.Wrong.Settings)
	a.Wrong.Password = components.Summed(a.Passwords...).Saying("The password is not changed.")
	a.Wrong.Delete = components.Summed(a.Delete).Saying("The account is not deleted.")
	return a
}
