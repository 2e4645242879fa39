package main

import (
	"flag"
	"fmt"
	"os"

	"strokeledger/cmd/dev/trial"
)

// killAll kills the app and its Postgres many times while holes are saved, and
// fails when a save that was acknowledged is lost.
func killAll(args []string) error {
	plan := trial.Plan{Root: "."}
	flags := flag.NewFlagSet("kills", flag.ContinueOnError)
	flags.IntVar(&plan.App, "app", 1000, "kills of the app")
	flags.IntVar(&plan.Postgres, "postgres", 50, "kills of its Postgres")
	flags.Uint64Var(&plan.Seed, "seed", 1, "of the moments and the order")
	if err := flags.Parse(args); err != nil {
		return err
	}
	if flags.NArg() > 0 || plan.App < 0 || plan.Postgres < 0 {
		return fmt.Errorf("kills [--app N] [--postgres M] [--seed S]; allowed: counts from 0 up")
	}
	result, err := trial.Run(plan, os.Stderr)
	fmt.Println(result)
	if err != nil {
		return err
	}
	return result.Err()
}
