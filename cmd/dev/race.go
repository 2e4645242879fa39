package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"strings"
)

// raced are the packages that do several things at once, and those whose tests
// ask them from several sides. The rest of the engine is pure.
var raced = []string{"./analysis/parallel", "./analysis/forecast", "./static", "./db/...", "./handlers", "./cmd/strokeledger"}

// race runs their tests under the race detector.
func race() error {
	compiler, err := exec.Command("go", "env", "CC").Output()
	if err != nil {
		return fmt.Errorf("go env: %w", err)
	}
	if err := compiles(string(compiler), onPath); err != nil {
		return err
	}
	if err := prepareParts(runParts, thisMachine()); err != nil {
		return err
	}
	c := exec.Command("go", append([]string{"test", "-race", "-timeout", "30m"}, raced...)...)
	c.Stdout, c.Stderr, c.Env = os.Stdout, os.Stderr, append(os.Environ(), "CGO_ENABLED=1")
	return c.Run()
}

// compiles says plainly when the C compiler that Go would use is not there. It
// may have arguments of its own.
func compiles(compiler string, there func(program string) func() bool) error {
	words := strings.Fields(compiler)
	if len(words) == 0 {
		words = []string{"gcc"}
	}
	if !there(words[0])() {
		return errors.New("the race detector needs a C compiler, and there is no " + words[0] + " on the path. Nothing was run. On Debian: apt-get install gcc")
	}
	return nil
}
