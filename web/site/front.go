package site

import (
	"maps"
	"net/url"
	"slices"
	"strings"

	"strokeledger/web/components"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// FrontPage shows a visitor what Strokeledger is, and signs players in.
type FrontPage struct {
	layout.Page
	Email    components.Field
	Password components.Field   // never filled in
	Wrong    components.Summary // why signing in failed
	Join     string             // address where an account is created; empty if the visitor cannot
	JoinName string             // the step itself: “Create an account”
	JoinText string             // how: “with an invitation from your club or coach.”
	Account  FrontAccount       // of an invented round
}

// NewFrontPage makes the page. email is what was typed, problem why signing in
// failed, both empty on a first visit.
func NewFrontPage(page layout.Page, email, problem string, door Door) FrontPage {
	page.Title = "Where your strokes go"
	f := FrontPage{Page: page, Account: frontAccount(),
		Email:    components.Field{Name: "email", Label: "E-mail", Type: "email", Value: email, Complete: "username", Problem: problem},
		Password: components.Field{Name: "password", Label: "Password", Type: "password", Complete: "current-password"}}
	f.Wrong = components.Summed(f.Email).Saying("You are not signed in.")
	switch door {
	case DoorFirst:
		f.Join, f.JoinName, f.JoinText = paths.Join, "Create an account", "with the setup token that the server printed when it started."
	case DoorOpen:
		f.Join, f.JoinName, f.JoinText = paths.Join, "Create an account", "with your name, an e-mail address and a password."
	case DoorInvited:
		f.JoinName, f.JoinText = "Create an account", "with an invitation from your club or coach."
	default:
		f.JoinName, f.JoinText = "Accounts are closed", "on this server: no new ones can be created."
	}
	return f
}

// Door says who can create an account.
type Door uint8

// The doors of a server.
const (
	DoorClosed  Door = iota + 1 // nobody
	DoorInvited                 // anyone with an invitation
	DoorOpen                    // anyone
	DoorFirst                   // while there are no accounts, anyone with the setup token
)

// JoinPage is where an account is created.
type JoinPage struct {
	layout.Page
	Lede     string             // what a steward sees, or that this account is the steward's
	Token    string             // of the invitation or the setup token; empty for none
	AskToken components.Field   // asks for the setup token of a new server; zero otherwise
	First    bool               // there are no accounts yet
	Fields   []components.Field // name, e-mail and password
	Wrong    components.Summary // what is wrong with the fields
}

// NewJoinPage makes the page. in is what was typed, or the token of the link.
func NewJoinPage(page layout.Page, in form.Join, door Door) JoinPage {
	page.Title = "Create an account"
	j := JoinPage{Page: page, Token: in.Token, First: door == DoorFirst, Lede: "Your rounds are private: the steward of this server sees accounts, never rounds."}
	if j.First {
		j.Lede = "The first account on a new server is its steward's."
		j.AskToken = components.Field{Name: "token", Label: "Setup token", Value: in.Token, Hint: "The server printed it when it started.", Problem: in.TokenWrong}
	}
	j.Fields = []components.Field{
		components.Filled(components.Field{Name: "name", Label: "Name", Complete: "name"}, in.Name),
		components.Filled(components.Field{Name: "email", Label: "E-mail", Type: "email", Complete: "username", Hint: "For signing in. Nothing is sent to it."}, in.Email),
		components.Filled(components.Field{Name: "password", Label: "Password", Type: "password", Complete: "new-password", Hint: "10 characters or more."}, in.Password),
	}
	j.Wrong = components.Summed(append([]components.Field{j.AskToken}, j.Fields...)...).Saying("The account was not created.")
	return j
}

// ProblemPage says what went wrong and what to do.
type ProblemPage struct {
	layout.Page
	Heading string  // what went wrong, in a few words
	Text    string  // why, and what to do
	Request string  // id of the request in the log; empty where the log says nothing of it
	Reload  string  // address of the page to try again; empty for none
	Resend  *Resend // form to try again; nil for none
}

// Resend is a form that can be sent once more, since it failed for no fault of
// its own.
type Resend struct {
	Action string // address that takes it
	Fields []Sent // by name
}

// Sent is a field as it was sent.
type Sent struct{ Name, Value string }

// NewProblemPage makes the page.
func NewProblemPage(page layout.Page, heading, text, request string) ProblemPage {
	page.Title = heading
	return ProblemPage{Page: page, Heading: heading, Text: text, Request: request}
}

// Again offers to try again in a moment: a link to the page at an address, or a
// button that sends the same form. A form with a password is never written into
// a page, so for that the reader goes back.
func (p ProblemPage) Again(address string, get bool, sent url.Values) ProblemPage {
	secret := sent.Has("password") || sent.Has("new") || sent.Has("confirm")
	switch ours := strings.HasPrefix(address, "/") && !strings.HasPrefix(address, "//"); {
	case get && ours:
		p.Reload = address
		p.Text += " Try again in a moment."
	case len(sent) > 0 && !secret && ours:
		p.Resend = &Resend{Action: address}
		for _, name := range slices.Sorted(maps.Keys(sent)) {
			for _, value := range sent[name] {
				p.Resend.Fields = append(p.Resend.Fields, Sent{name, value})
			}
		}
		p.Text += " Nothing you typed is lost. Try again in a moment."
	default:
		p.Text += " Go back and try again in a moment."
	}
	return p
}
