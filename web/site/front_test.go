package site

import (
	"net/url"
	"slices"
	"strings"
	"testing"

	"strokeledger/web/layout"
)

func TestAProblemThatMayPassOffersToTryAgain(t *testing.T) {
	form := url.Values{"line": {"f150 g20 2"}, "club": {"driver", "wedge"}}
	for _, c := range []struct {
		name, address string
		get           bool
		sent          url.Values
		text, reload  string
		fields        []Sent
	}{
		{"a page", "/rounds?on=1", true, nil, "Busy. Try again in a moment.", "/rounds?on=1", nil},
		{"a form", "/rounds/1", false, form, "Busy. Nothing you typed is lost: try again in a moment.", "", []Sent{{"club", "driver"}, {"club", "wedge"}, {"line", "f150 g20 2"}}},
		{"a password", "/sign-in", false, url.Values{"email": {"a"}, "password": {"b"}}, "Busy. Go back, and try again in a moment.", "", nil},
		{"a new password", "/reset", false, url.Values{"new": {"b"}}, "Busy. Go back, and try again in a moment.", "", nil},
		{"a password that confirms", "/account/delete", false, url.Values{"confirm": {"b"}}, "Busy. Go back, and try again in a moment.", "", nil},
		{"a file", "/import", false, nil, "Busy. Go back, and try again in a moment.", "", nil},
		{"another site's address", "//elsewhere.example", false, form, "Busy. Go back, and try again in a moment.", "", nil},
		{"a page of another site", "//elsewhere.example", true, nil, "Busy. Go back, and try again in a moment.", "", nil},
	} {
		p := NewProblemPage(layout.Page{}, "Not now", "Busy.", "").Again(c.address, c.get, c.sent)
		if p.Text != c.text || p.Reload != c.reload || (p.Resend == nil) != (c.fields == nil) {
			t.Errorf("%s: %+v", c.name, p)
		}
		if p.Resend != nil && (p.Resend.Action != c.address || !slices.Equal(p.Resend.Fields, c.fields)) {
			t.Errorf("%s: %+v", c.name, p.Resend)
		}
	}
	var page strings.Builder
	if err := NewProblemPage(layout.Page{}, "Not now", "Busy.", "").Again("/rounds/1", false, form).View().Render(t.Context(), &page); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`method="post" action="/rounds/1"`, `<input type="hidden" name="line" value="f150 g20 2">`, "Try again</button>"} {
		if !strings.Contains(page.String(), want) {
			t.Errorf("no %s in %s", want, page.String())
		}
	}
}
