package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"

	"strokeledger/cmd/dev/browser"
)

// part is something a machine must have: how to see that it is there, and the
// command that installs it.
type part struct {
	name    string
	present func() bool
	install []string
}

// parts lists what the tests need besides Go and what Go fetches for
// itself. A part that is missing and cannot be installed is an error that names
// the command; no test is left out for want of one.
var parts = append(runParts, []part{
	{"git", onPath("git"), []string{"apt-get", "install", "-y", "--no-install-recommends", "git"}},
	{"Chromium", chromium, []string{"apt-get", "install", "-y", "--no-install-recommends", "chromium"}},
	{"npm", onPath("npm"), []string{"apt-get", "install", "-y", "--no-install-recommends", "npm"}},
	{"axe-core", exists("cmd/dev/browser/node_modules/axe-core/axe.min.js"), []string{"npm", "ci", "--no-audit", "--no-fund", "--prefix", "cmd/dev/browser"}},
}...)

// runParts is what the app itself needs.
var runParts = []part{
	{"Postgres", postgres, []string{"apt-get", "install", "-y", "--no-install-recommends", "postgresql"}},
}

func exists(file string) func() bool {
	return func() bool {
		_, err := os.Stat(file)
		return err == nil
	}
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

func prepare() error { return prepareParts(parts, command) }

func prepareParts(parts []part, run func(name string, args ...string) error) error {
	updated := false
	for _, p := range parts {
		if p.present() {
			continue
		}
		if p.install[0] == "apt-get" && !updated {
			if err := run("apt-get", "update", "-qq"); err != nil {
				return fmt.Errorf("%s is missing; as root, type: apt-get update && %s", p.name, join(p.install))
			}
			updated = true
		}
		if err := run(p.install[0], p.install[1:]...); err != nil || !p.present() {
			return fmt.Errorf("%s is missing; as root, type: %s", p.name, join(p.install))
		}
	}
	return nil
}
