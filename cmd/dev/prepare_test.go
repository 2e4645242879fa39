package main

import (
	"bytes"
	"errors"
	"os"
	"slices"
	"strings"
	"testing"
)

// stage is a machine with the named programs, where an install brings what it
// names unless it fails.
type stage struct {
	machine
	there map[string]bool
	ran   []string
	said  bytes.Buffer
	fails error
}

func newStage(programs ...string) *stage {
	s := &stage{there: map[string]bool{}}
	s.has = func(program string) bool { return slices.Contains(programs, program) }
	s.freely = func() bool { return true }
	s.out = &s.said
	s.run = func(name string, args ...string) error {
		line := join(append([]string{name}, args...))
		s.ran = append(s.ran, line)
		if s.fails == nil {
			for _, word := range strings.Fields(line) {
				s.there[word] = true
			}
		}
		return s.fails
	}
	return s
}

func (s *stage) prepare() error {
	a := func(name, apt, brew string) part {
		return part{name, "for " + name, func() bool { return s.there[apt] || s.there[brew] }, apt, brew}
	}
	return prepareParts([]part{a("Postgres", "postgresql", "postgresql@17"), a("git", "git", "git"), a("npm", "npm", "node")}, s.machine)
}

const aptLine = "sh -c apt-get update -qq; DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends postgresql npm"

func TestWhatIsMissingIsInstalledWithOneCommand(t *testing.T) {
	for _, c := range []struct {
		name           string
		programs       []string
		root, terminal bool
		want           string
		asks           bool
	}{
		{"root", []string{"apt-get", "sudo"}, true, true, aptLine, false},
		{"root without sudo", []string{"apt-get"}, true, false, aptLine, false},
		{"at a terminal", []string{"apt-get", "sudo"}, false, true, "sudo " + aptLine, true},
		{"in a pipe", []string{"apt-get", "sudo"}, false, false, "sudo -n " + aptLine, false},
		{"macOS", []string{"brew", "sudo"}, false, true, "brew install postgresql@17 node", false},
		{"Homebrew on Debian", []string{"brew", "sudo", "apt-get"}, false, false, "sudo -n " + aptLine, false},
	} {
		s := newStage(c.programs...)
		s.root, s.terminal, s.there["git"] = c.root, c.terminal, true
		if err := s.prepare(); err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		if len(s.ran) != 1 || s.ran[0] != c.want {
			t.Errorf("%s: ran %q", c.name, s.ran)
		}
		said := s.said.String()
		if strings.Count(said, "Missing: Postgres (for Postgres), npm (for npm).") != 1 || strings.Contains(said, "git") {
			t.Errorf("%s: said %q", c.name, said)
		}
		if strings.Contains(said, "password") != c.asks {
			t.Errorf("%s: asks for a password, or does not say so: %q", c.name, said)
		}
	}
}

func TestWhatCannotBeInstalledIsOneMessage(t *testing.T) {
	apt := "sh -c 'apt-get update -qq; DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends postgresql git npm'"
	for _, c := range []struct {
		name     string
		programs []string
		root     bool
		freely   bool
		fails    error
		runs     int
		advice   string
	}{
		{"no sudo", []string{"apt-get"}, false, false, nil, 0, "As root, type: " + apt},
		{"sudo wants a password", []string{"apt-get", "sudo"}, false, false, nil, 0, "Type: sudo " + apt + "\nor, as root"},
		{"no network, with sudo", []string{"apt-get", "sudo"}, false, true, errors.New("exit status 100"), 1, "Type: sudo " + apt + "\nor, as root"},
		{"no network", []string{"apt-get"}, true, false, errors.New("exit status 100"), 1, "Type: " + apt},
		{"no apt-get", []string{"sudo"}, false, false, nil, 0, "Neither apt-get nor brew is here. Install the packages of your system for these; on Debian they are: postgresql git npm"},
		{"Homebrew as root", []string{"brew"}, true, false, nil, 0, "Neither apt-get nor brew"},
		{"Homebrew fails", []string{"brew"}, false, false, errors.New("exit status 1"), 1, "Type: brew install postgresql@17 git node"},
	} {
		s := newStage(c.programs...)
		s.root, s.fails = c.root, c.fails
		s.freely = func() bool { return c.freely }
		err := s.prepare()
		if err == nil {
			t.Errorf("%s: no error", c.name)
			continue
		}
		for _, want := range []string{": Postgres (for Postgres), git (for git), npm (for npm)\n", c.advice} {
			if strings.Count(err.Error(), want) != 1 {
				t.Errorf("%s: %v", c.name, err)
			}
		}
		if len(s.ran) != c.runs {
			t.Errorf("%s: ran %q", c.name, s.ran)
		}
	}
}

func TestAPackageThatDoesNotBringItsPartIsAnError(t *testing.T) {
	s := newStage("apt-get")
	s.root = true
	s.run = func(string, ...string) error { s.there["git"] = true; return nil }
	err := s.prepare()
	if err == nil || !strings.HasPrefix(err.Error(), "installed, and still missing: Postgres (for Postgres), npm (for npm)\n") {
		t.Error(err)
	}
}

func TestNothingMissingRunsNothing(t *testing.T) {
	s := newStage("apt-get", "sudo")
	s.there = map[string]bool{"postgresql": true, "git": true, "npm": true}
	if err := s.prepare(); err != nil || len(s.ran) > 0 || s.said.Len() > 0 {
		t.Errorf("%v, ran %q, said %q", err, s.ran, s.said.String())
	}
}

func TestUbuntuNamesChromiumDifferently(t *testing.T) {
	for release, want := range map[string]string{
		"NAME=\"Ubuntu\"\nID=ubuntu\nID_LIKE=debian\n": "chromium-browser",
		"ID=debian\n": "chromium", "ID=linuxmint\nID_LIKE=\"ubuntu debian\"\n": "chromium", "": "chromium",
	} {
		if got := chromiumPackage(release); got != want {
			t.Errorf("%q: %s", release, got)
		}
	}
}

func TestCommittedSeasonIsWhatIsGenerated(t *testing.T) {
	want, err := os.ReadFile("../../" + seasonFile)
	if err != nil {
		t.Fatal(err)
	}
	got, err := season()
	if err != nil || !bytes.Equal(got, want) {
		t.Errorf("%v: the season file is another; go run ./cmd/dev season", err)
	}
}

func TestTasksAreNamed(t *testing.T) {
	for _, args := range [][]string{nil, {"dance"}, {"check", "now"}} {
		if err := run(args); err == nil || !strings.Contains(err.Error(), "prepare") {
			t.Errorf("%v: %v", args, err)
		}
	}
}
