package main

import (
	"bytes"
	"errors"
	"os"
	"strings"
	"testing"
)

func TestMissingPartsAreInstalledOnce(t *testing.T) {
	there := map[string]bool{"a": true}
	var ran []string
	install := func(name string, args ...string) error {
		ran = append(ran, join(append([]string{name}, args...)))
		there[args[len(args)-1]] = true
		return nil
	}
	aPart := func(name string) part {
		return part{name, func() bool { return there[name] }, []string{"apt-get", "install", "-y", name}}
	}
	if err := prepareParts([]part{aPart("a"), aPart("b"), aPart("c")}, install); err != nil {
		t.Fatal(err)
	}
	if got := strings.Join(ran, "; "); got != "apt-get update -qq; apt-get install -y b; apt-get install -y c" {
		t.Error(got)
	}
}

func TestAMissingPartNamesItsCommand(t *testing.T) {
	missing := part{"postgres", func() bool { return false }, []string{"apt-get", "install", "-y", "postgresql"}}
	for _, result := range []error{nil, errors.New("not root")} {
		err := prepareParts([]part{missing}, func(string, ...string) error { return result })
		if err == nil || !strings.Contains(err.Error(), "apt-get install -y postgresql") {
			t.Errorf("%v", err)
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
