package handlers

import (
	"html"
	"net/http"
	"net/url"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/go-chi/chi/v5"
)

var (
	formOfPage = regexp.MustCompile(`(?s)<form [^>]*>.*?</form>`)
	fieldTag   = regexp.MustCompile(`<(?:input|select|textarea|button) [^>]*>`)
	linkOfPage = regexp.MustCompile(`href="([^"#]*\?[^"#]*)`)
	digits     = regexp.MustCompile(`\d+`)
)

// attributes reads those of a tag.
func attributes(tag string) map[string]string {
	at := map[string]string{}
	for _, a := range attribute.FindAllStringSubmatch(tag, -1) {
		at[a[1]] = html.UnescapeString(a[2])
	}
	return at
}

// asked is what a route takes by its address and by its form, with a value of
// each that a page really has.
type asked struct {
	method, path string // path with the parameters filled in
	fields       url.Values
}

// found gathers, for every route, the fields of the forms and the names in the
// links of pages that lead to it.
type found struct {
	routes chi.Routes
	all    map[string]*asked // by method and route
}

func (f found) at(method, path string) *asked {
	rctx := chi.NewRouteContext()
	path, _, _ = strings.Cut(path, "#")
	if !f.routes.Match(rctx, method, path) {
		return nil
	}
	name := method + " " + strings.ReplaceAll(strings.Join(rctx.RoutePatterns, ""), "/*", "") // with the slash of a subtree's own page
	if f.all[name] == nil {
		f.all[name] = &asked{method, path, url.Values{}}
	}
	return f.all[name]
}

// page gathers what a page at a path has.
func (f found) page(path, body string) {
	for _, text := range formOfPage.FindAllString(body, -1) {
		tag, _, _ := strings.Cut(text, ">")
		of := attributes(tag + ">")
		method, action := strings.ToUpper(of["method"]), of["action"]
		if method == "" {
			method = http.MethodGet
		}
		if action == "" {
			action = path
		}
		action, query, _ := strings.Cut(action, "?")
		to := f.at(method, action)
		if to == nil {
			continue
		}
		f.query(to, query)
		for _, field := range fieldTag.FindAllString(text, -1) {
			at := attributes(field)
			if at["name"] != "" && !to.fields.Has(at["name"]) {
				to.fields.Set(at["name"], at["value"])
			}
		}
	}
	for _, link := range linkOfPage.FindAllStringSubmatch(body, -1) {
		at, query, _ := strings.Cut(html.UnescapeString(link[1]), "?")
		if to := f.at(http.MethodGet, at); to != nil {
			f.query(to, query)
		}
	}
}

func (f found) query(to *asked, query string) {
	values, _ := url.ParseQuery(query)
	for name, all := range values {
		if to.fields.Get(name) == "" {
			to.fields.Set(name, all[0])
		}
	}
}

// names are those of the fields, one of each that differ by a number alone, in a
// fixed order.
func (a *asked) names() []string {
	var names []string
	for name := range a.fields {
		names = append(names, name)
	}
	slices.Sort(names)
	seen := map[string]bool{}
	return slices.DeleteFunc(names, func(name string) bool {
		like := digits.ReplaceAllString(name, "#")
		known := seen[like]
		seen[like] = true
		return known
	})
}

