package pages

import (
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// Accounts is the steward's list of accounts; it knows no round.
type Accounts struct {
	layout.Page
	Rows []AccountRow
	Link string // a link for a new password that was just made
	For  string // whom it is for
}

// AccountRow is one account.
type AccountRow struct{ Name, Email, Since, Reset, What string }

// ListedAccount is what a row is made of.
type ListedAccount struct {
	ID          golf.PlayerID
	Name, Email string
	Since       string
	Steward     bool
}

// NewAccounts makes the page.
func NewAccounts(page layout.Page, all []ListedAccount, link, name string) Accounts {
	page.Title = "Accounts"
	a := Accounts{Page: page, Link: link, For: name}
	for _, l := range all {
		row := AccountRow{Name: l.Name, Email: l.Email, Since: l.Since, Reset: paths.ResetOf(l.ID)}
		if l.Steward {
			row.What = "steward"
		}
		a.Rows = append(a.Rows, row)
	}
	return a
}

// Reset is where a player sets a new password by a link.
type Reset struct {
	layout.Page
	Player, Token string
	Field         components.Field
	Wrong         components.Summary
}

// NewReset makes the page.
func NewReset(page layout.Page, player, token, problem string) Reset {
	page.Title = "A new password"
	field := components.Field{Name: "password", Label: "New password", Type: "password", Complete: "new-password",
		Hint: "10 letters or more. Every device is signed out.", Problem: problem}
	return Reset{page, player, token, field, components.Summed(field)}
}
