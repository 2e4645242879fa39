package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"

	"golang.org/x/term"
)

// The exit statuses of every command.
const (
	exitDone    = 0
	exitRefused = 1 // the input was refused or the work failed
	exitUsage   = 2 // the command was used wrongly
)

// streams are what a command reads and writes.
type streams struct {
	in       io.Reader
	out, err io.Writer
}

// command is one subcommand: its name, what it does in a line, and the work.
type command struct {
	name, summary string
	run           func(args []string, s streams) error
}

var commands = []command{
	{"serve", "run the web app, with a private Postgres unless you name a server", serve},
	{"ready", "check that a running app and its database answer", ready},
	{"analyse", "show what every shot of the rounds in a file cost", analyse},
	{"expect", "show how many strokes a golfer takes to hole out from a place", expectStrokes},
	{"simulate", "play many rounds as a golfer of given levels, and show the scores", simulate},
	{"plan", "say what to practise, from the rounds in a file", plan},
	{"drill", "show what to reach in a practice drill, or list the drills", drill},
	{"startline", "show how straight putts start, from tries of one length", startLine},
	{"aim", "find where to aim on a hole, from its picture", aimAt},
	{"chance", "say how likely a target is on a course, and what would change that", chance},
	{"runout", "sum up how far chips run, and choose a club for one", runOut},
	{"calibrate", "fit the model golfer to the published figures again", calibrate},
}

// usageError says how a command was used wrongly, and what is allowed.
type usageError struct{ text string }

func (e usageError) Error() string { return e.text }

func usagef(format string, args ...any) error {
	return usageError{fmt.Sprintf(format, args...)}
}

// run carries out a command line and returns its exit status.
func run(args []string, s streams) int {
	if len(args) == 0 || args[0] == "help" || args[0] == "-h" || args[0] == "--help" {
		printCommands(s.out)
		return exitDone
	}
	for _, c := range commands {
		if c.name == args[0] {
			return report(c.name, c.run(args[1:], s), s.err)
		}
	}
	return report(args[0], usagef("no such command; allowed: %s", commandNames()), s.err)
}

// report prints what went wrong, one line each, and returns the exit status.
func report(name string, err error, to io.Writer) int {
	var wrong usageError
	switch {
	case err == nil || errors.Is(err, flag.ErrHelp):
		return exitDone
	case errors.As(err, &wrong):
		fmt.Fprintf(to, "strokeledger %s: %v\n", name, err)
		return exitUsage
	default:
		fmt.Fprintln(to, err)
		return exitRefused
	}
}

func printCommands(to io.Writer) {
	fmt.Fprintln(to, "strokeledger says what every golf shot cost against the score you are chasing.")
	fmt.Fprintln(to)
	for _, c := range commands {
		fmt.Fprintf(to, "  %-10s %s\n", c.name, c.summary)
	}
	fmt.Fprintln(to, "\nRun strokeledger COMMAND --help for the flags of a command.")
}

func commandNames() string {
	var names []string
	for _, c := range commands {
		names = append(names, c.name)
	}
	return strings.Join(names, ", ")
}

// parse reads flags before, between and after the other arguments, and returns those
// arguments.
func parse(flags *flag.FlagSet, args []string, s streams, use string) ([]string, error) {
	var rest []string
	flags.SetOutput(io.Discard)
	for {
		err := flags.Parse(args)
		switch {
		case errors.Is(err, flag.ErrHelp):
			fmt.Fprintf(s.out, "usage: strokeledger %s %s\n\n", flags.Name(), use)
			flags.SetOutput(s.out)
			flags.PrintDefaults()
			return nil, err
		case err != nil:
			return nil, usagef("%v", err)
		}
		if flags.NArg() == 0 {
			return rest, nil
		}
		rest = append(rest, flags.Arg(0))
		args = flags.Args()[1:]
	}
}

// given reports whether a flag was set on the command line.
func given(flags *flag.FlagSet, name string) bool {
	found := false
	flags.Visit(func(f *flag.Flag) { found = found || f.Name == name })
	return found
}

// onTerminal reports whether a stream is a terminal.
func onTerminal(w io.Writer) bool {
	file, ok := w.(*os.File)
	return ok && term.IsTerminal(int(file.Fd()))
}