// more are names that an address or a form may have and that no page of the
// test has, and values for fields that pages leave empty.
var more = map[string]string{
	"GET /players/{player}/months":                     "span=2026-05&span=2026-06&versus=level&level=84&course=Harrow+Fen&without=1&from=2026-05-01&to=2026-05-31",
	"GET /players/{player}/months.csv":                 "span=2026-05&span=2026-06&versus=84&course=Harrow+Fen&without=1",
	"GET /players/{player}/months/behind":              "in=1&row=all&measure=greens&putts=3-4&span=2026-05&without=1",
	"GET /players/{player}/report":                     "span=2026-05&from=2026-05-01&to=2026-05-31",
	"GET /players/{player}/rounds":                     "course=Harrow+Fen&from=2026-05-01&to=2026-05-31",
	"GET /players/{player}/rounds/{round}":             "on=1.1",
	"GET /rounds":                                      "course=Harrow+Fen&from=2026-05-01&to=2026-05-31&saved=note&undo=1",
	"GET /rounds/{round}":                              "on=1.1&saved=note",
	"GET /rounds/{round}/holes/{hole}":                 "line=r150+g20+2&nine=2",
	"GET /rounds/new":                                  "course=1",
	"GET /courses/new":                                 "from=1",
	"GET /courses/{course}/holes/{hole}/picture":       "version=1",
	"GET /players/{player}/play/{course}/holes/{hole}": "flag=back-left",
	"POST /courses/{course}/holes/{hole}/picture":      "do=save&rows=green+369:+24+wide,+30+deep&before=x&bend=left&fairway=30&left=out&left_far=20&right=trees&right_far=30&width=24&depth=30",
	"POST /courses/{course}/holes/{hole}/picture/file": "picture={}", "POST /courses/{course}/holes/{hole}/picture/back": "version=0",
	"POST /players/{player}/bag": "club-1=driver&length-1=230&bend-1=8&side-1=left", "POST /players/{player}/bag/range": "range_club=driver&day=2026-10-02&balls=3+4",
	"GET /coaching":        "sort=name&show=all&name=robin",
	"GET /coaching/squad":  "from=2026-05-01&to=2026-05-31&pupil=1",
	"GET /coaching/looks":  "page=1",
	"GET /coaching/accept": "player=1&token=x",
	"GET /join":            "token=x",
	"GET /reset":           "player=1&token=x",
	"GET /":                "again=",

	"POST /sign-in": "email=robin@example.org&password=x", "POST /join": "name=x&email=x@example.org&password=short&token=x",
	"POST /reset": "player=1&token=x&password=short", "POST /accounts/{player}/reset": "",
	"POST /coaching/accept": "player=1&token=x", "POST /coaching/confirm": "coach=2", "POST /coaching/end": "player=2&coach=3", "POST /coaching/kept": "player=1&note=1",
	"POST /players/{player}/target": "target=82", "POST /players/{player}/target/answer": "coach=9&accept=",
	"POST /players/{player}/notes":    "round=1&on=1.1&body=x&day=2026-05-02&private=",
	"POST /courses/{course}/merge":    "same=1",
	"POST /courses/{course}/use-card": "round=1", "POST /account/devices": "device=x", "POST /account/invite": "", "POST /import/confirm": "there=skip",
	"POST /players/{player}/notes/{note}": "body=y", "POST /players/{player}/notes/{note}/replies": "body=y",
	"POST /players/{player}/assignments": "what=x&due=2026-09-02", "POST /players/{player}/assignments/{assignment}/results": "day=2026-08-02&result=x",
	"GET /players/{player}/start-line": "feet=6&tries=40&made=22&left=4&right=9",
	"GET /players/{player}/run-out":    "distance=23&edge=17&lie=fairway&speed=medium&slope=level",
	"POST /players/{player}/run-out":   "pairs=12+21&club=pw&lie=fairway&green=medium&unit=yd&day=2026-05-02",
	"POST /marks":                      "day=2026-05-02&marked_on=2026-05-02&what=x", "POST /courses/new": "name=Moor&holes=9", "POST /rounds/{round}/holes/{hole}": "line=r150+g10+2&version=1&press=save",
	"POST /rounds/{round}/conditions": "conditions=x&out=40", "POST /account/password": "old=x&new=y",
	"POST /removed": "kind=note&player=1&id=1", "POST /rounds/{round}/holes/{hole}/echo": "line=r150",
}

// filled is an address with the numbers of what the test has.
func filled(route string) string {
	return strings.NewReplacer("{round}", "1", "{year}", "2026", "{hole}", "1", "{course}", "1", "{player}", "1", "{note}", "1", "{reply}", "1", "{assignment}", "1", "{result}", "1", "{mark}", "1", "{file}", "none.css", "{guide}", "backup", "{drill}", "start-line", "{session}", "1", "{plan}", "1", "{trial}", "1", "{lesson}", "1", "{walked}", "1").Replace(route)
}

// gather reads every page that a visitor gets, and what its forms and links
// take.
func gather(t *testing.T, routes chi.Routes, v visitor) map[string]*asked {
	t.Helper()
	f := found{routes, map[string]*asked{}}
	err := chi.Walk(routes, func(method, route string, _ http.Handler, _ ...func(http.Handler) http.Handler) error {
		path := filled(route)
		f.at(method, path)
		if method == http.MethodGet {
			f.page(path, v.get(path).body)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	for name, query := range more {
		if f.all[name] == nil {
			t.Fatalf("%s is no route", name)
		}
		f.query(f.all[name], query)
	}
	return f.all
}
