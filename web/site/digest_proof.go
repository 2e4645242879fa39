package site

import (
	"strconv"

	"strokeledger/analysis/golf"
	"strokeledger/web/layout"
)

// DigestProofPage is where a link in a letter leads that asks an address to confirm that
// mail about notices may go there.
type DigestProofPage struct {
	layout.Page
	Lede   string
	Email  string // where the mail goes; empty when there is nothing to answer
	Often  string // daily or weekly
	Name   string // of the account
	Player string
	Token  string
}

// DigestProofInput is what the page is made of; the zero value is a link that does not
// work.
type DigestProofInput struct {
	Name    string // of the account
	Email   string
	Daily   bool // or weekly
	Player  golf.PlayerID
	Token   string
	Started bool // the mail was started by it
	Refused bool // the reader did not ask for it
}

// NewDigestProofPage makes the page.
func NewDigestProofPage(page layout.Page, in DigestProofInput) DigestProofPage {
	page.Title = "Mail about notices"
	p := DigestProofPage{Page: page}
	switch {
	case in.Started:
		p.Lede = "Your address is confirmed, and the mail starts with what is new from now on. Each e-mail has a link that ends it."
	case in.Refused:
		p.Lede = "The mail is called off. No e-mail like this goes to your address for the next 90 days."
	case in.Email == "":
		p.Lede = "This link does not work. A link works once and for three days, and a newer e-mail replaces it. You can have another one sent from your account page."
	default:
		p.Lede, p.Email, p.Name, p.Often = "Shall this mail start?", in.Email, in.Name, "weekly"
		if in.Daily {
			p.Often = "daily"
		}
		p.Player, p.Token = strconv.FormatInt(int64(in.Player), 10), in.Token
	}
	return p
}
