package site

import (
	"fmt"
	"math"
	"net/url"
	"slices"
	"strconv"
	"strings"
	"testing"

	"strokeledger/web/layout"
)

// The first page says how a visitor gets an account here, if at all.
func TestFrontPage(t *testing.T) {
	for door, want := range map[Door][3]string{
		DoorClosed:  {"", "Accounts are closed", "on this server: no new ones can be created."},
		DoorInvited: {"", "Create an account", "with an invitation from your club or coach."},
		DoorOpen:    {"/join", "Create an account", "with your name, an e-mail address and a password."},
		DoorFirst:   {"/join", "Create an account", "with the setup token that the server printed when it started."},
	} {
		page := NewFrontPage(layout.Page{}, "", "", door)
		if got := [3]string{page.Join, page.JoinName, page.JoinText}; got != want {
			t.Errorf("%d: %q, want %q", door, got, want)
		}
		if page.Wrong.Heading != "" || page.Email.Value != "" {
			t.Errorf("%d: a problem on the first visit: %+v", door, page.Wrong)
		}
	}
}

// A failed sign-in keeps the address and never the password.
func TestFrontPageAfterAFailedSignIn(t *testing.T) {
	page := NewFrontPage(layout.Page{}, "robin@example.org", "That address and password do not go together.", DoorOpen)
	if page.Email.Value != "robin@example.org" || page.Password.Value != "" {
		t.Errorf("%+v, %+v", page.Email, page.Password)
	}
	if page.Wrong.Heading != "You are not signed in." || len(page.Wrong.Links) != 1 || page.Wrong.Links[0].Text != "E-mail: That address and password do not go together." {
		t.Errorf("%+v", page.Wrong)
	}
}

// The account is that of a round of 86 against 79, and what it prints adds up:
// lines to the seven, the balance from line to line, bands to their line, and the
// working of a shot to what it lost.
func TestFrontAccount(t *testing.T) {
	a := NewFrontPage(layout.Page{}, "", "", DoorOpen).Account
	if a.Sentence != "You shot 86. Your target is 79. Here is where the seven went." || a.Target != "79.0" || a.Lost != "+7.0" || a.Score != "86" {
		t.Errorf("%+v", a)
	}
	balance, open := number(t, a.Target), 0
	for _, l := range a.Lines {
		balance += number(t, l.Amount)
		if math.Abs(balance-number(t, l.Balance)) > 1e-6 {
			t.Errorf("%s: balance %s, want %.1f", l.Name, l.Balance, balance)
		}
		sum := 0.0
		for _, b := range l.Bands {
			sum += number(t, b.Amount)
			var play, left, lost float64
			if b.Working != "" {
				open++
				_, working, _ := strings.Cut(b.Working, ": ")
				if _, err := fmt.Sscanf(working, "%f to play, 1 played, %f left: %f lost", &play, &left, &lost); err != nil || math.Abs(left+1-play-lost) > 1e-6 {
					t.Errorf("%q: %v", b.Working, err)
				}
			}
		}
		if len(l.Bands) > 0 && math.Abs(sum-number(t, l.Amount)) > 1e-6 {
			t.Errorf("%s: bands make %.1f, line %s", l.Name, sum, l.Amount)
		}
	}
	if len(a.Lines) != 4 || open != 1 || math.Abs(balance-number(t, a.Score)) > 1e-6 {
		t.Errorf("%d lines, %d workings, %.1f at the end", len(a.Lines), open, balance)
	}
	if a.Doubles != "Two doubles. One began here," || !strings.HasPrefix(a.Began, "off the tee on hole 6: it lost 0.") {
		t.Errorf("%q %q", a.Doubles, a.Began)
	}
}

// The account is worked out once for all visitors.
func TestFrontPageCostsLittle(t *testing.T) {
	NewFrontPage(layout.Page{}, "", "", DoorOpen)
	if n := testing.AllocsPerRun(50, func() { NewFrontPage(layout.Page{}, "", "", DoorOpen) }); n > 60 {
		t.Errorf("%.0f allocations a page", n)
	}
}

// number reads a printed amount.
func number(t *testing.T, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(strings.NewReplacer("−", "-", "+", "").Replace(text), 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// An error page without anything to try again leads to the start page.
func TestProblemPage(t *testing.T) {
	page := NewProblemPage(layout.Page{}, "Not found", "There is no such page.", "a1b2")
	if page.Title != "Not found" || page.Reload != "" || page.Resend != nil {
		t.Errorf("%+v", page)
	}
	var html strings.Builder
	if err := page.View().Render(t.Context(), &html); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"<h1>Not found</h1>", "There is no such page.", "Request a1b2 in the server&#39;s log", "Go to the start page</a>"} {
		if !strings.Contains(html.String(), want) && !strings.Contains(html.String(), strings.ReplaceAll(want, "&#39;", "'")) {
			t.Errorf("no %s", want)
		}
	}
	if strings.Contains(html.String(), "Try again") {
		t.Error("offers to try again")
	}
}

// A problem that may pass offers the same page or form again, but never one with
// a password, a file, or another site's address.
func TestProblemPageAgain(t *testing.T) {
	form := url.Values{"line": {"f150 g20 2"}, "club": {"driver", "wedge"}}
	for _, c := range []struct {
		name, address string
		get           bool
		sent          url.Values
		text, reload  string
		fields        []Sent
	}{
		{"a page", "/rounds?on=1", true, nil, "Busy. Try again in a moment.", "/rounds?on=1", nil},
		{"a form", "/rounds/1", false, form, "Busy. Nothing you typed is lost. Try again in a moment.", "", []Sent{{"club", "driver"}, {"club", "wedge"}, {"line", "f150 g20 2"}}},
		{"a password", "/sign-in", false, url.Values{"email": {"a"}, "password": {"b"}}, "Busy. Go back and try again in a moment.", "", nil},
		{"a new password", "/reset", false, url.Values{"new": {"b"}}, "Busy. Go back and try again in a moment.", "", nil},
		{"a password that confirms", "/account/delete", false, url.Values{"confirm": {"b"}}, "Busy. Go back and try again in a moment.", "", nil},
		{"a file", "/import", false, nil, "Busy. Go back and try again in a moment.", "", nil},
		{"another site's address", "//elsewhere.example", false, form, "Busy. Go back and try again in a moment.", "", nil},
		{"a page of another site", "//elsewhere.example", true, nil, "Busy. Go back and try again in a moment.", "", nil},
	} {
		p := NewProblemPage(layout.Page{}, "Temporarily unavailable", "Busy.", "").Again(c.address, c.get, c.sent)
		if p.Text != c.text || p.Reload != c.reload || (p.Resend == nil) != (c.fields == nil) {
			t.Errorf("%s: %+v", c.name, p)
		}
		if p.Resend != nil && (p.Resend.Action != c.address || !slices.Equal(p.Resend.Fields, c.fields)) {
			t.Errorf("%s: %+v", c.name, p.Resend)
		}
	}
	var page strings.Builder
	if err := NewProblemPage(layout.Page{}, "Temporarily unavailable", "Busy.", "").Again("/rounds/1", false, form).View().Render(t.Context(), &page); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`method="post" action="/rounds/1"`, `<input type="hidden" name="line" value="f150 g20 2">`, "Try again</button>"} {
		if !strings.Contains(page.String(), want) {
			t.Errorf("no %s in %s", want, page.String())
		}
	}
}
