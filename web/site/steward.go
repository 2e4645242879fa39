package site

import (
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// AccountsPage is the steward's list of accounts; it knows no round.
type AccountsPage struct {
	layout.Page
	Problem     string
	Rows        []AccountRow
	Link        string // a link for a new password that was just made
	For         string // whom it is for
	Invitations []OpenInvitation
	Leave       string // address of being a steward no more; empty while there is no other
}

// AccountRow is one account: what it is, and the addresses of what may be done.
type AccountRow struct {
	Name, Email, Since, What string
	Reset                    string
	Open                     string // until when a link for a new password is open; empty for none
	EndReset                 string
	MakeSteward              string // empty for who is one
}

// OpenInvitation is one that was not used yet.
type OpenInvitation struct{ MadeBy, Until, Token string }

// ListedAccount is what a row is made of.
type ListedAccount struct {
	ID          golf.PlayerID
	Name, Email string
	Since       string
	Steward     bool
	ResetUntil  string // of a link for a new password that is open; empty for none
}

// AccountsInput is what the page of accounts shows.
type AccountsInput struct {
	All         []ListedAccount
	Invitations []OpenInvitation
	Link        string        // that was just made
	For         golf.PlayerID // whom it is for
	Problem     string
}

// NewAccountsPage makes the page.
func NewAccountsPage(page layout.Page, q AccountsInput) AccountsPage {
	page.Title = "Accounts"
	a := AccountsPage{Page: page, Link: q.Link, Invitations: q.Invitations, Problem: q.Problem}
	stewards := 0
	for _, l := range q.All {
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
		if l.ID == q.For {
			a.For = l.Name
		}
		a.Rows = append(a.Rows, row)
	}
	if stewards > 1 {
		a.Leave = paths.LeaveOffice
	}
	return a
}

// ResetPage is where a player sets a new password by a link.
type ResetPage struct {
	layout.Page
	Player, Token string
	Field         components.Field
	Wrong         components.Summary
}

// NewResetPage makes the page.
func NewResetPage(page layout.Page, player, token, problem string) ResetPage {
	page.Title = "A new password"
	field := components.Field{Name: "password", Label: "New password", Type: "password", Complete: "new-password",
		Hint: "10 characters or more. Every device is signed out.", Problem: problem}
	return ResetPage{page, player, token, field, components.Summed(field)}
}
