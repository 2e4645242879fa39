package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"time"

	"strokeledger/cmd/dev/trial"
)

// loadApp lets many players save at once and prints how long they wait.
func loadApp(args []string) error {
	crowd := trial.Crowd{Root: "."}
	flags := flag.NewFlagSet("load", flag.ContinueOnError)
	flags.IntVar(&crowd.Players, "players", 50, "players at once")
	seconds := flags.Int("seconds", 20, "how long they save, each a hole a second")
	if err := flags.Parse(args); err != nil {
		return err
	}
	if flags.NArg() > 0 || crowd.Players < 1 || crowd.Players > 1000 || *seconds < 1 || *seconds > 600 {
		return errors.New("load [--players N] [--seconds S]; allowed: 1 to 1000 players, 1 to 600 seconds")
	}
	crowd.Time = time.Duration(*seconds) * time.Second
	waits, err := trial.Load(crowd, os.Stderr)
	if err != nil {
		return err
	}
	fmt.Println(waits)
	if waits.Failures > 0 {
		return fmt.Errorf("%d saves failed", waits.Failures)
	}
	return nil
}
