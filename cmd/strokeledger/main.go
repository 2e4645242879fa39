// Command strokeledger says what every golf shot cost against the score the
// player is chasing. Its subcommands work on files; run it without one to see
// them.
package main

import "os"

func main() {
	os.Exit(run(os.Args[1:], streams{os.Stdin, os.Stdout, os.Stderr}))
}
