package handlers

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"strings"
	"sync"
	"testing"
	"testing/synctest"
)

func TestAHashIsReadBackAsItWasMade(t *testing.T) {
	small, other := newHashing(testCost, 1), newHashing(HashCost{Memory: 128, Passes: 2, Lanes: 2}, 1)
	kept, err := small.hash(t.Context(), "", password)
	if err != nil || !strings.HasPrefix(kept, "$argon2id$v=19$m=64,t=1,p=1$") {
		t.Fatalf("%s, %v", kept, err)
	}
	for _, c := range []struct {
		h        *hashing
		password string
		ok, old  bool
	}{{small, password, true, false}, {other, password, true, true}, {small, "another", false, false}, {other, "another", false, true}} {
		if ok, old, err := c.h.matches(t.Context(), "", c.password, kept); ok != c.ok || old != c.old || err != nil {
			t.Errorf("%s with %s: %t, old %t, %v", c.password, c.h.cost, ok, old, err)
		}
	}
}

// A hash that nobody can read matches nothing, and takes nothing down.
func TestAHashThatIsNone(t *testing.T) {
	h := newHashing(testCost, 1)
	kept, err := h.hash(t.Context(), "", password)
	if err != nil {
		t.Fatal(err)
	}
	parts := strings.Split(kept, "$")
	with := func(i int, part string) string {
		changed := append([]string{}, parts...)
		changed[i] = part
		return strings.Join(changed, "$")
	}
	for _, bad := range []string{"", "hash", "$$$$$", "$$$$$$", "x" + kept, kept + "$", with(1, "argon2i"), with(2, "v=16"), with(2, ""),
		with(3, ""), with(3, "m=64,t=0,p=1"), with(3, "m=64,t=1,p=0"), with(3, "m=0,t=1,p=1"), with(3, "m=64,t=1,p=256"), with(3, "m=64,t=1,p=-1"), with(3, "m=64,t=1,p=1,x"), with(3, " m=64,t=1,p=1"),
		with(3, "m=4294967295,t=1,p=1"), with(3, "m=64,t=4294967295,p=1"), with(3, "m=99999999999,t=1,p=1"), with(3, "t=1,m=64,p=1"),
		with(4, ""), with(4, "!"), with(4, "AAAA"), with(5, ""), with(5, "!"), with(5, "AAAA"), with(5, strings.Repeat("A", 4000)), parts[0] + "$" + parts[1]} {
		if ok, _, err := h.matches(t.Context(), "", password, bad); ok || err != nil {
			t.Errorf("%q: %t, %v", bad, ok, err)
		}
	}
}

// Hashes that cost otherwise than today's are made anew at sign-in, once.
func TestAnOldHashIsRenewedAtSignIn(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen, Hash: HashCost{Memory: 128, Passes: 2, Lanes: 1}})
	kept := func() string {
		p, err := s.store.PlayerByEmail(t.Context(), "robin@example.org")
		if err != nil {
			t.Fatal(err)
		}
		return p.PasswordHash
	}
	v := s.member("robin") // whose hash is made at the cost of tests
	renewed := kept()
	if !strings.Contains(renewed, "$m=128,t=2,p=1$") {
		t.Errorf("%s", renewed)
	}
	if a := v.post("/sign-in", "email", "robin@example.org", "password", "not this one"); a.status != http.StatusUnprocessableEntity || kept() != renewed {
		t.Errorf("%d, %s", a.status, kept())
	}
	if a := v.post("/sign-in", "email", "robin@example.org", "password", password); a.status != http.StatusSeeOther || kept() != renewed {
		t.Errorf("%d, %s", a.status, kept())
	}
}

// One hash is in hand for whoever asks, and who waits for a turn takes no place in
// the queue of the others; who leaves takes the turn along.
func TestOneHashAtATimeForWhoeverAsks(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		h := newHashing(testCost, 2)
		done, err := h.take(t.Context(), "a")
		if err != nil {
			t.Fatal(err)
		}
		ctx, leave := context.WithCancel(t.Context())
		var second, third error
		var waiting sync.WaitGroup
		waiting.Go(func() { _, second = h.take(ctx, "a") })
		waiting.Go(func() {
			var end func()
			if end, third = h.take(t.Context(), "a"); third == nil {
				end()
			}
		})
		synctest.Wait()
		if len(h.places) != 1 || len(h.queue) != 1 {
			t.Errorf("%d places, %d in the queue", len(h.places), len(h.queue))
		}
		other, err := h.take(t.Context(), "b")
		if err != nil {
			t.Fatal(err)
		}
		leave()
		synctest.Wait()
		done()
		other()
		waiting.Wait()
		if !errors.Is(second, context.Canceled) || third != nil || len(h.turns) != 0 || len(h.places) != 0 || len(h.queue) != 0 {
			t.Errorf("%v, %v, %d turns left", second, third, len(h.turns))
		}
	})
}

// Beyond a number that wait, hashes are refused at once, with a page.
func TestTheQueueOfHashesIsBounded(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("robin")
	for range cap(s.server.hashing.queue) {
		s.server.hashing.queue <- struct{}{}
	}
	for path, fields := range map[string]url.Values{
		"/sign-in":          {"email": {"robin@example.org"}, "password": {password}},
		"/account/password": {"password": {password}, "new": {"seven irons in march"}},
		"/account/delete":   {"confirm": {password}},
		"/join":             {"name": {"Kim"}, "email": {"kim@example.org"}, "password": {password}},
	} {
		a, headers := v.send(http.MethodPost, path, urlencoded, fields.Encode())
		if a.status != http.StatusServiceUnavailable || headers.Get("Retry-After") == "" || !strings.Contains(a.body, "<h1") || strings.Contains(a.body, password) {
			t.Errorf("%s: %d, after %q", path, a.status, headers.Get("Retry-After"))
		}
	}
	if len(s.server.hashing.queue) != 2+hashesWaiting {
		t.Errorf("%d places", len(s.server.hashing.queue))
	}
}

// Whoever has a session has ten tries of its password in a quarter of an hour, at
// the same moment or not, and each field counts.
func TestThePasswordOfASessionIsNotGuessed(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("robin")
	var mu sync.Mutex
	var done sync.WaitGroup
	got := map[int]int{}
	for i := range 40 {
		done.Go(func() {
			path, field := "/account/password", "password"
			if i%2 == 0 {
				path, field = "/account/delete", "confirm"
			}
			a := v.post(path, field, fmt.Sprintf("wrong password %d", i), "new", "seven irons in march")
			mu.Lock()
			defer mu.Unlock()
			got[a.status]++
		})
	}
	done.Wait()
	if got[http.StatusUnprocessableEntity] != triesOfPassword || got[http.StatusTooManyRequests] != 40-triesOfPassword {
		t.Errorf("%v", got)
	}
	a, headers := v.send(http.MethodPost, "/account/delete", urlencoded, url.Values{"confirm": {password}}.Encode())
	if a.status != http.StatusTooManyRequests || headers.Get("Retry-After") == "" || !strings.Contains(a.body, "Too many tries. Wait 15 minutes.") {
		t.Errorf("%d", a.status)
	}
	if a := s.visitor().post("/sign-in", "email", "robin@example.org", "password", password); a.status != http.StatusSeeOther {
		t.Errorf("the owner cannot sign in elsewhere: %d", a.status)
	}
	other := s.member("kim")
	if a := other.post("/account/delete", "confirm", password); a.status != http.StatusSeeOther {
		t.Errorf("another account: %d", a.status)
	}
}
