package site

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/web/components"
	"strokeledger/web/layout"
)

var (
	kim   = ListedAccount{ID: 1, Name: "Kim", Email: "k@example.org", Since: "1 May 2026", Steward: true}
	robin = ListedAccount{ID: 2, Name: "Robin", Email: "r@example.org", Since: "2 May 2026", ResetUntil: "3 May, 10:00 UTC"}
)

func TestAccountsPage(t *testing.T) {
	page := NewAccountsPage(layout.Page{}, AccountsInput{All: []ListedAccount{kim, robin}})
	want := []AccountRow{
		{Name: "Kim", Email: "k@example.org", Since: "1 May 2026", What: "steward", Reset: "/accounts/1/reset"},
		{Name: "Robin", Email: "r@example.org", Since: "2 May 2026", Reset: "/accounts/2/reset", Open: "3 May, 10:00 UTC", EndReset: "/accounts/2/reset/remove", MakeSteward: "/accounts/2/steward"},
	}
	if diff := cmp.Diff(want, page.Rows); diff != "" {
		t.Error(diff)
	}
	if page.Link != "" || page.For != "" || page.Problem != "" {
		t.Errorf("something happened: %+v", page)
	}
}

// A new password link is shown with the name of the player it is for.
func TestAccountsPageLink(t *testing.T) {
	page := NewAccountsPage(layout.Page{}, AccountsInput{All: []ListedAccount{kim, robin}, For: 2, Link: "https://golf.example/reset"})
	if page.For != "Robin" || page.Link != "https://golf.example/reset" {
		t.Errorf("%q for %q", page.Link, page.For)
	}
}

// A steward can step down as long as there is another.
func TestAccountsPageLeave(t *testing.T) {
	second := robin
	second.Steward = true
	for want, c := range map[string]struct {
		all  []ListedAccount
		html string
	}{
		"":                {[]ListedAccount{kim, robin}, "You are the only steward."},
		"/accounts/leave": {[]ListedAccount{kim, second}, "Step down as steward</button>"},
	} {
		page := NewAccountsPage(layout.Page{}, AccountsInput{All: c.all})
		if page.Leave != want {
			t.Errorf("%q, want %q", page.Leave, want)
		}
		var html strings.Builder
		if err := page.View().Render(t.Context(), &html); err != nil || !strings.Contains(html.String(), c.html) {
			t.Errorf("%v: no %q", err, c.html)
		}
	}
}

func TestAccountsPageInvitations(t *testing.T) {
	open := OpenInvitation{MadeBy: "Kim", Until: "9 May, 10:00 UTC", Token: "t1"}
	page := NewAccountsPage(layout.Page{}, AccountsInput{All: []ListedAccount{kim}, Invitations: []OpenInvitation{open}, Problem: "You are the only steward."})
	if len(page.Invitations) != 1 || page.Invitations[0] != open || page.Problem != "You are the only steward." {
		t.Errorf("%+v", page)
	}
}

func TestResetPage(t *testing.T) {
	page := NewResetPage(layout.Page{}, "2", "secret", "")
	if page.Title != "Set a new password" || page.Player != "2" || page.Token != "secret" || page.Wrong.Heading != "" {
		t.Errorf("%+v", page)
	}
	want := components.Field{Name: "password", Label: "New password", Type: "password", Complete: "new-password", Hint: "10 characters or more. Every device is signed out."}
	if diff := cmp.Diff(want, page.Field); diff != "" {
		t.Error(diff)
	}
	page = NewResetPage(layout.Page{}, "2", "secret", "Too short.")
	if page.Field.Problem != "Too short." || len(page.Wrong.Links) != 1 || page.Wrong.Links[0].Text != "New password: Too short." {
		t.Errorf("%+v, %+v", page.Field, page.Wrong)
	}
}
