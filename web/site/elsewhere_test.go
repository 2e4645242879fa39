package site

import (
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"strokeledger/web/components"
)

func TestElsewhere(t *testing.T) {
	since := time.Date(2026, 6, 5, 18, 30, 0, 0, time.UTC)
	every := func(chosen int) components.Radios {
		all := []components.Choice{{Value: "none", Name: "none"}, {Value: "daily", Name: "daily"}, {Value: "weekly", Name: "weekly"}}
		all[chosen].Chosen = true
		return components.Radios{Name: "every", Label: "How often", All: all}
	}
	for name, c := range map[string]struct {
		in   ElsewhereInput
		want Elsewhere
	}{
		"nothing":         {ElsewhereInput{}, Elsewhere{}},
		"the feed is on":  {ElsewhereInput{FeedSince: since}, Elsewhere{FeedOn: "5 Jun 2026, 18:30 UTC"}},
		"its address":     {ElsewhereInput{FeedSince: since, FeedMade: "https://x"}, Elsewhere{FeedOn: "5 Jun 2026, 18:30 UTC", FeedMade: "https://x"}},
		"no mail chosen":  {ElsewhereInput{Mail: true, Email: "r@x.example"}, Elsewhere{Email: "r@x.example", Every: every(0)}},
		"mail each day":   {ElsewhereInput{Mail: true, Email: "r@x.example", Every: "daily"}, Elsewhere{Email: "r@x.example", Every: every(1)}},
		"mail each week":  {ElsewhereInput{Mail: true, Email: "r@x.example", Every: "weekly"}, Elsewhere{Email: "r@x.example", Every: every(2)}},
		"no mail is sent": {ElsewhereInput{Email: "r@x.example", Every: "weekly"}, Elsewhere{}},
	} {
		if diff := cmp.Diff(c.want, newElsewhere(c.in)); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}
