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
}

// Elsewhere is the part of the account about it.
type Elsewhere struct {
	FeedOn   string // since when the feed has its address; empty while it is off
	FeedMade string // the address, shown once; empty for none
	Email    string // to which mail goes; empty on a site without mail
	Every    components.Radios
}

func newElsewhere(in ElsewhereInput) Elsewhere {
	e := Elsewhere{FeedMade: in.FeedMade}
	if !in.FeedSince.IsZero() {
		e.FeedOn = words.Moment(in.FeedSince)
	}
	if !in.Mail {
		return e
	}
	e.Email, e.Every = in.Email, components.Radios{Name: "every", Label: "How often", All: []components.Choice{
		{Value: "none", Name: "none", Chosen: in.Every == ""}, {Value: "daily", Name: "daily", Chosen: in.Every == "daily"}, {Value: "weekly", Name: "weekly", Chosen: in.Every == "weekly"},
	}}
	return e
}
