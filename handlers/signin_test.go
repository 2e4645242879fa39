package handlers

import (
	"fmt"
	"net/http"
	"net/url"
	"strings"
	"sync"
	"testing"
	"time"
)

// attacked is a site behind a proxy, so that visitors come from where they say,
// on which strangers' tries are hardly slowed down.
func attacked(t *testing.T) testSite {
	return newSite(t, Options{SignUp: SignUpOpen, Proxies: []string{"127.0.0.0/8"}, SlowStep: time.Microsecond})
}

// from is a new visitor from an address.
func (s testSite) from(address string) visitor {
	v := s.visitor()
	v.from = address
	return v
}

// tries sends passwords of an account from visitors and returns how many answers
// there were of each status.
func tries(email string, password func(i int) string, all ...visitor) map[int]int {
	var mu sync.Mutex
	var done sync.WaitGroup
	got := map[int]int{}
	for i, v := range all {
		done.Go(func() {
			a := v.post("/sign-in", "email", email, "password", password(i))
			mu.Lock()
			defer mu.Unlock()
			got[a.status]++
		})
	}
	done.Wait()
	return got
}

func wrong(i int) string { return fmt.Sprintf("wrong password %d", i) }

// A stranger who tries from ten addresses does not lock the owner out, who never
// signed in from here before.
func TestStrangersDoNotLockTheOwnerOut(t *testing.T) {
	s := attacked(t)
	s.member("robin")
	strangers := []visitor{}
	for i := range triesOfPassword {
		strangers = append(strangers, s.from(fmt.Sprintf("198.51.%d.7", i)))
	}
	if got := tries("robin@example.org", wrong, strangers...); got[http.StatusUnprocessableEntity] != triesOfPassword {
		t.Errorf("%v", got)
	}
	if a := s.from("203.0.113.9").post("/sign-in", "email", "robin@example.org", "password", password); a.status != http.StatusSeeOther {
		t.Errorf("the owner: %d %s", a.status, a.body)
	}
}

// Two hundred tries from everywhere, the owner's own network among them, do not get
// in the way of a device that signed in before, whatever its address.
func TestAKnownDevicePassesWhateverStrangersDo(t *testing.T) {
	s := attacked(t)
	device := s.member("robin")
	device.from = "203.0.113.9"
	if a := device.post("/sign-out"); a.status != http.StatusSeeOther {
		t.Fatal(a.status)
	}
	strangers := []visitor{}
	for i := range 200 {
		address := fmt.Sprintf("198.51.%d.7", i)
		if i%10 == 0 {
			address = fmt.Sprintf("203.0.113.%d", 100+i/10)
		}
		strangers = append(strangers, s.from(address))
	}
	if got := tries("robin@example.org", wrong, strangers...); got[http.StatusUnprocessableEntity] != 180+triesOfPassword || got[http.StatusTooManyRequests] != 20-triesOfPassword {
		t.Errorf("%v", got)
	}
	if a := s.from("203.0.113.10").post("/sign-in", "email", "robin@example.org", "password", password); a.status != http.StatusTooManyRequests {
		t.Errorf("a stranger of that network: %d", a.status)
	}
	if a := device.post("/sign-in", "email", "Robin@example.org", "password", password); a.status != http.StatusSeeOther {
		t.Errorf("the owner: %d %s", a.status, a.body)
	}
}

// The network of who tries too often is refused, also with the right password, and
// is told for how long; forty tries at once are not all made.
func TestTheNetworkOfAnAttackerIsRefused(t *testing.T) {
	s := attacked(t)
	s.member("robin")
	for name, address := range map[string]func(i int) string{
		"IPv4": func(i int) string { return fmt.Sprintf("192.0.2.%d", i) },
		"IPv6": func(i int) string { return fmt.Sprintf("2001:db8:0:1::%x", i+1) },
	} {
		strangers := []visitor{}
		for i := range 40 {
			strangers = append(strangers, s.from(address(i)))
		}
		got := tries("robin@example.org", wrong, strangers...)
		// httprate counts a whole /64 of IPv6, so some are refused by that already.
		if got[http.StatusUnprocessableEntity] != triesOfPassword || got[http.StatusTooManyRequests] != 40-triesOfPassword {
			t.Errorf("%s: %v", name, got)
		}
	}
	a, headers := s.visitor().send(http.MethodPost, "/sign-in", urlencoded, url.Values{"email": {"robin@example.org"}, "password": {password}}.Encode(), "X-Forwarded-For", "192.0.2.200")
	if wait := headers.Get("Retry-After"); a.status != http.StatusTooManyRequests || len(wait) != 3 || !strings.Contains(a.body, "Too many tries. Wait 15 minutes.") || !strings.Contains(a.body, "Sign in") {
		t.Errorf("%d, after %s", a.status, wait)
	}
	if a := s.from("192.0.2.200").post("/sign-in", "email", "another@example.org", "password", password); a.status != http.StatusUnprocessableEntity {
		t.Errorf("another account: %d", a.status)
	}
}

