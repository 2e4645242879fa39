package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"slices"
	"strings"
)

// format writes every Go file as gofmt does. Templates are left as they are:
// templ fmt takes away spaces that readers see and breaks lines of conditional
// attributes where nobody would.
func format() error { return gofmt(os.Stdout, "-l", "-w") }

// formatted fails when a Go file is not as gofmt writes it.
func formatted() error {
	var listed bytes.Buffer
	if err := gofmt(&listed, "-l"); err != nil {
		return err
	}
	if listed.Len() > 0 {
		return errors.New("not formatted, type make fmt:\n" + listed.String())
	}
	fmt.Println("gofmt: clean")
	return nil
}

// gofmt runs over every Go file that git knows, or would know.
func gofmt(out io.Writer, flags ...string) error {
	files, err := goFiles()
	if err != nil {
		return err
	}
	c := exec.Command("gofmt", append(flags, files...)...)
	c.Stdout, c.Stderr = out, os.Stderr
	if err := c.Run(); err != nil {
		return fmt.Errorf("gofmt: %w", err)
	}
	return nil
}

// goFiles lists the Go files of the tree, without those that git still lists
// but that are gone.
func goFiles() ([]string, error) {
	out, err := exec.Command("git", "ls-files", "-z", "--cached", "--others", "--exclude-standard", "*.go").Output()
	if err != nil {
		return nil, fmt.Errorf("git: %w", err)
	}
	files := strings.Split(strings.Trim(string(out), "\x00"), "\x00")
	return slices.DeleteFunc(files, func(file string) bool { return !exists(file) }), nil
}
