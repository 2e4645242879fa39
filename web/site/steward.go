package site

import (
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// AccountsPage is the steward's list of accounts. It shows no rounds.
type AccountsPage struct {
	layout.Page
	Problem     string           // why the last change failed; empty if it did not
	Rows        []AccountRow     // by name, the steward's own included
	Link        string           // password link that was just made; empty for none
	For         string           // name of the player it is for; empty for none
	Invitations []OpenInvitation // not used yet; may be empty
	Leave       string           // address that steps down as steward; empty for the only one
}

// AccountRow is one account, with the addresses of what the steward can do.
type AccountRow struct {
	Name        string
	Email       string
	Since       string // day it was created: “2 May 2026”
	What        string // “steward”; empty for others
	Reset       string // address that makes a password link
	Open        string // until when a password link works: “3 May, 10:00 UTC”; empty for none
	EndReset    string // address that revokes the link; empty without one
	MakeSteward string // address that makes the account a steward; empty for one
}

// OpenInvitation is an invitation that was not used yet.
type OpenInvitation struct {
	MadeBy string // name of the steward who made it
	Until  string // when it stops working: “9 May, 10:00 UTC”
	Token  string // identifies it in the form that revokes it
}

// ListedAccount is what a row is made of.
type ListedAccount struct {
	ID         golf.PlayerID
	Name       string
	Email      string
	Since      string // day it was created: “2 May 2026”
	Steward    bool
	ResetUntil string // until when a password link works; empty for none
}

// AccountsInput is what the page of accounts is made of.
type AccountsInput struct {
	All         []ListedAccount // by name
	Invitations []OpenInvitation
	Link        string        // password link that was just made; empty for none
	For         golf.PlayerID // player the link is for; 0 for none
	Problem     string        // why the last change failed; empty if it did not
}

// NewAccountsPage makes the page.
func NewAccountsPage(page layout.Page, in AccountsInput) AccountsPage {
	page.Title = "Accounts"
	a := AccountsPage{Page: page, Link: in.Link, Invitations: in.Invitations, Problem: in.Problem}
	stewards := 0
	for _, l := range in.All {
		row := AccountRow{Name: l.Name, Email: l.Email, Since: l.Since, Reset: paths.ResetOf(l.ID), Open: l.ResetUntil}
		if l.ResetUntil != "" {
			row.EndReset = paths.EndResetOf(l.ID)
		}
		if l.Steward {
			row.What = "steward"
			stewards++
		} else {
			row.MakeSteward = paths.StewardOf(l.ID)
		}
		if l.ID == in.For {
			a.For = l.Name
		}
		a.Rows = append(a.Rows, row)
	}
	if stewards > 1 {
		a.Leave = paths.LeaveOffice
	}
	return a
}

// ResetPage is where a player follows a password link to set a new password.
type ResetPage struct {
	layout.Page
	Player string             // the account's number, from the link
	Token  string             // the secret of the link
	Field  components.Field   // the new password, never filled in
	Wrong  components.Summary // what is wrong with it
}

// NewResetPage makes the page. problem is what was wrong with the last password,
// empty for nothing.
func NewResetPage(page layout.Page, player, token, problem string) ResetPage {
	page.Title = "Set a new password"
	field := components.Field{Name: "password", Label: "New password", Type: "password", Complete: "new-password",
		Hint: "10 characters or more. Every device is signed out.", Problem: problem}
	return ResetPage{page, player, token, field, components.Summed(field)}
}
