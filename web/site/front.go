package site

import (
	"maps"
	"net/url"
	"slices"
	"strings"

	"strokeledger/analysis"
	"strokeledger/analysis/golf"
	"strokeledger/web/components"
	"strokeledger/web/figures"
	"strokeledger/web/form"
	"strokeledger/web/layout"
	"strokeledger/web/paths"
)

// FrontPage is what a visitor sees who is not signed in: what this is, and the way
// in.
type FrontPage struct {
	layout.Page
	Email    components.Field
	Password components.Field
	Wrong    components.Summary
	Join     string // address of joining, empty when it is closed
	JoinText string
	Example  figures.DoubleStory
}

// example is an invented hole: trees off the tee, a try through the gap, a six.
func example() figures.DoubleStory {
	hole := golf.Hole{Number: 6, Par: 4, Shots: []golf.Shot{
		{Lie: golf.Tee, Distance: 417 * golf.Yard, Club: "driver", Miss: golf.Miss{Side: golf.Right}},
		{Lie: golf.Recovery, Distance: 215 * golf.Yard, Club: "5-iron", Miss: golf.Miss{Depth: golf.Short}},
		{Lie: golf.Recovery, Distance: 195 * golf.Yard, Club: "7-iron"},
		{Lie: golf.Fairway, Distance: 120 * golf.Yard, Club: "9-iron"},
		{Lie: golf.Green, Distance: 30 * golf.Foot},
		{Lie: golf.Green, Distance: 3 * golf.Foot},
	}}
	analyst, err := analysis.NewAnalyst(analysis.Level(analysis.StandardTarget), golf.StandardBoundary)
	if err != nil {
		panic("pages: the standard target is not a level: " + err.Error())
	}
	round := golf.Round{Holes: []golf.Hole{hole}}
	a := analyst.Report(round, 0).Account
	return figures.NewDoubleStory(figures.StoryInput{Round: round, Account: a, Target: analysis.StandardTarget, Units: form.StandardUnits}, a.Doubles[0])
}

// NewFrontPage makes the page. email is what was typed, problem what was wrong.
func NewFrontPage(page layout.Page, email, problem string, door Door) FrontPage {
	page.Title = "What your strokes were lost to"
	f := FrontPage{Page: page, Example: example(),
		Email:    components.Field{Name: "email", Label: "E-mail", Type: "email", Value: email, Complete: "username", Problem: problem},
		Password: components.Field{Name: "password", Label: "Password", Type: "password", Complete: "current-password"}}
	f.Wrong = components.Summed(f.Email).Saying("Not signed in.")
	switch door {
	case DoorFirst:
		f.Join, f.JoinText = paths.Join, "with the setup token that the server printed when it started."
	case DoorOpen:
		f.Join, f.JoinText = paths.Join, "with your name, an address and a password."
	case DoorInvited:
		f.JoinText = "by the invitation that your club or coach gives you."
	default:
		f.JoinText = "is closed on this server."
	}
	return f
}

// Door is who may make an account.
type Door uint8

// The doors of a server.
const (
	DoorClosed  Door = iota + 1
	DoorInvited      // by an invitation
	DoorOpen         // anybody
	DoorFirst        // whoever has the setup token, while there is no account
)

// JoinPage is where an account is made.
type JoinPage struct {
	layout.Page
	Lede     string
	Token    string
	AskToken components.Field // on an empty server
	First    bool
	Fields   []components.Field
	Wrong    components.Summary
}

// JoinInput is what was typed, and what was wrong by field.
type JoinInput struct {
	Token, Name, Email string
	Problems           map[string]string
}

// NewJoinPage makes the page.
func NewJoinPage(page layout.Page, f JoinInput, door Door) JoinPage {
	page.Title = "Make an account"
	j := JoinPage{Page: page, Token: f.Token, First: door == DoorFirst, Lede: "Make an account. Your rounds are yours: the steward of this server sees accounts, never rounds."}
	if j.First {
		j.Lede = "The first account of a new server is its steward's."
		j.AskToken = components.Field{Name: "token", Label: "Setup token", Value: f.Token, Hint: "The server printed it when it started.", Problem: f.Problems["token"]}
	}
	j.Fields = []components.Field{
		{Name: "name", Label: "Name", Value: f.Name, Complete: "name", Problem: f.Problems["name"]},
		{Name: "email", Label: "E-mail", Type: "email", Value: f.Email, Complete: "username", Hint: "To sign in with; nothing is sent to it.", Problem: f.Problems["email"]},
		{Name: "password", Label: "Password", Type: "password", Complete: "new-password", Hint: "10 characters or more.", Problem: f.Problems["password"]},
	}
	j.Wrong = components.Summed(append([]components.Field{j.AskToken}, j.Fields...)...).Saying("The account is not made yet.")
	return j
}

// ProblemPage is a page that says what went wrong and what to do.
type ProblemPage struct {
	layout.Page
	Heading string
	Text    string
	Request string  // id of the request, for the log; empty when of no use
	Reload  string  // address of the page that may come if it is asked for again; empty for none
	Resend  *Resend // the form that may be sent again; nil for none
}

// Resend is a form that failed for no fault of its own and may be sent again.
type Resend struct {
	Action string
	Fields []Sent
}

// Sent is a field of a form as it was sent.
type Sent struct{ Name, Value string }

// NewProblemPage makes the page.
func NewProblemPage(page layout.Page, heading, text, request string) ProblemPage {
	page.Title = heading
	return ProblemPage{Page: page, Heading: heading, Text: text, Request: request}
}

// Again says that the same may work in a moment, and offers it: the page of an
// address, or the form that was sent to it. A form with a password is not
// repeated in a page.
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
		p.Text += " Nothing you typed is lost: try again in a moment."
	default:
		p.Text += " Go back, and try again in a moment."
	}
	return p
}