// A device that the account knows has as many tries as a network.
func TestAKnownDeviceMayNotTryForEver(t *testing.T) {
	s := attacked(t)
	device := s.member("robin")
	all := []visitor{}
	for i := range 40 {
		device.from = fmt.Sprintf("198.51.%d.7", i)
		all = append(all, device)
	}
	if got := tries("robin@example.org", wrong, all...); got[http.StatusUnprocessableEntity] != triesOfPassword || got[http.StatusTooManyRequests] != 40-triesOfPassword {
		t.Errorf("%v", got)
	}
}

// A device of another account is a stranger.
func TestADeviceIsKnownToItsOwnAccountsOnly(t *testing.T) {
	s := attacked(t)
	s.member("robin")
	other := s.member("other")
	other.from = "192.0.2.1"
	for i := range triesOfPassword {
		other.post("/sign-in", "email", "robin@example.org", "password", wrong(i))
	}
	if a := s.from("192.0.2.2").post("/sign-in", "email", "robin@example.org", "password", password); a.status != http.StatusTooManyRequests {
		t.Errorf("%d", a.status)
	}
}

// Who signs in with the right password starts anew.
func TestSigningInForgetsWrongTries(t *testing.T) {
	s := attacked(t)
	s.member("robin")
	for round := range 3 {
		v := s.from("192.0.2.1")
		for i := range 6 {
			v.from = fmt.Sprintf("192.0.2.%d", 10*round+i)
			if a := v.post("/sign-in", "email", "robin@example.org", "password", wrong(i)); a.status != http.StatusUnprocessableEntity {
				t.Fatalf("%d, try %d: %d", round, i, a.status)
			}
		}
		if a := v.post("/sign-in", "email", "robin@example.org", "password", password); a.status != http.StatusSeeOther {
			t.Fatalf("%d: %d", round, a.status)
		}
	}
}

func TestStrangersGetSlower(t *testing.T) {
	for n, want := range map[int]time.Duration{0: 0, 10: 0, 11: slowStep, 20: 10 * slowStep, 200: slowMost, 1 << 30: slowMost} {
		if got := slowed(n, slowStep); got != want {
			t.Errorf("%d tries: %s, want %s", n, got, want)
		}
	}
	s := newSite(t, Options{SignUp: SignUpOpen, Proxies: []string{"127.0.0.0/8"}, SlowStep: slowMost})
	device := s.member("robin")
	strangers := []visitor{}
	for i := range slowAfter {
		strangers = append(strangers, s.from(fmt.Sprintf("198.51.%d.7", i)))
	}
	tries("robin@example.org", wrong, strangers...)
	began := time.Now()
	stranger := s.from("203.0.113.1")
	stranger.client.Timeout = 300 * time.Millisecond
	r, err := http.NewRequest(http.MethodPost, s.URL+"/sign-in", strings.NewReader(url.Values{"email": {"robin@example.org"}, "password": {password}}.Encode()))
	if err != nil {
		t.Fatal(err)
	}
	r.Header.Set("Content-Type", urlencoded)
	r.Header.Set("X-Forwarded-For", stranger.from)
	if got, err := stranger.client.Do(r); err == nil {
		got.Body.Close()
		t.Errorf("a stranger has the answer %d after %s", got.StatusCode, time.Since(began))
	}
	began = time.Now()
	if a := device.post("/sign-in", "email", "robin@example.org", "password", password); a.status != http.StatusSeeOther || time.Since(began) >= slowMost {
		t.Errorf("a known device: %d after %s", a.status, time.Since(began))
	}
}

func TestNetworks(t *testing.T) {
	for address, want := range map[string]string{
		"192.0.2.77": "192.0.2.0/24", "::ffff:192.0.2.77": "192.0.2.0/24", "2001:db8:1:2:3:4:5:6": "2001:db8:1:2::/64", "fe80::1%eth0": "fe80::/64", "": "", "x": "x",
	} {
		if got := networkOf(address); got != want {
			t.Errorf("%s: %s, want %s", address, got, want)
		}
	}
}

// The session that a sign-in replaces has ended, and its token is worth nothing.
func TestSigningInEndsTheSessionItReplaces(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("robin")
	tokens := func() string {
		at, err := url.Parse(s.URL)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range v.client.Jar.Cookies(at) {
			if c.Name == cookieName {
				return c.String()
			}
		}
		return ""
	}
	for what, again := range map[string]func() answer{
		"signing in":            func() answer { return v.post("/sign-in", "email", "robin@example.org", "password", password) },
		"changing the password": func() answer { return v.post("/account/password", "password", password, "new", "seven irons in march") },
	} {
		old := tokens()
		if a := again(); a.status != http.StatusSeeOther {
			t.Fatalf("%s: %d %s", what, a.status, a.body)
		}
		if a, _ := s.visitor().send(http.MethodGet, "/account", "", "", "Cookie", old); a.status != http.StatusSeeOther {
			t.Errorf("%s: the old token still gets %d", what, a.status)
		}
		if a := v.get("/account"); a.status != http.StatusOK || strings.Count(a.body, "this one") != 1 || strings.Contains(a.body, `name="device"`) {
			t.Errorf("%s: %d", what, a.status)
		}
		if what == "changing the password" {
			v.post("/account/password", "password", "seven irons in march", "new", password)
		}
	}
}
