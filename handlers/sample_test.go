package handlers

import (
	"net/http"
	"net/url"
	"slices"
	"strings"
	"testing"

	"github.com/go-chi/chi/v5"

	"strokeledger/web/sample"
)

// Every page in every state can be read by ear, and leads only to what this
// server answers.
func TestSamplePages(t *testing.T) {
	routes := (&server{options: Options{SignUp: SignUpOpen}, hashing: newHashing(testCost, 1), uploads: newUploads()}).routes().(chi.Routes)
	for _, p := range sample.Pages() {
		var page strings.Builder
		if err := p.View.Render(t.Context(), &page); err != nil {
			t.Fatal(err)
		}
		for _, fault := range slices.Concat(unnamed(page.String()), mute(page.String()), deadEnds(routes, page.String())) {
			t.Errorf("%s: %s", p.At(), fault)
		}
	}
}

// mute lists links and buttons that a reader by ear cannot tell from others:
// those with neither text nor a label.
func mute(body string) []string {
	var found []string
	for _, t := range tags(body) {
		if t.name != "a" && t.name != "button" || t.attrs["aria-label"] != "" || t.attrs["aria-labelledby"] != "" {
			continue
		}
		_, inside, _ := strings.Cut(body[t.at:], ">")
		inside, _, _ = strings.Cut(inside, "</"+t.name+">")
		if strings.TrimSpace(tagPattern.ReplaceAllString(closing.Replace(inside), "")) == "" {
			found = append(found, "no text for "+t.name+" "+t.attrs["href"]+t.attrs["name"])
		}
	}
	return found
}

// closing takes away the closing tags of what stands inside links and buttons.
var closing = strings.NewReplacer("</span>", "", "</b>", "", "</bdi>", "", "</i>", "", "</svg>", "", "</use>", "", "</code>", "", "</path>", "", "</abbr>", "")

// deadEnds lists links, files and form actions of a page that no route answers.
func deadEnds(routes chi.Routes, body string) []string {
	var found []string
	all := tags(body)
	for _, t := range all {
		method, to := http.MethodGet, t.attrs["href"]
		switch t.name {
		case "script":
			to = t.attrs["src"]
		case "form":
			to = t.attrs["action"]
			if strings.EqualFold(t.attrs["method"], "post") {
				method = http.MethodPost
			}
		case "button", "input":
			if to = t.attrs["formaction"]; to != "" {
				method = http.MethodPost
			}
		case "a", "link":
		default:
			continue
		}
		if to == "" {
			continue
		}
		if id, here := strings.CutPrefix(to, "#"); here {
			if _, there := withID(all, id); !there {
				found = append(found, "no place "+to)
			}
			continue
		}
		if !routed(routes, method, to) {
			found = append(found, "no route for "+method+" "+to)
		}
	}
	return found
}

// routed reports whether a route answers an address of this site.
func routed(routes chi.Routes, method, to string) bool {
	address, err := url.Parse(strings.ReplaceAll(to, "&amp;", "&"))
	if err != nil || address.Host != "" || address.Scheme != "" {
		return false
	}
	return routes.Match(chi.NewRouteContext(), method, address.Path)
}

// Each of these is found.
func TestFaultsOfSamplesAreFound(t *testing.T) {
	routes := (&server{hashing: newHashing(testCost, 1), uploads: newUploads()}).routes().(chi.Routes)
	for _, page := range []string{
		`<a href="/nothing">x</a>`, `<a href="#gone">x</a>`, `<form method="post" action="/help"></form>`, `<a href="https://elsewhere.example/">x</a>`,
		`<link rel="icon" href="/nothing"/>`, `<a href="/help"></a>`, `<a href="/help"><svg><use href="#x"></use></svg></a>`, `<button name="x"> </button>`,
		`<p id="a"></p><p id="a"></p>`, `<input name="x"/>`,
	} {
		if found := slices.Concat(unnamed(page), mute(page), deadEnds(routes, page)); len(found) == 0 {
			t.Errorf("no fault in %s", page)
		}
	}
	fine := `<a href="/help?a=1&amp;b=2#x">Help</a><button aria-label="Undo"></button><form method="post" action="/sign-in"></form><a href="/rounds/7"><b>Round</b></a>`
	if found := slices.Concat(unnamed(fine), mute(fine), deadEnds(routes, fine)); len(found) > 0 {
		t.Errorf("found %v", found)
	}
}
