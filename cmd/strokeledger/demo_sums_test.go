package main

import (
	"fmt"
	"io"
	"net/http"
	"net/http/cookiejar"
	"net/http/httptest"
	"net/url"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"strokeledger/db"
	"strokeledger/db/local"
	"strokeledger/handlers"
	"strokeledger/web/sample"
)

// Whatever is printed in the demo adds up, on every page that its player and its
// coach can reach.
func TestTheDemoAddsUp(t *testing.T) {
	const password = "a long word for the demo"
	site := demoSite(t, password)
	for who, kinds := range map[string][]string{
		demoPlayer: {"/rounds", "/rounds/#", "/rounds/#/holes/#", "/months"},
		demoCoach:  {"/players/#/rounds", "/players/#/rounds/#", "/players/#/months", "/players/#/report", "/coaching/squad"},
	} {
		r := reader{t: t, site: site.URL, seen: map[string]bool{}, kinds: map[string]int{}, checked: map[string]int{}}
		r.signIn(who, password)
		r.read("/")
		for _, kind := range kinds {
			if r.checked[kind] == 0 {
				t.Errorf("%s: no sum on %d pages of %s", who, r.kinds[kind], kind)
			}
		}
		if who == demoPlayer {
			r.sameOnBothPages()
		}
		t.Logf("%s: %d pages", who, len(r.seen))
	}
}

// demoSite is the whole app with the demo in a database of its own.
func demoSite(t *testing.T, password string) *httptest.Server {
	t.Helper()
	folder, err := os.MkdirTemp("", "ledger-demo-")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { os.RemoveAll(folder) })
	if err := os.Chmod(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	server, err := local.StartThrowaway(folder + "/pg")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { server.Stop() })
	store, err := db.Open(t.Context(), server.URL)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(store.Close)
	if err := makeDemo(t.Context(), store, password); err != nil {
		t.Fatal(err)
	}
	site := httptest.NewServer(handlers.New(store, handlers.Options{SignUp: handlers.SignUpClosed}))
	t.Cleanup(site.Close)
	return site
}

// reader follows the links of a site and adds up each page.
type reader struct {
	t       *testing.T
	site    string
	client  *http.Client
	seen    map[string]bool
	kinds   map[string]int // pages read, by address without its numbers
	checked map[string]int // sums on them
}

// fewOfAKind is how many pages are read that differ in numbers alone.
const fewOfAKind = 5

var (
	linked  = regexp.MustCompile(`<a [^>]*href="(/[^"#]*)`)
	numbers = regexp.MustCompile(`[0-9]+`)
)

func (r *reader) signIn(email, password string) {
	r.t.Helper()
	jar, err := cookiejar.New(nil)
	if err != nil {
		r.t.Fatal(err)
	}
	r.client = &http.Client{Jar: jar}
	answer, err := r.client.PostForm(r.site+"/sign-in", url.Values{"email": {email}, "password": {password}})
	if err != nil {
		r.t.Fatal(err)
	}
	answer.Body.Close()
	if answer.StatusCode != http.StatusOK || answer.Request.URL.Path == "/sign-in" {
		r.t.Fatalf("%s cannot sign in: %d", email, answer.StatusCode)
	}
}

// read adds up a page and all that it leads to.
func (r *reader) read(address string) {
	for next := []string{address}; len(next) > 0; next = next[1:] {
		address := strings.ReplaceAll(next[0], "&amp;", "&")
		path, query, _ := strings.Cut(address, "?")
		kind := numbers.ReplaceAllString(path, "#")
		asked := kind + "?" + numbers.ReplaceAllString(query, "#")
		if r.seen[address] || r.kinds[asked] >= fewOfAKind || r.kinds[kind] >= 5*fewOfAKind {
			continue
		}
		r.seen[address] = true
		r.kinds[asked]++
		r.kinds[kind]++
		page, err := r.client.Get(r.site + address)
		if err != nil {
			r.t.Fatal(err)
		}
		body, err := io.ReadAll(page.Body)
		page.Body.Close()
		if err != nil {
			r.t.Fatal(err)
		}
		if page.StatusCode != http.StatusOK || !strings.HasPrefix(page.Header.Get("Content-Type"), "text/html") {
			continue
		}
		sums := sample.SumsOf(string(body))
		r.checked[kind] += sums.Checked
		for _, fault := range sums.Faults {
			r.t.Errorf("%s: %s", address, fault)
		}
		for _, m := range linked.FindAllStringSubmatch(string(body), -1) {
			next = append(next, m[1])
		}
	}
}

// sameOnBothPages looks whether every shot of a whole round costs the same on the page
// of its hole as on the statement.
func (r *reader) sameOnBothPages() {
	round := regexp.MustCompile(`^/rounds/[0-9]+$`)
	for address := range r.seen {
		if !round.MatchString(address) {
			continue
		}
		statement, shots := r.page(address), 0
		for hole := 1; hole <= 18; hole++ {
			want := losses(statement, fmt.Sprintf("h%d", hole))
			got := losses(r.page(fmt.Sprintf("%s/holes/%d", address, hole)), "shots")
			shots += len(got)
			if len(got) < len(want) {
				want = want[:len(want)-1] // a line need not say that the last shot went in, so its page does not price it
			}
			if !slices.Equal(got, want) {
				r.t.Errorf("%s, hole %d: %v on its page, %v on the statement", address, hole, got, want)
			}
		}
		if shots < 18 {
			r.t.Errorf("%s has %d shots", address, shots)
		}
		return
	}
	r.t.Error("no statement was read")
}

func (r *reader) page(address string) string {
	r.t.Helper()
	page, err := r.client.Get(r.site + address)
	if err != nil {
		r.t.Fatal(err)
	}
	defer page.Body.Close()
	body, err := io.ReadAll(page.Body)
	if err != nil {
		r.t.Fatal(err)
	}
	return string(body)
}

// losses are the figures on a page that are added to a sum.
func losses(page, sum string) []string {
	var all []string
	for _, m := range regexp.MustCompile(`data-part="`+sum+`">([^<]*)<`).FindAllStringSubmatch(page, -1) {
		all = append(all, m[1])
	}
	return all
}
