package site

import (
	"strokeledger/web/components"
	"strokeledger/web/form"
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
	Zone      ZoneField
	Passwords []components.Field // current and new; never filled in
	Devices   []Device           // signed in, this one included
	Delete    components.Field   // the password that confirms; never filled in
	Wrong     AccountWrong
	Steward   bool   // the player is a steward
	Accounts  string // address of the steward's list
	Invites   bool   // the player can invite others
	Invited   string // invitation link that was just made; empty for none
	Elsewhere Elsewhere
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

// AccountInput is what the page of the account is made of.
type AccountInput struct {
	form.Settings // as typed, or as saved
	ElsewhereInput
	OldWrong    string   // what is wrong with the current password; empty for nothing
	NewWrong    string   // what is wrong with the new password; empty for nothing
	DeleteWrong string   // what is wrong with the password that deletes the account; empty for nothing
	Devices     []Device // signed in, this one included
	Steward     bool     // the player is a steward
	Invites     bool     // the player can invite others
	Invited     string   // invitation link that was just made; empty for none
}

// NewAccountPage makes the page.
func NewAccountPage(page layout.Page, in AccountInput) AccountPage {
	page.Title, page.Here, page.Script = "Account", paths.Account, "zone.js"
	a := AccountPage{Page: page, Devices: in.Devices, Steward: in.Steward, Accounts: paths.Accounts, Invites: in.Invites, Invited: in.Invited, Elsewhere: newElsewhere(in.ElsewhereInput),
		Settings: []components.Field{
			components.Filled(components.Field{Name: "name", Label: "Name", Complete: "name"}, in.Name),
			components.Filled(components.Field{Name: "target", Label: "Target score", Mode: "decimal", Hint: "For 18 holes, " + form.TargetRange() + ". A round keeps the target it was started with."}, in.Target),
			components.Filled(components.Field{Name: "clubs", Label: "Clubs in your bag", Hint: "Your names for them, with spaces between: d 3w 5i 6i pw. You can pick from these when you enter a club."}, in.Clubs),
			components.Filled(components.Field{Name: "boundary", Label: "Where the short game ends, in yards", Mode: "decimal", Hint: "30 to 100, usually 50."}, in.Boundary),
			components.Filled(components.Field{Name: "minutes", Label: "Minutes of practice a week", Mode: "numeric", Hint: "60 to 600, in steps of 5. Your practice plan shares them out."}, in.Minutes),
		},
		Far:   components.Picked(farUnits, in.Far),
		Green: components.Picked(greenUnits, in.Green),
		Zone:  newZoneField(in.Zone),
		Passwords: []components.Field{
			{Name: "password", Label: "Current password", Type: "password", Complete: "current-password", Problem: in.OldWrong},
			{Name: "new", Label: "New password", Type: "password", Complete: "new-password", Hint: "10 characters or more. Other devices are signed out.", Problem: in.NewWrong},
		},
		Delete: components.Field{Name: "confirm", Label: "Password", Type: "password", Complete: "current-password", Problem: in.DeleteWrong},
	}
	a.Wrong.Settings = components.Summed(a.Settings...)
	a.Far.AddTo(&a.Wrong.Settings)
	a.Green.AddTo(&a.Wrong.Settings)
	a.Zone.AddTo(&a.Wrong.Settings)
	a.Wrong.Password = components.Summed(a.Passwords...).Saying("The password was not changed.")
	a.Wrong.Delete = components.Summed(a.Delete).Saying("The account was not deleted.")
	return a
}
