package main

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// generated fails when a committed file is not what its template makes. It
// leaves the new one in place.
func generated() error {
	before, err := templates()
	if err != nil {
		return err
	}
	if err := command("go", "tool", "templ", "generate", "-log-level", "error"); err != nil {
		return err
	}
	after, err := templates()
	if err != nil {
		return err
	}
	if stale := differing(before, after); len(stale) > 0 {
		return fmt.Errorf("not what the templates make, made anew now: %s", strings.Join(stale, ", "))
	}
	fmt.Println("templates: clean")
	return nil
}

// templates reads every generated file.
func templates() (map[string][]byte, error) {
	all := map[string][]byte{}
	err := filepath.WalkDir("web", func(path string, d fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, "_templ.go") {
			return err
		}
		all[path], err = os.ReadFile(path)
		return err
	})
	return all, err
}

func differing(before, after map[string][]byte) []string {
	var all []string
	for path, data := range after {
		if !bytes.Equal(before[path], data) {
			all = append(all, path)
		}
	}
	return all
}
