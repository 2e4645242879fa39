package handlers

import (
	"fmt"
	"net/http"
	"regexp"
	"strings"
	"testing"
)

// A server with accounts keeps a steward: the last one makes another first.
func TestTheLastStewardStays(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	steward, other := s.steward(), s.member("other")
	for path, want := range map[string]string{"/account/delete": "You are the only steward. Make another account a steward first, on the accounts page.", "/accounts/leave": "You are the only steward. Make another account a steward first."} {
		if a := steward.post(path, "confirm", password); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, want) {
			t.Errorf("%s: %d", path, a.status)
		}
	}
	if a := steward.get("/accounts"); a.status != http.StatusOK || strings.Contains(a.body, "Step down as steward</button>") || !strings.Contains(a.body, "You are the only steward.") {
		t.Errorf("%d %s", a.status, a.body)
	}
	if a := other.post("/accounts/2/steward"); a.status != http.StatusNotFound {
		t.Errorf("a player made itself a steward: %d", a.status)
	}
	a := steward.post("/accounts/2/steward")
	if a.status != http.StatusSeeOther || !strings.Contains(steward.get(a.location).body, "That account is now a steward.") {
		t.Errorf("%d %s", a.status, a.location)
	}
	if a := other.get("/accounts"); a.status != http.StatusOK || !strings.Contains(a.body, "Step down as steward</button>") {
		t.Errorf("%d", a.status)
	}
	a = steward.post("/accounts/leave")
	if a.status != http.StatusSeeOther || !strings.Contains(steward.get(a.location).body, "You are no longer a steward.") {
		t.Errorf("%d %s", a.status, a.location)
	}
	if a := steward.get("/accounts"); a.status != http.StatusNotFound {
		t.Errorf("still a steward: %d", a.status)
	}
	for _, v := range []visitor{steward, other} { // the last steward goes when nobody is left
		if a := v.post("/account/delete", "confirm", password); a.status != http.StatusSeeOther {
			t.Errorf("%d %s", a.status, a.body)
		}
	}
}

func TestStewardsTakeBackWhatTheyHandedOut(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpInvitation})
	steward := s.steward()
	s.member("other")
	link := func(a answer, param string) string {
		found := regexp.MustCompile(param + `=([A-Z2-7]{26})`).FindStringSubmatch(a.body)
		if found == nil {
			t.Fatalf("%d %s", a.status, a.body)
		}
		return found[1]
	}
	invitation, reset := link(steward.post("/account/invite"), "token"), link(steward.post("/accounts/2/reset"), "token")
	a := steward.get("/accounts")
	if !strings.Contains(a.body, "A link is open until") {
		t.Error(a.body)
	}
	open := regexp.MustCompile(`name="invitation" value="([0-9a-f]{64})"`).FindStringSubmatch(a.body)
	if open == nil {
		t.Fatal(a.body)
	}
	for _, a := range []answer{steward.post("/accounts/invitations/remove", "invitation", open[1]), steward.post("/accounts/2/reset/remove")} {
		if a.status != http.StatusSeeOther || !strings.Contains(steward.get(a.location).body, "revoked.") {
			t.Errorf("%d %s", a.status, a.location)
		}
	}
	for _, bad := range []string{open[1], "", "xy"} {
		if a := steward.post("/accounts/invitations/remove", "invitation", bad); a.status != http.StatusNotFound {
			t.Errorf("%q again: %d", bad, a.status)
		}
	}
	if a := steward.get("/accounts"); strings.Contains(a.body, "A link is open until") || strings.Contains(a.body, "Open invitations") {
		t.Error(a.body)
	}
	if a := s.visitor().post("/join", "name", "Kim", "email", "kim@example.org", "password", password, "token", invitation); a.status != http.StatusNotFound {
		t.Errorf("joined by it: %d", a.status)
	}
	if a := s.visitor().post("/reset", "player", "2", "token", reset, "password", "seven irons in march"); a.status != http.StatusNotFound {
		t.Errorf("reset by it: %d", a.status)
	}
}

