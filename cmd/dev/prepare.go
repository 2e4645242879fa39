package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"strokeledger/cmd/dev/browser"
)

// part is something a machine must have besides Go and what Go fetches for
// itself: what it is for, how to see that it is there, and the package that
// brings it on Debian and with Homebrew.
type part struct {
	name, why string
	present   func() bool
	apt, brew string
}

// parts lists what the tests need; no test is left out for want of one.
var parts = append(runParts, []part{
	{"git", "lists the files to check", onPath("git"), "git", "git"},
	{"Chromium", "runs the browser tests", chromium, chromiumPackage(osRelease()), "google-chrome"},
	{"npm", "fetches axe-core, which looks for barriers on pages", onPath("npm"), "npm", "node"},
}...)

// runParts is what the app itself needs.
var runParts = []part{
	{"Postgres", "keeps the rounds", postgres, "postgresql", "postgresql@17"},
}

// axeCore comes from npm, into the source tree, so nobody needs to be root.
const axeCore = "cmd/dev/browser/node_modules/axe-core/axe.min.js"

func exists(file string) bool {
	_, err := os.Stat(file)
	return err == nil
}

func chromium() bool {
	_, err := browser.Chromium()
	return err == nil
}

// postgres looks where Debian and Homebrew put the server, and on the path.
func postgres() bool {
	for _, pattern := range []string{"/usr/lib/postgresql/*/bin/initdb", "/opt/homebrew/opt/postgresql*/bin/initdb", "/usr/local/opt/postgresql*/bin/initdb"} {
		if found, _ := filepath.Glob(pattern); len(found) > 0 {
			return true
		}
	}
	return onPath("initdb")()
}

func onPath(name string) func() bool {
	return func() bool {
		_, err := exec.LookPath(name)
		return err == nil
	}
}

func osRelease() string {
	text, _ := os.ReadFile("/etc/os-release")
	return string(text)
}

// chromiumPackage is the name of Chromium's package: Ubuntu has another.
func chromiumPackage(release string) string {
	for line := range strings.Lines(release) {
		if strings.TrimSpace(line) == "ID=ubuntu" {
			return "chromium-browser"
		}
	}
	return "chromium"
}

func prepare() error {
	if err := prepareParts(parts, thisMachine()); err != nil {
		return err
	}
	if exists(axeCore) {
		return nil
	}
	return command("npm", "ci", "--no-audit", "--no-fund", "--prefix", "cmd/dev/browser")
}

// prepareParts installs every missing part with one command, or says in one
// message what is missing and what to type.
func prepareParts(parts []part, m machine) error {
	missing := lacking(parts)
	if len(missing) == 0 {
		return nil
	}
	way := m.installer(missing)
	if way.run == nil {
		return tell("missing", missing, way)
	}
	fmt.Fprintf(m.out, "Missing: %s.\nInstalling with: %s\n", reasons(missing), way.typed)
	err := m.run(way.run[0], way.run[1:]...)
	missing = lacking(parts)
	switch {
	case len(missing) == 0:
		return nil
	case err != nil:
		return tell("missing, and not installed", missing, m.installer(missing))
	default:
		return tell("installed, and still missing", missing, installer{advice: "Where Chromium comes as a snap and no snaps run, as in a container, install Google Chrome or a Chromium of another source; both are found on the path."})
	}
}

func lacking(parts []part) []part {
	var missing []part
	for _, p := range parts {
		if !p.present() {
			missing = append(missing, p)
		}
	}
	return missing
}

// tell is the one message about everything that is missing.
func tell(how string, missing []part, way installer) error {
	return errors.New(how + ": " + reasons(missing) + "\n" + way.advice)
}

func reasons(missing []part) string {
	var all []string
	for _, p := range missing {
		all = append(all, p.name+" ("+p.why+")")
	}
	return strings.Join(all, ", ")
}
