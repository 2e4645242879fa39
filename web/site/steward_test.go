package site

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"strokeledger/web/layout"
)

func TestThePageOfAccounts(t *testing.T) {
	steward, player := ListedAccount{ID: 1, Name: "Kim", Steward: true}, ListedAccount{ID: 2, Name: "Robin", Email: "r@example.org", Since: "2 May 2026", ResetUntil: "3 May, 10:00 UTC"}
	a := NewAccountsPage(layout.Page{}, AccountsInput{All: []ListedAccount{steward, player}, For: 2, Link: "https://x"})
	want := []AccountRow{
		{Name: "Kim", What: "steward", Reset: "/accounts/1/reset"},
		{Name: "Robin", Email: "r@example.org", Since: "2 May 2026", Reset: "/accounts/2/reset", Open: "3 May, 10:00 UTC", EndReset: "/accounts/2/reset/remove", MakeSteward: "/accounts/2/steward"},
	}
	if diff := cmp.Diff(want, a.Rows); diff != "" {
		t.Error(diff)
	}
	if a.For != "Robin" || a.Leave != "" {
		t.Errorf("%q, %q", a.For, a.Leave)
	}
	player.Steward = true
	if a := NewAccountsPage(layout.Page{}, AccountsInput{All: []ListedAccount{steward, player}}); a.Leave != "/accounts/leave" || a.For != "" {
		t.Errorf("%q, %q", a.Leave, a.For)
	}
}
