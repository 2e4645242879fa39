package site

import (
	"time"

	"strokeledger/web/components"
	"strokeledger/web/words"
)

// ElsewhereInput is how the reader hears of notices outside of the site.
type ElsewhereInput struct {
	FeedSince time.Time // when the feed got its address; zero while it is off
	FeedMade  string    // that address, just made; empty for none
	Mail      bool      // the site sends mail
	Email     string    // of the reader
	Every     string    // how often the reader gets mail: daily, weekly, or empty for never

	ProvedAt   *time.Time // when the address was confirmed; nil before that
	AskedAt    *time.Time // when a letter that asks to confirm it went there; nil when one is owed
	AskedUntil *time.Time // how long the link in it works
	AskedOpen  bool       // it still does
	MailWrong  string     // why no letter was sent; empty for nothing
}

// Elsewhere is the part of the account about it.
type Elsewhere struct {
	FeedOn   string // since when the feed has its address; empty while it is off
	FeedMade string // the address, shown once; empty for none
	Email    string // to which mail goes; empty on a site without mail
	Every    components.Radios

	MailNow   string // whether mail goes out
	MailAgain string // on the button that has a letter sent; empty for none
	MailWrong string // why none was sent; empty for nothing
}

func newElsewhere(in ElsewhereInput) Elsewhere {
	e := Elsewhere{FeedMade: in.FeedMade}
	if !in.FeedSince.IsZero() {
		e.FeedOn = words.Moment(in.FeedSince)
	}
	if !in.Mail {
		return e
	}
	e.Email, e.MailWrong, e.Every = in.Email, in.MailWrong, components.Radios{Name: "every", Label: "How often", All: []components.Choice{
		{Value: "none", Name: "none", Chosen: in.Every == ""}, {Value: "daily", Name: "daily", Chosen: in.Every == "daily"}, {Value: "weekly", Name: "weekly", Chosen: in.Every == "weekly"},
	}}
	e.MailNow, e.MailAgain = in.mailNow()
	return e
}

// mailNow says whether mail goes out, and what the button says with which the reader has
// another letter sent that asks to confirm the address.
func (in ElsewhereInput) mailNow() (now, again string) {
	const waits = "No mail goes there until you confirm that the address is yours. "
	switch {
	case in.Every == "":
		return "It is off. When you choose it, an e-mail with a link goes there first; the mail starts when you confirm.", ""
	case in.ProvedAt != nil:
		return "It is on. You confirmed the address on " + words.Moment(*in.ProvedAt) + ".", ""
	case in.AskedAt == nil || in.AskedUntil == nil:
		return waits + "An e-mail with a link for that goes out as soon as the mail server accepts it.", "Send the e-mail now"
	case in.AskedOpen:
		return waits + "An e-mail with a link for that was sent on " + words.Moment(*in.AskedAt) + ". The link works once, until " + words.Moment(*in.AskedUntil) + ".", "Send the e-mail again"
	default:
		return waits + "An e-mail with a link for that was sent on " + words.Moment(*in.AskedAt) + ", and its link has expired.", "Send the e-mail again"
	}
}
