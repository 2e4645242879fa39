package layout

import (
	"slices"
	"strings"
	"testing"

	"strokeledger/static"
	"strokeledger/web/paths"
)

func rendered(t *testing.T, p Page) string {
	t.Helper()
	var html strings.Builder
	if err := Shell(p).Render(t.Context(), &html); err != nil {
		t.Fatal(err)
	}
	return html.String()
}

// A page of a pupil belongs to the coach's entry of the navigation, whatever
// entry it has for the player.
func TestHere(t *testing.T) {
	if got := Here(paths.Whose{Player: 7, Own: true}, paths.Rounds); got != paths.Rounds {
		t.Errorf("the player is at %s", got)
	}
	if got := Here(paths.Whose{Player: 7}, paths.Rounds); got != paths.Coaching {
		t.Errorf("the coach is at %s", got)
	}
}

// The head and the foot lead to the same places, and both mark where the page is.
func TestNavigationStandsAtHeadAndFoot(t *testing.T) {
	for _, teaches := range []bool{false, true} {
		p := Page{Player: "Robin", ID: 1, Here: paths.Rounds, Teaches: teaches}
		html := rendered(t, p)
		for _, d := range append(p.Navigation(), p.OwnGame()...) {
			link := `<a href="` + d.At + `">` + d.Name
			if d.Current != "" {
				link = `<a href="` + d.At + `" aria-current="` + d.Current + `">` + d.Name
			}
			if strings.Count(html, link+"</a>") != 2 {
				t.Errorf("%s is not twice in %s", link, html)
			}
		}
	}
	if html := rendered(t, Page{Player: "Robin", ID: 1}); strings.Contains(html, "aria-current") {
		t.Error("a page that belongs nowhere is marked")
	}
}

func TestShell(t *testing.T) {
	nobody, robin := Page{Title: "Sign in"}, Page{Title: "Rounds", Player: "Robin <Calder>", ID: 12}
	for _, c := range []struct {
		name        string
		page        Page
		has, hasNot string
	}{
		{"title", nobody, "<title>Sign in · Strokeledger</title>", ""},
		{"what is new is counted", Page{Player: "Robin", ID: 12, Notices: 4}, `<a href="/notices">Notices <b>4</b></a>`, ""},
		{"nothing is new", robin, `<a href="/notices">Notices</a>`, ""},
		{"nobody has no navigation", nobody, `data-player=""`, "<nav"},
		{"a name cannot be markup", robin, "<bdi>Robin &lt;Calder&gt;</bdi>", "<Calder>"},
		{"what waits is kept by player", robin, `data-player="12"`, ""},
		{"what waits is shown", robin, `class="waiting-bar"`, ""},
		{"nobody has anything waiting", nobody, "<main", "waiting"},
		{"a hole shows itself what waits", Page{Player: "Robin", ID: 12, BodyClass: "entry-page"}, `<body class="entry-page"`, "waiting-bar"},
		{"what just happened", Page{Flash: "Saved."}, `<p class="notice" role="status">Saved.</p>`, ""},
		{"nothing happened", robin, "<main", `class="notice"`},
		{"the way back", Page{Undo: &Undo{Text: "The round is removed.", What: "round-3"}}, `<input type="hidden" name="what" value="round-3">`, ""},
		{"what numbers mean", Page{Foot: "Per 18 holes."}, "<p>Per 18 holes.</p>", ""},
		{"help", nobody, `<a href="/help">How to read this</a>`, ""},
		{"help with this page", Page{Explained: "sure"}, `<a href="/help#sure">How to read this</a>`, ""},
		{"no script", nobody, "<main", "<script"},
	} {
		html := rendered(t, c.page)
		if !strings.Contains(html, c.has) || c.hasNot != "" && strings.Contains(html, c.hasNot) {
			t.Errorf("%s: %s", c.name, html)
		}
	}
}

// A hole is not shown before its script can take keys, and what the script
// imports is fetched with it.
func TestScripts(t *testing.T) {
	html := rendered(t, Page{Script: "entry.js", BodyClass: "entry-page"})
	for _, module := range (Page{Script: "entry.js"}).Modules() {
		if !strings.Contains(html, `<link rel="modulepreload" href="`+static.URL(module)+`">`) {
			t.Errorf("%s is not fetched with the script: %s", module, html)
		}
	}
	if !strings.Contains(html, `src="`+static.URL("entry.js")+`" blocking="render"`) {
		t.Errorf("the page does not wait for its script: %s", html)
	}
	if html := rendered(t, Page{Script: "course.js"}); strings.Contains(html, "modulepreload") || strings.Contains(html, "blocking") {
		t.Errorf("another page waits: %s", html)
	}
}

// What a hole needs without a connection includes what its page fetches.
func TestEntryFiles(t *testing.T) {
	kept := strings.Join(EntryFiles(), " ")
	for _, name := range slices.Concat([]string{"app.css", "entry.js"}, Page{Script: "entry.js"}.Modules(), Page{BodyClass: "entry-page"}.Fonts()) {
		if !strings.Contains(kept, static.URL(name)) {
			t.Errorf("%s is not kept", name)
		}
	}
}
