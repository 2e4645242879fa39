package main

import (
	"io"
	"os"
	"os/exec"
	"strings"

	"golang.org/x/term"
)

// machine is what there is to install with.
type machine struct {
	root     bool // the user is root
	terminal bool // somebody is there to type a password
	has      func(program string) bool
	freely   func() bool // sudo asks for no password
	run      func(name string, args ...string) error
	out      io.Writer
}

func thisMachine() machine {
	return machine{
		root:     os.Geteuid() == 0,
		terminal: term.IsTerminal(int(os.Stdin.Fd())) && term.IsTerminal(int(os.Stdout.Fd())),
		has:      func(program string) bool { return onPath(program)() },
		freely:   func() bool { return exec.Command("sudo", "-n", "true").Run() == nil },
		run:      command,
		out:      os.Stdout,
	}
}

// installer is one command that installs everything that is missing.
type installer struct {
	run    []string // nil when it may not be run from here
	typed  string   // the same, as a person types it
	advice string   // what to do when it was not run, or failed
}

// installer chooses apt-get, as root or through sudo, or Homebrew. A password
// is asked for at a terminal only; elsewhere sudo answers at once.
func (m machine) installer(missing []part) installer {
	apt, brew := "", ""
	for _, p := range missing {
		apt, brew = apt+" "+p.apt, brew+" "+p.brew
	}
	// A list of packages that could not be brought up to date may still do.
	script := "apt-get update -qq; DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends" + apt
	quoted := "sh -c '" + script + "'"
	switch {
	case !m.has("apt-get") && m.has("brew") && !m.root: // Homebrew refuses to be root
		return installer{append([]string{"brew", "install"}, strings.Fields(brew)...), "brew install" + brew, "Type: brew install" + brew}
	case !m.has("apt-get"):
		return installer{advice: "Neither apt-get nor brew is here. Install the packages of your system for these; on Debian they are:" + apt}
	case m.root:
		return installer{[]string{"sh", "-c", script}, quoted, "Type: " + quoted}
	case !m.has("sudo"):
		return installer{advice: "As root, type: " + quoted}
	case m.terminal:
		return installer{[]string{"sudo", "sh", "-c", script}, "sudo " + quoted + "\nsudo may ask for your password.", withSudo(quoted)}
	case m.freely():
		return installer{[]string{"sudo", "-n", "sh", "-c", script}, "sudo -n " + quoted, withSudo(quoted)}
	default:
		return installer{advice: withSudo(quoted)}
	}
}

func withSudo(quoted string) string {
	return "Type: sudo " + quoted + "\nor, as root, the same without sudo."
}
