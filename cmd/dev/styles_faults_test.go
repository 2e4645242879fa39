package main

import (
	"go/parser"
	"go/token"
	"strings"
	"testing"
)

func TestFaultsOfStylesAreFound(t *testing.T) {
	for _, c := range []struct{ sheet, script, page, want string }{
		{".notice { color: red }", "", `package p; const a = "<p class=\"notice\">"`, ""},
		{"@media (max-width: 43.99rem) { p .notice, b { gap: .5rem } }", "", `package p; var f = Field{Class: "notice"}`, ""},
		{".notice {}", "", `package p; var attr = []any{"notice", kv.KV("button", key == "q")}`, "button: a class that no rule and no script knows"},
		{".notice {} .button {}", "", `package p; func noticeClass() string { return "notice" }`, "button: a rule for a class that nothing has"},
		{".notice {}", "", `package p; func mark(n int, class string) {}; func init() { mark(1, "notice other-notice") }`, "other-notice: a class that no rule and no script knows"},
		{".notice {}", "", `package p; func init() { page.Title, page.BodyClass = "Report", "notice" }`, ""},
		{".notice {}", `form.querySelector(".button")`, `package p; const a = "<p class=\"notice\">"`, "button: a script looks for a class that nothing has"},
		{".notice {}", `form.querySelector(".button")`, `package p; const a = "<p class=\"notice button\">"`, ""},
		{".notice {} .late {}", `row.className = "notice"; row.classList.toggle("late", yes)`, `package p`, ""},
		{".btn {}", "", `package p; const a = "<p class=\"btn\">"`, "btn: too short to say what it is btn: too short to say what it is"},
		{".c-tee {}", `row.className = "c-tee"`, `package p`, "c-tee: too short to say what it is c-tee: too short to say what it is"},
		{"p { --space: 1rem; gap: var(--room) }", "", `package p`, "--space: a custom property that no rule reads --room: a custom property that no rule sets"},
		{"/* .gone { gap: var(--gone) } */ p { --space: 1rem; gap: var(--space) }", "", `package p`, ""},
	} {
		s := newStyling()
		s.sheet(c.sheet)
		s.script(c.script)
		file, err := parser.ParseFile(token.NewFileSet(), "page.go", c.page, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		takes := map[string]int{}
		takers(file, takes)
		s.page(file, takes)
		if got := strings.Join(s.faults(), " "); got != c.want {
			t.Errorf("%s, %s, %s: %q, want %q", c.sheet, c.script, c.page, got, c.want)
		}
	}
}
