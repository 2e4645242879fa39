package handlers

import (
	"fmt"
	"maps"
	"net/http"
	"net/url"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/go-chi/chi/v5"
)

// sharp are values for every field and every place of an address by itself: what
// a number, a day, a span or a text may stumble over.
var sharp = []string{"", "-1", "2147483648", "9223372036854775808", "1.99999999999", "9999-12-31", "0001-01-01..9999-12-31", `"><script>alert(1)</script>`}

// dull are values for all fields of a route at once.
var dull = []string{
	"\x00", "a\xff", "\u202e", "\u200b", strings.Repeat("\u00e9", 3000), "0", "99", "1e309", "NaN",
	"0001-01-01", "0001", "0001-01", "..", "0001-01-01..", "0001-01-02..0001-02-01", "'; drop table players; --", "%zz", "\r\nLocation: /x",
}

// few are those for the places of an address and, all fields at once, for routes
// that make the slow hash of a password.
var few = []string{"\x00", "1\xff", "9223372036854775808", strings.Repeat("x", 9000), "'; drop table players; --"}

var (
	costly = []string{"POST /sign-in", "POST /join", "POST /reset", "POST /account/password", "POST /account/delete"}
	leak   = regexp.MustCompile(`goroutine \d|\.go:\d|SQLSTATE|pgx|postgres \d|(?i:\bselect\b[^<]{1,200}\bfrom\b)|(?i:\binsert into\b)|panic:`)
)

// sweeper asks, and looks at every answer.
type sweeper struct {
	visitor
	as    string
	asked int
}

func (w *sweeper) check(what string, method, path, kind, body string) {
	w.t.Helper()
	w.asked++
	a, _ := w.send(method, path, kind, body, "X-Forwarded-For", fmt.Sprintf("198.51.%d.%d", w.asked/250%250, w.asked%250))
	switch {
	case a.status >= http.StatusInternalServerError:
		w.t.Errorf("%s as %s: %d %.60s", what, w.as, a.status, body)
	case leak.MatchString(a.body):
		w.t.Errorf("%s as %s says %q", what, w.as, leak.FindString(a.body))
	case strings.Contains(a.body, "<script>alert"):
		w.t.Errorf("%s as %s holds what was sent as it is", what, w.as)
	}
}

// request sends fields as a route takes them.
func (w *sweeper) request(what string, a *asked, path string, fields url.Values) {
	w.t.Helper()
	if a.method == http.MethodGet {
		w.check(what, a.method, path+"?"+fields.Encode(), "", "")
		return
	}
	w.check(what, a.method, path, urlencoded, fields.Encode())
}

// all sends a value in all fields of a route at once.
func (w *sweeper) all(name string, a *asked, values []string) {
	w.t.Helper()
	for _, value := range values {
		sent := url.Values{}
		for field := range a.fields {
			sent[field] = []string{value}
		}
		w.request(fmt.Sprintf("%s all=%.40q", name, value), a, a.path, sent)
	}
}

// each sends a value in one field of a route after the other, the others as the
// page has them.
func (w *sweeper) each(name string, a *asked, values []string) {
	w.t.Helper()
	for _, field := range a.names() {
		for _, value := range values {
			sent := maps.Clone(a.fields)
			sent[field] = []string{value}
			w.request(fmt.Sprintf("%s %s=%.40q", name, field, value), a, a.path, sent)
		}
	}
}

// bodies sends bodies and queries that are none.
func (w *sweeper) bodies(name string, a *asked) {
	w.t.Helper()
	if a.method == http.MethodPost {
		for _, body := range []string{"%zz", "a;b=c", "%", strings.Repeat("a=1&", 12000)} {
			w.check(fmt.Sprintf("%s body %.10q", name, body), a.method, a.path, urlencoded, body)
		}
		w.check(name+" of no kind", a.method, a.path, ";", "a=1")
		w.check(name+" in several parts", a.method, a.path, "multipart/form-data", "a=1")
	}
	w.check(name+" ?%zz", a.method, a.path+"?%zz", urlencoded, "")
}

// parameter are the places of an address that name something.
var parameter = regexp.MustCompile(`\{[a-z]+\}`)

// paths sends values in every place of the route's address.
func (w *sweeper) paths(name string, a *asked) {
	w.t.Helper()
	_, route, _ := strings.Cut(name, " ")
	for _, place := range parameter.FindAllString(route, -1) {
		for _, value := range few {
			path := filled(strings.Replace(route, place, url.PathEscape(value), 1))
			w.request(fmt.Sprintf("%s %s=%.40q", name, place, value), a, path, url.Values{})
		}
	}
}

// sweep sends a route what it takes, and what it does not.
func (w *sweeper) sweep(name string, a *asked) {
	w.t.Helper()
	w.bodies(name, a)
	switch {
	case slices.Contains(costly, name):
		w.all(name, a, few)
	case w.as == "the owner":
		w.all(name, a, dull)
		w.each(name, a, sharp)
	default:
		w.all(name, a, few)
		w.all(name, a, sharp)
	}
}

// Whatever a form, an address or a body holds, no answer is a fault of the
// server's, and none tells how the server is made.
func TestNothingSentIsAFault(t *testing.T) {
	s := newSite(t, Options{SignUp: SignUpOpen, Proxies: []string{"127.0.0.0/8"}})
	owner, coach := s.furnished()
	server := &server{store: s.store, options: Options{SignUp: SignUpOpen}, hashing: newHashing(testCost, 1), uploads: newUploads()}
	routes := server.routes().(chi.Routes)
	for _, w := range []*sweeper{{visitor: s.visitor(), as: "nobody"}, {visitor: coach, as: "the coach"}, {visitor: owner, as: "the owner"}} {
		all := gather(t, routes, w.visitor)
		if len(all) != len(access) {
			t.Errorf("%d routes are swept, there are %d", len(all), len(access))
		}
		for _, name := range routesInOrder(t, routes) {
			w.paths(name, all[name])
			if w.as == "nobody" && access[name].nobody == http.StatusSeeOther {
				w.all(name, all[name], few[:1])
			} else if w.as != "the coach" || access[name].coach != http.StatusNotFound && strings.HasPrefix(all[name].path, "/players/") {
				w.sweep(name, all[name])
			}
		}
		t.Logf("%s: %d requests", w.as, w.asked)
	}
}
