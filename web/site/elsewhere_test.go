package site

import (
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"strokeledger/web/components"
	"strokeledger/web/layout"
)

func TestElsewhere(t *testing.T) {
	since := time.Date(2026, 6, 5, 18, 30, 0, 0, time.UTC)
	until := since.AddDate(0, 0, 3)
	const waits = "No mail goes there until you confirm that the address is yours. "
	every := func(chosen int) components.Radios {
		all := []components.Choice{{Value: "none", Name: "none"}, {Value: "daily", Name: "daily"}, {Value: "weekly", Name: "weekly"}}
		all[chosen].Chosen = true
		return components.Radios{Name: "every", Label: "How often", All: all}
	}
	for name, c := range map[string]struct {
		in   ElsewhereInput
		want Elsewhere
	}{
		"nothing":        {ElsewhereInput{}, Elsewhere{}},
		"the feed is on": {ElsewhereInput{FeedSince: since}, Elsewhere{FeedOn: "5 Jun 2026, 18:30 UTC"}},
		"its address":    {ElsewhereInput{FeedSince: since, FeedMade: "https://x"}, Elsewhere{FeedOn: "5 Jun 2026, 18:30 UTC", FeedMade: "https://x"}},
		"no mail chosen": {ElsewhereInput{Mail: true, Email: "r@x.example"}, Elsewhere{Email: "r@x.example", Every: every(0),
			MailNow: "It is off. When you choose it, an e-mail with a link goes there first; the mail starts when you confirm."}},
		"mail each day":  {ElsewhereInput{Mail: true, Email: "r@x.example", Every: "daily", ProvedAt: &since}, Elsewhere{Email: "r@x.example", Every: every(1), MailNow: "It is on. You confirmed the address on 5 Jun 2026, 18:30 UTC."}},
		"mail each week": {ElsewhereInput{Mail: true, Email: "r@x.example", Every: "weekly", ProvedAt: &since}, Elsewhere{Email: "r@x.example", Every: every(2), MailNow: "It is on. You confirmed the address on 5 Jun 2026, 18:30 UTC."}},
		"a letter is owed": {ElsewhereInput{Mail: true, Email: "r@x.example", Every: "daily", MailWrong: "Enough."}, Elsewhere{Email: "r@x.example", Every: every(1), MailWrong: "Enough.", MailAgain: "Send the e-mail now",
			MailNow: waits + "An e-mail with a link for that goes out as soon as the mail server accepts it."}},
		"it waits": {ElsewhereInput{Mail: true, Email: "r@x.example", Every: "daily", AskedAt: &since, AskedUntil: &until, AskedOpen: true}, Elsewhere{Email: "r@x.example", Every: every(1), MailAgain: "Send the e-mail again",
			MailNow: waits + "An e-mail with a link for that was sent on 5 Jun 2026, 18:30 UTC. The link works once, until 8 Jun 2026, 18:30 UTC."}},
		"it expired": {ElsewhereInput{Mail: true, Email: "r@x.example", Every: "daily", AskedAt: &since, AskedUntil: &until}, Elsewhere{Email: "r@x.example", Every: every(1), MailAgain: "Send the e-mail again",
			MailNow: waits + "An e-mail with a link for that was sent on 5 Jun 2026, 18:30 UTC, and its link has expired."}},
		"no mail is sent": {ElsewhereInput{Email: "r@x.example", Every: "weekly"}, Elsewhere{}},
	} {
		if diff := cmp.Diff(c.want, newElsewhere(c.in)); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}

// The page of a link says the same of every link that does not work, and names nobody on
// it.
func TestDigestProof(t *testing.T) {
	for name, c := range map[string]struct {
		in   DigestProofInput
		want DigestProofPage
	}{
		"asked":   {DigestProofInput{Name: "Robin", Email: "r@x.example", Daily: true, Player: 7, Token: "AB"}, DigestProofPage{Lede: "Shall this mail start?", Email: "r@x.example", Often: "daily", Name: "Robin", Player: "7", Token: "AB"}},
		"weekly":  {DigestProofInput{Name: "Robin", Email: "r@x.example", Player: 7, Token: "AB"}, DigestProofPage{Lede: "Shall this mail start?", Email: "r@x.example", Often: "weekly", Name: "Robin", Player: "7", Token: "AB"}},
		"started": {DigestProofInput{Started: true}, DigestProofPage{Lede: "Your address is confirmed, and the mail starts with what is new from now on. Each e-mail has a link that ends it."}},
		"refused": {DigestProofInput{Refused: true}, DigestProofPage{Lede: "The mail is called off. No e-mail like this goes to your address for the next 90 days."}},
		"no link": {DigestProofInput{}, DigestProofPage{Lede: "This link does not work. A link works once and for three days, and a newer e-mail replaces it. You can have another one sent from your account page."}},
	} {
		c.want.Title = "Mail about notices"
		if diff := cmp.Diff(c.want, NewDigestProofPage(layout.Page{}, c.in)); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}
