package main

import (
	"go/parser"
	"go/token"
	"os"
	"strings"
	"testing"
)

func documentRules(t *testing.T) rules {
	file, err := os.Open("../../DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	r, err := readRules(file)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestImportsFollowTheDocument(t *testing.T) {
	packages, err := tree("../..")
	if err != nil {
		t.Fatal(err)
	}
	if len(packages) < 10 {
		t.Fatalf("%d packages", len(packages))
	}
	for _, fault := range documentRules(t).broken(packages) {
		t.Error(fault)
	}
}

func TestSourceKeepsTheLimits(t *testing.T) {
	packages, err := tree("../..")
	if err != nil {
		t.Fatal(err)
	}
	rules := documentRules(t)
	for _, p := range packages {
		faults, err := sourceFaults(p, rules.longestFunction(p.ImportPath))
		if err != nil {
			t.Fatal(err)
		}
		for _, fault := range faults {
			t.Error(fault)
		}
	}
}

// The test can fail: each of these imports is forbidden by the document.
func TestForbiddenImportsAreFound(t *testing.T) {
	r := documentRules(t)
	own := func(name string) string { return module + "/" + name }
	for _, c := range []struct {
		pkg, imports string
		inTest       bool
	}{
		{"analysis/golf", own("analysis/stat"), false},
		{"analysis/golf", "context", false},
		{"analysis/account", own("analysis/golfer"), false},
		{"analysis/compare", own("analysis/forecast"), false},
		{"analysis/stat", own("analysis/golf"), false},
		{"analysis/expect", own("analysis/golf/golftest"), false},
		{"analysis", own("db"), false},
		{"handlers", "github.com/jackc/pgx/v5", false},
		{"db", "github.com/go-chi/chi/v5", false},
		{"handlers", own("db/dbtest"), false},
		{"handlers", own("analysis/compare"), false},
		{"handlers", own("analysis/account"), false},
		{"web/statement", "net/http", false},
		{"web/coach", own("web/months"), false},
		{"analysis", own("cmd/dev"), true},
		{"analysis/unheard", own("analysis/golf"), false},
	} {
		p := listed{ImportPath: own(c.pkg), Imports: []string{c.imports}}
		if c.inTest {
			p.Imports, p.TestImports = nil, p.Imports
		}
		if len(r.broken([]listed{p})) == 0 {
			t.Errorf("%s may import %s", c.pkg, c.imports)
		}
	}
	fine := listed{ImportPath: own("analysis/account"), Imports: []string{"math", own("analysis/expect")}, TestImports: []string{own("analysis/golf/golftest")}}
	if faults := r.broken([]listed{fine}); len(faults) > 0 {
		t.Errorf("a lawful import is forbidden: %v", faults)
	}
}

func TestFaultsOfSourceAreFound(t *testing.T) {
	source := "package x\n\nimport (\"time\"; \"math/rand/v2\")\n\nfunc Bare() { time.Now(); rand.IntN(3) }\n\ntype Bald int\n\nfunc long() {\n" +
		strings.Repeat("\tBare()\n", 70) + "}\n"
	files := token.NewFileSet()
	parsed, err := parser.ParseFile(files, "x.go", source, parser.ParseComments)
	if err != nil {
		t.Fatal(err)
	}
	got := strings.Join(fileFaults("x.go", files, parsed, documentRules(t).longestFunction(module+"/analysis"), true), "\n")
	for _, want := range []string{"Bare has no comment", "Bald has no comment", "time.Now", "rand.IntN", "long has 72 lines"} {
		if !strings.Contains(got, want) {
			t.Errorf("not found: %s, in\n%s", want, got)
		}
	}
}

// Handlers are shorter than other functions, by the document.
func TestHandlersAreShort(t *testing.T) {
	r := documentRules(t)
	if own, others := r.longestFunction(module+"/handlers"), r.longestFunction(module+"/db"); own != 25 || others != 60 {
		t.Errorf("%d lines in handlers, %d elsewhere", own, others)
	}
	files := token.NewFileSet()
	parsed, err := parser.ParseFile(files, "x.go", "package x\n\nfunc long() {\n"+strings.Repeat("\tlong()\n", 24)+"}\n", parser.ParseComments)
	if err != nil {
		t.Fatal(err)
	}
	if faults := fileFaults("x.go", files, parsed, 25, false); len(faults) != 1 || !strings.Contains(faults[0], "26 lines; at most 25") {
		t.Errorf("%v", faults)
	}
}

func TestDocumentWithoutTablesIsRefused(t *testing.T) {
	if _, err := readRules(strings.NewReader("# nothing\n")); err == nil {
		t.Error("no table, no fault")
	}
}
