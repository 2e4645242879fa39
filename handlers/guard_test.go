package handlers

import (
	"io"
	"net/http"
	"net/url"
	"strings"
	"testing"
)

// send asks with a body of any kind and any headers, and returns the answer with
// its headers.
func (v visitor) send(method, path, kind, body string, headers ...string) (answer, http.Header) {
	v.t.Helper()
	r, err := http.NewRequest(method, v.URL+path, strings.NewReader(body))
	if err != nil {
		v.t.Fatal(err)
	}
	if kind != "" {
		r.Header.Set("Content-Type", kind)
	}
	for i := 0; i+1 < len(headers); i += 2 {
		r.Header.Set(headers[i], headers[i+1])
		if headers[i] == "Host" {
			r.Host = headers[i+1]
		}
	}
	got, err := v.client.Do(r)
	if err != nil {
		v.t.Fatal(err)
	}
	defer got.Body.Close()
	page, err := io.ReadAll(got.Body)
	if err != nil {
		v.t.Fatal(err)
	}
	return answer{got.StatusCode, got.Header.Get("Location"), string(page)}, got.Header
}

const urlencoded = "application/x-www-form-urlencoded"

// raw posts a body as it is.
func (v visitor) raw(path, kind, body string) answer {
	v.t.Helper()
	a, _ := v.send(http.MethodPost, path, kind, body)
	return a
}

func TestAFormThatCannotBeReadChangesNothing(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("robin")
	round := v.withRound()
	if a := v.post(round+"/conditions", "conditions", "precious", "out", "40"); a.status != http.StatusSeeOther {
		t.Fatalf("%d", a.status)
	}
	for _, c := range []struct {
		name, kind, body string
		want             int
	}{
		{"a broken escape", urlencoded, "note=%zz", 400},
		{"a semicolon", urlencoded, "note=a;out=1", 400},
		{"too large", urlencoded, "note=" + strings.Repeat("a", largestForm), 413},
		{"NUL", urlencoded, "note=a%00", 400},
		{"not UTF-8", urlencoded, "note=%ff", 400},
		{"a name with NUL", urlencoded, "note=a&%00=1", 400},
		{"several parts", "multipart/form-data; boundary=x", "--x\r\nContent-Disposition: form-data; name=\"note\"\r\n\r\nother\r\n--x--\r\n", 400},
		{"no kind", "", "note=other", 400},
		{"a kind that is none", ";", "note=other", 400},
	} {
		a := v.raw(round+"/conditions", c.kind, c.body)
		if a.status != c.want || !strings.Contains(a.body, "<h1") {
			t.Errorf("%s: %d %.80s", c.name, a.status, a.body)
		}
	}
	if a := v.get(round); !strings.Contains(a.body, "precious") || !strings.Contains(a.body, "40") {
		t.Error("the note is gone")
	}
}

func TestWhatCannotBeKeptIsRefusedBeforeTheDatabase(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	for _, body := range []string{"email=%00", "email=%ff&password=x", "password=%C0%AF"} {
		if a := s.visitor().raw("/sign-in", urlencoded, body); a.status != http.StatusBadRequest {
			t.Errorf("%s: %d", body, a.status)
		}
	}
	v := s.member("robin")
	for _, path := range []string{"/rounds?course=%00", "/rounds?course=%ff", "/players/1/rounds?%00=1", "/rounds?%zz", "/rounds?a;b", "/players/1/rounds/%00", "/players/1/rounds/%ff", "/%C0%AF"} {
		if a := v.get(path); a.status != http.StatusBadRequest || !strings.Contains(a.body, "<h1") {
			t.Errorf("%s: %d", path, a.status)
		}
	}
}

func TestFormsAreReadFromTheBodyAlone(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	s.member("robin")
	query := url.Values{"email": {"robin@example.org"}, "password": {password}}.Encode()
	if a := s.visitor().raw("/sign-in?"+query, urlencoded, ""); a.status != http.StatusUnprocessableEntity {
		t.Errorf("signed in by the address: %d", a.status)
	}
	if a := s.visitor().raw("/sign-in?email=x", urlencoded, query); a.status != http.StatusSeeOther {
		t.Errorf("the body does not count: %d", a.status)
	}
}

func TestNamesThatNobodySeesAreRefused(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	s.member("first")
	for _, name := range []string{"\u3164", "ro\u200bbin", "\u202enibor", "a\tb"} {
		a := s.visitor().post("/join", "name", name, "email", "robin@example.org", "password", password)
		if a.status != http.StatusUnprocessableEntity {
			t.Errorf("%q: %d", name, a.status)
		}
	}
}

func TestWrongMethodsGetAPage(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("robin")
	for path, allow := range map[string]string{"/sign-in": "POST", "/rounds": "GET", "/account": "GET, POST", "/players/1/months": "GET", "/players/1/notes": "POST"} {
		a, headers := v.send(http.MethodPut, path, "", "")
		if got := strings.Join(headers.Values("Allow"), ", "); a.status != http.StatusMethodNotAllowed || got != allow || !strings.Contains(a.body, "<h1") {
			t.Errorf("%s: %d, allow %q", path, a.status, got)
		}
	}
}

