package handlers

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
)

func TestAddressesOfASite(t *testing.T) {
	for text, want := range map[string]string{
		"https://golf.example.org": "https://golf.example.org", "https://Golf.Example.org:443": "https://golf.example.org",
		"https://golf.example.org:8443": "https://golf.example.org:8443", "http://192.168.1.5:8177": "http://192.168.1.5:8177",
		"http://nas:80": "http://nas", "https://[2001:db8::1]:8443": "https://[2001:db8::1]:8443",
	} {
		if got, err := ParseAddress(text); err != nil || got != want {
			t.Errorf("%s: %q, %v", text, got, err)
		}
	}
	for _, text := range []string{"", "golf.example.org", "ftp://golf.example.org", "https://", "https:///x", "https://golf.example.org/", "https://golf.example.org/ledger", "https://robin@golf.example.org",
		"https://golf.example.org?x", "https://golf.example.org#x", "https://golf.example.org:", "https://golf.example.org:0", "https://golf.example.org:65536", "https://golf.example.org:https",
		"https://golf example.org", "https://-golf.example.org", "https://golf..example.org", "https://golf.example.org.", "https://*.example.org", "https://gölf.example.org", " https://golf.example.org", "https://golf.example.org\n"} {
		if got, err := ParseAddress(text); err == nil {
			t.Errorf("%q is taken as %q", text, got)
		}
	}
}

func TestOtherHostsAreRefused(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen, Secure: true, Address: "https://golf.example.org"})
	v := s.visitor()
	for host, want := range map[string]int{"golf.example.org": 200, "GOLF.example.org:443": 200, "evil.example": 421, "golf.example.org:8177": 421, "golf.example.org.evil.example": 421, "127.0.0.1": 421} {
		a, _ := v.send(http.MethodGet, "/", "", "", "Host", host)
		if a.status != want || want == 421 && (!strings.Contains(a.body, "<h1") || !strings.Contains(a.body, "https://golf.example.org")) {
			t.Errorf("%s: %d", host, a.status)
		}
	}
	for _, path := range []string{"/healthz", "/readyz"} {
		if a := v.get(path); a.status != http.StatusOK {
			t.Errorf("%s: %d", path, a.status)
		}
	}
}

// Links that are handed on are made from the address of the site, when it is
// known, and not from what the request says.
func TestLinksAreMadeFromTheAddress(t *testing.T) {
	plain := newSite(t, Options{SignUp: SignUpInvitation})
	v := plain.steward()
	plain.member("robin")
	at, err := url.Parse(plain.URL)
	if err != nil {
		t.Fatal(err)
	}
	cookie := ""
	for _, c := range v.client.Jar.Cookies(at) {
		cookie += c.String() + "; " // by hand, since the browser keeps it for the real host
	}
	links := func(where, host, want string) {
		for _, path := range []string{"/accounts/2/reset", "/account/invite", "/coaching/invite"} {
			if a, _ := v.send(http.MethodPost, path, "", "", "Host", host, "Cookie", strings.TrimSuffix(cookie, "; ")); !strings.Contains(a.body, want+"/") {
				t.Errorf("%s, %s: %d has no link to %s", where, path, a.status, want)
			}
		}
	}
	links("any address", "nas:8177", "http://nas:8177")
	named := httptest.NewServer(New(plain.store, Options{SignUp: SignUpInvitation, Address: "http://golf.example.org"}))
	defer named.Close()
	v.Server = named
	links("its own address", "golf.example.org:80", "http://golf.example.org")
}
