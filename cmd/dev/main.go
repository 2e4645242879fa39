// Command dev does what a developer's machine needs: it makes a fresh one
// ready, runs the whole check, and writes the made-up season that tests and
// the README use.
package main

import (
	"errors"
	"fmt"
	"os"
	"strings"
)

// task is one subcommand.
type task struct {
	name, summary string
	run           func(args []string) error
}

// alone makes a task of one that takes no arguments.
func alone(run func() error) func([]string) error {
	return func(args []string) error {
		if len(args) > 0 {
			return errUsage
		}
		return run()
	}
}

var errUsage = errors.New("unexpected arguments")

var tasks = []task{
	{"prepare", "install what the check needs and is missing", alone(prepare)},
	{"run", "the web app with a made-up club, built and ready", alone(runApp)},
	{"check", "the whole check: formatting, templates, vet, staticcheck, all tests", alone(check)},
	{"fmt", "write every Go file as gofmt does", alone(format)},
	{"race", "the race detector over the packages that do several things at once", alone(race)},
	{"cover", "how much of each package its tests run; fails when handlers or web are below the bar", alone(cover)},
	{"gallery", "every page in every state, from made-up values; --listen 127.0.0.1:8178", serveGallery},
	{"screenshots", "a picture of every page, in screenshots/, and those of the README; --readme takes these alone", screenshots},
	{"kills", "kill the app and its Postgres again and again while holes are saved; --app 1000 --postgres 50 --seed 1", killAll},
	{"load", "many players save at once; how long they wait; --players 50 --seconds 20", loadApp},
	{"sizes", "how large files and functions are, beside the goals; --check fails when one is missed", sizes},
	{"fonts", "make the typefaces in static/fonts again, cut down to the letters that pages use", alone(cutFonts)},
	{"season", "write testdata/shots/season.csv anew", alone(writeSeason)},
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
		if len(args) > 0 && args[0] == t.name {
			if err := t.run(args[1:]); err != errUsage {
				return err
			}
		}
		names = append(names, fmt.Sprintf("  %-12s %s", t.name, t.summary))
	}
	return fmt.Errorf("give one task:\n%s", strings.Join(names, "\n"))
}