// A link for a new password works whatever strangers did, and so does signing in
// after it; every other device is signed out.
func TestAResetPassesWhateverStrangersDo(t *testing.T) {
	s := attacked(t)
	steward, owner := s.steward(), s.member("robin")
	a := steward.post("/accounts/2/reset")
	found := regexp.MustCompile(`token=([A-Z2-7]{26})`).FindStringSubmatch(a.body)
	if found == nil {
		t.Fatalf("%d %s", a.status, a.body)
	}
	fresh := s.from("192.0.2.1")
	attack := func() {
		strangers := []visitor{}
		for range 15 {
			strangers = append(strangers, s.from("192.0.2.1"))
		}
		if got := tries("robin@example.org", wrong, strangers...); got[http.StatusTooManyRequests] == 0 {
			t.Errorf("%v", got)
		}
	}
	attack()
	for _, weak := range []string{"short", "password2026", "robin@example.org"} {
		if a := fresh.post("/reset", "player", "2", "token", found[1], "password", weak); a.status != http.StatusUnprocessableEntity {
			t.Errorf("%s: %d", weak, a.status)
		}
	}
	if a := fresh.post("/reset", "player", "2", "token", found[1], "password", "seven irons in march"); a.status != http.StatusSeeOther {
		t.Fatalf("%d %s", a.status, a.body)
	}
	fresh.from = "192.0.2.2" // of the same network, and not yet refused for tries of the minute
	attack()
	if a := fresh.post("/sign-in", "email", "robin@example.org", "password", "seven irons in march"); a.status != http.StatusSeeOther {
		t.Errorf("%d %s", a.status, a.body)
	}
	if a := owner.get("/account"); a.status != http.StatusSeeOther {
		t.Errorf("another device is still signed in: %d", a.status)
	}
}

func TestChangingThePassword(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v, other := s.member("robin"), s.visitor()
	if a := other.post("/sign-in", "email", "robin@example.org", "password", password); a.status != http.StatusSeeOther {
		t.Fatal(a.status)
	}
	for fresh, want := range map[string]string{password: "This is your current password.", "password2026": "Too many people use", "robin12345!": "It is made of your name", "qwertyuiop": "It follows the keys", "aaaaaaaaaa": "It repeats", "short": "Too short"} {
		if a := v.post("/account/password", "password", password, "new", fresh); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, want) {
			t.Errorf("%s: %d", fresh, a.status)
		}
	}
	if a := v.post("/account/password", "password", "wrong", "new", "seven irons in march"); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, "This is not the password of your account.") {
		t.Errorf("%d", a.status)
	}
	if a := v.post("/account/password", "password", password, "new", "seven irons in march"); a.status != http.StatusSeeOther {
		t.Errorf("%d", a.status)
	}
	if a := other.get("/account"); a.status != http.StatusSeeOther {
		t.Errorf("the other device: %d", a.status)
	}
	if a := v.get("/account"); a.status != http.StatusOK {
		t.Errorf("this device: %d", a.status)
	}
}

// With open sign-up a stranger reads no more than needed of who has an account, and
// may ask five times; newcomers from one clubhouse are not in each other's way.
func TestJoiningWithAnAddressThatHasAnAccount(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	s.member("robin")
	v := s.visitor()
	fields := []string{"name", "Robin", "email", "ROBIN@example.org", "password", "seven irons in march"}
	for range joinsMost {
		if a := v.post("/join", fields...); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, "That address cannot be used here. If it is yours, sign in.") {
			t.Errorf("%d", a.status)
		}
	}
	for _, email := range []string{"robin@example.org", "nobody@example.org"} {
		if a := v.post("/join", "name", "Robin", "email", email, "password", password); a.status != http.StatusTooManyRequests || !strings.Contains(a.body, "Too many tries. Wait 15 minutes.") {
			t.Errorf("after %d, %s: %d", joinsMost, email, a.status)
		}
	}
}

func TestNewcomersFromOneClubhouse(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	s.member("robin")
	for i := range 2 * joinsMost {
		if a := s.visitor().post("/join", "name", "Kim", "email", fmt.Sprintf("kim%d@example.org", i), "password", password); a.status != http.StatusSeeOther {
			t.Errorf("%d: %d", i, a.status)
		}
	}
}

func TestAnInvitationSaysPlainlyThatAnAddressHasAnAccount(t *testing.T) {
	closed := newSite(t, Options{SignUp: SignUpInvitation})
	steward := closed.steward()
	found := regexp.MustCompile(`token=([A-Z2-7]{26})`).FindStringSubmatch(steward.post("/account/invite").body)
	if found == nil {
		t.Fatal("no invitation")
	}
	join := func(token, email string) answer {
		return closed.visitor().post("/join", "name", "Robin", "email", email, "password", password, "token", token)
	}
	if a := join("none", "steward@example.org"); a.status != http.StatusNotFound {
		t.Errorf("without an invitation: %d", a.status)
	}
	if a := join(found[1], "steward@example.org"); a.status != http.StatusUnprocessableEntity || !strings.Contains(a.body, "There is an account with this address.") {
		t.Errorf("with an invitation: %d", a.status)
	}
	if a := join(found[1], "kim@example.org"); a.status != http.StatusSeeOther {
		t.Errorf("and another address: %d", a.status)
	}
}
