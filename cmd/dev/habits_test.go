package main

import (
	"bytes"
	"errors"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"strings"
	"testing"
)

func TestRaceSaysThatACompilerIsMissing(t *testing.T) {
	there := func(found bool) func(string) func() bool {
		return func(string) func() bool { return func() bool { return found } }
	}
	if err := compiles("clang-19 -pthread\n", there(true)); err != nil {
		t.Error(err)
	}
	for compiler, want := range map[string]string{"clang-19 -pthread\n": "clang-19", "": "gcc"} {
		err := compiles(compiler, there(false))
		if err == nil || !strings.Contains(err.Error(), "there is no "+want+" on the path. Nothing was run.") {
			t.Errorf("%q: %v", compiler, err)
		}
	}
}

func TestVulnerabilitiesFailOnlyWhenFound(t *testing.T) {
	working := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path != "/index/db.json" {
			http.NotFound(w, r)
		}
	}))
	defer working.Close()
	gone := httptest.NewServer(http.NotFoundHandler())
	gone.Close()
	lost := httptest.NewServer(http.NotFoundHandler())
	defer lost.Close()
	ends := func(code string) func() error {
		return func() error { return exec.Command("sh", "-c", "exit "+code).Run() }
	}
	for _, c := range []struct {
		name, database string
		run            func() error
		says           string
		fails          bool
	}{
		{"nothing found", working.URL, ends("0"), "clean", false},
		{"found", working.URL, ends("3"), "", true},
		{"broken off", working.URL, ends("1"), "not run to its end", false},
		{"not started", working.URL, func() error { return errors.New("no such tool") }, "not run to its end: no such tool", false},
		{"without a connection", gone.URL, ends("3"), "not run, its database does not answer", false},
		{"another site", lost.URL, ends("3"), "404 Not Found", false},
	} {
		var out bytes.Buffer
		err := seekVulnerabilities(&out, c.database, c.run)
		if (err != nil) != c.fails || !strings.Contains(out.String(), c.says) {
			t.Errorf("%s: %v, %q", c.name, err, out.String())
		}
	}
}

const profile = `mode: set
strokeledger/web/form/line.go:10.20,12.3 3 1
strokeledger/web/form/line.go:13.20,14.3 1 0
strokeledger/web/form/line_templ.go:10.20,12.3 90 0
strokeledger/handlers/serve.go:1.1,2.2 86 1
strokeledger/handlers/serve.go:3.1,4.2 14 0
strokeledger/db/db.go:3.1,4.2 14 0
`

func TestCoverCountsByPackageAndHoldsTheBar(t *testing.T) {
	covered, err := readProfile(strings.NewReader(profile))
	if err != nil {
		t.Fatal(err)
	}
	if got := covered["web/form"]; got != (coverage{4, 3}) {
		t.Errorf("web/form %+v", got)
	}
	var out bytes.Buffer
	if low := printCover(&out, covered); low != 1 {
		t.Errorf("%d packages below the bar", low)
	}
	want := "  0.0 %  db\n 86.0 %  handlers\n 75.0 %  web/form  below 85 %\n"
	if out.String() != want {
		t.Errorf("printed\n%swant\n%s", out.String(), want)
	}
	if _, err := readProfile(strings.NewReader("mode: set\nhalf a line\n")); err == nil {
		t.Error("a broken profile is read")
	}
}

// A new file that git does not know yet is formatted too; one that is gone but
// still listed does no harm.
func TestFormatting(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, args := range [][]string{{"init", "-q"}, {"add", "."}} {
		if err := os.WriteFile("gone.go", []byte("package x\n"), 0o644); err != nil {
			t.Fatal(err)
		}
		if err := command("git", args...); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Remove("gone.go"); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile("new.go", []byte("package  x\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := formatted(); err == nil || !strings.Contains(err.Error(), "new.go") {
		t.Errorf("an unformatted file: %v", err)
	}
	if err := format(); err != nil {
		t.Fatal(err)
	}
	if err := formatted(); err != nil {
		t.Error(err)
	}
}