// Monitors and link checkers ask for the head of a page alone.
func TestTheHeadOfAPageIsAnswered(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	v := s.member("robin")
	for _, path := range []string{"/rounds", "/healthz", "/help"} {
		whole := v.get(path)
		a, headers := v.send(http.MethodHead, path, "", "")
		if a.status != whole.status || a.body != "" || headers.Get("Content-Type") == "" {
			t.Errorf("%s: %d, want %d without a body; %q", path, a.status, whole.status, a.body)
		}
	}
}

func TestTooManyTriesGetAPage(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen})
	s.member("robin")
	v := s.visitor()
	for range triesMost {
		v.post("/reset", "player", "x", "password", "short")
	}
	a, headers := v.send(http.MethodPost, "/reset", urlencoded, "")
	wait := headers.Get("Retry-After")
	if a.status != http.StatusTooManyRequests || wait == "" || !strings.Contains(a.body, "<h1") || !strings.Contains(a.body, "seconds") {
		t.Errorf("%d, wait %q, %s", a.status, wait, a.body)
	}
}

func TestBehindTLSCookiesBelongToThisHost(t *testing.T) {
	for _, secure := range []bool{false, true} {
		s := newSite(t, Options{SignUp: SignUpOpen, Secure: secure})
		s.member("robin").post("/sign-out")
		v := s.visitor()
		_, headers := v.send(http.MethodGet, "/rounds", "", "")
		all := headers.Values("Set-Cookie")
		if hsts := headers.Get("Strict-Transport-Security"); secure != (hsts == "max-age=31536000; includeSubDomains") || !secure && hsts != "" {
			t.Errorf("secure %v: %q", secure, hsts)
		}
		_, headers = v.send(http.MethodPost, "/sign-in", urlencoded, url.Values{"email": {"robin@example.org"}, "password": {password}}.Encode())
		all = append(all, headers.Values("Set-Cookie")...)
		want := map[bool][]string{false: {"ledger-return=", "ledger=", "ledger-device="}, true: {"__Host-ledger-return=", "__Host-ledger=", "__Host-ledger-device="}}[secure]
		for _, name := range want {
			found := false
			for _, c := range all {
				if strings.HasPrefix(c, name) {
					found = true
					if strings.Contains(c, "; Secure") != secure || !strings.Contains(c, "; HttpOnly") || !strings.Contains(c, "; Path=/;") || strings.Contains(c, "Domain") {
						t.Errorf("secure %v: %s", secure, c)
					}
				}
			}
			if !found {
				t.Errorf("secure %v: no %s among %q", secure, name, all)
			}
		}
	}
}

// A cookie that a neighbouring host could plant signs nobody in behind TLS.
func TestBehindTLSAPlainCookieCountsForNothing(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen, Secure: true})
	v := s.member("robin")
	_, headers := v.send(http.MethodPost, "/sign-in", urlencoded, url.Values{"email": {"robin@example.org"}, "password": {password}}.Encode())
	token := ""
	for _, c := range headers.Values("Set-Cookie") {
		if value, ok := strings.CutPrefix(c, "__Host-ledger="); ok {
			token, _, _ = strings.Cut(value, ";")
		}
	}
	fresh := s.visitor()
	if a, _ := fresh.send(http.MethodGet, "/account", "", "", "Cookie", "__Host-ledger="+token); a.status != http.StatusOK {
		t.Errorf("the right name: %d", a.status)
	}
	if a, _ := fresh.send(http.MethodGet, "/account", "", "", "Cookie", "ledger="+token); a.status != http.StatusSeeOther {
		t.Errorf("the plain name: %d", a.status)
	}
}

func TestOnlyPagesOfThisSiteAreRemembered(t *testing.T) {
	for _, at := range []string{"/", "/rounds/1?on=7.2", "/coaching/accept?player=1&token=x", "/players/1/months?span=2026-01&without=r3", "/%C3%A9"} {
		if !ownPage(at) {
			t.Errorf("%q is refused", at)
		}
	}
	for _, at := range []string{"", "rounds", "//elsewhere.example", "https://elsewhere.example", `/\elsewhere.example`, "/\t/elsewhere.example", "/\x00", "/\r\nLocation: x", "/a b", "/é",
		"/" + strings.Repeat("a", returnMost), "javascript:alert(1)", "/%zz", "/#x"} {
		if ownPage(at) {
			t.Errorf("%q is taken", at)
		}
	}
	v := newSite(t, Options{SignUp: SignUpOpen}).visitor()
	if _, headers := v.send(http.MethodGet, "/rounds?x="+strings.Repeat("a", returnMost), "", ""); headers.Get("Set-Cookie") != "" {
		t.Errorf("kept %d bytes", len(headers.Get("Set-Cookie")))
	}
}
