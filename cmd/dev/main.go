// Command dev does what a developer's machine needs: it makes a fresh one
// ready, runs the whole check, and writes the made-up season that tests and
// the README use.
package main

import (
	"fmt"
	"os"
	"strings"
)

// task is one subcommand.
type task struct {
	name, summary string
	run           func() error
}

var tasks = []task{
	{"prepare", "install what the check needs and is missing", prepare},
	{"run", "the web app with a made-up club, built and ready", runApp},
	{"check", "the whole check: formatting, templates, vet, staticcheck, all tests", check},
	{"screenshots", "a picture of every page, in screenshots/", screenshots},
	{"season", "write testdata/shots/season.csv anew", writeSeason},
}

func main() {
	if err := run(os.Args[1:]); err != nil {
		fmt.Fprintln(os.Stderr, "dev:", err)
		os.Exit(1)
	}
}

func run(args []string) error {
	var names []string
	for _, t := range tasks {
		if len(args) == 1 && args[0] == t.name {
			return t.run()
		}
		names = append(names, fmt.Sprintf("  %-12s %s", t.name, t.summary))
	}
	return fmt.Errorf("give one task:\n%s", strings.Join(names, "\n"))
}
