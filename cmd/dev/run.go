package main

import (
	"os"
	"os/exec"
	"syscall"
)

// runApp builds the program and becomes it, with a made-up club to explore. A
// server named in DATABASE_URL gets no demo.
func runApp() error {
	if os.Getenv("DATABASE_URL") == "" {
		if err := prepareParts(runParts, thisMachine()); err != nil {
			return err
		}
	}
	const program = "build/strokeledger"
	if err := command("go", "build", "-o", program, "./cmd/strokeledger"); err != nil {
		return err
	}
	args := []string{program, "serve"}
	if os.Getenv("DATABASE_URL") == "" {
		args = append(args, "--demo", "--sign-up", "open")
	}
	found, err := exec.LookPath("./" + program)
	if err != nil {
		return err
	}
	return syscall.Exec(found, args, os.Environ())
}
