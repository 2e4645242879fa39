package main

import (
	"bytes"
	"errors"
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

// check prepares the machine, looks at the source and runs every test. The
// closing lines are those of go test.
func check() error {
	if err := prepare(); err != nil {
		return err
	}
	if err := static(); err != nil {
		return err
	}
	return command("go", "test", "-timeout", "14m", "./...")
}

func static() error {
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

// formatted fails when a Go file is not as gofmt writes it.
func formatted() error {
	out, err := exec.Command("git", "ls-files", "-z", "--cached", "--others", "--exclude-standard", "*.go").Output()
	if err != nil {
		return fmt.Errorf("git: %w", err)
	}
	files := strings.Split(strings.Trim(string(out), "\x00"), "\x00")
	var listed bytes.Buffer
	gofmt := exec.Command("gofmt", append([]string{"-l"}, existing(files)...)...)
	gofmt.Stdout, gofmt.Stderr = &listed, os.Stderr
	if err := gofmt.Run(); err != nil {
		return fmt.Errorf("gofmt: %w", err)
	}
	if listed.Len() > 0 {
		return errors.New("not formatted, type gofmt -w on:\n" + listed.String())
	}
	fmt.Println("gofmt: clean")
	return nil
}

// existing leaves out files that git still lists but that are gone.
func existing(files []string) []string {
	var kept []string
	for _, f := range files {
		if _, err := os.Stat(f); err == nil {
			kept = append(kept, f)
		}
	}
	return kept
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
