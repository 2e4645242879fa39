package main

import (
	"fmt"
	"os"
	"os/exec"
	"strings"
	"time"
)

// step is one part of the check.
type step struct {
	name string
	args []string
}

var staticSteps = []step{
	{"go.mod", []string{"go", "mod", "tidy", "-diff"}},
	{"vet", []string{"go", "vet", "./..."}},
	{"staticcheck", []string{"go", "tool", "staticcheck", "./..."}},
}

// longest are the packages whose tests take longest. They begin first: whoever is last
// runs alone, and the browser spends half its time waiting.
var longest = []string{"./cmd/dev/browser", "./handlers"}

// check prepares the machine, looks at the source and runs every test, in an
// order that is new each time and that go test prints. The closing lines are
// those of go test.
func check() error {
	if err := prepare(); err != nil {
		return err
	}
	if err := staticChecks(); err != nil {
		return err
	}
	if err := vulnerabilities(); err != nil {
		return err
	}
	args := append([]string{"test", "-vet", "off", "-shuffle", "on", "-timeout", "14m"}, longest...) // vet has looked
	return command("go", append(args, "./...")...)
}

func staticChecks() error {
	if err := formatted(); err != nil {
		return err
	}
	if err := generated(); err != nil {
		return err
	}
	for _, s := range staticSteps {
		began := time.Now()
		if err := command(s.args[0], s.args[1:]...); err != nil {
			return fmt.Errorf("%s: %w", s.name, err)
		}
		fmt.Printf("%s: clean (%s)\n", s.name, time.Since(began).Round(time.Second))
	}
	return nil
}

// command runs a program with its output shown.
func command(name string, args ...string) error {
	c := exec.Command(name, args...)
	c.Stdout, c.Stderr = os.Stdout, os.Stderr
	if err := c.Run(); err != nil {
		return fmt.Errorf("%s: %w", join(append([]string{name}, args...)), err)
	}
	return nil
}

func join(words []string) string { return strings.Join(words, " ") }
