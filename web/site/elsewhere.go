package site

import (
	"time"

	"strokeledger/web/words"
)

// ElsewhereInput is how the reader hears of notices outside of the site.
type ElsewhereInput struct {
	FeedSince time.Time // when the feed got its address; zero while it is off
	FeedMade  string    // that address, just made; empty for none
}

// Elsewhere is the part of the account about it.
type Elsewhere struct {
	FeedOn   string // since when the feed has its address; empty while it is off
	FeedMade string // the address, shown once; empty for none
}

func newElsewhere(in ElsewhereInput) Elsewhere {
	e := Elsewhere{FeedMade: in.FeedMade}
	if !in.FeedSince.IsZero() {
		e.FeedOn = words.Moment(in.FeedSince)
	}
	return e
}
