// Command strokeledger runs the web app, and works on files of golf rounds: it says
// what every shot cost against the score the player is chasing. Run it without a
// subcommand to list them.
package main

import "os"

func main() {
	os.Exit(run(os.Args[1:], streams{os.Stdin, os.Stdout, os.Stderr}))
}
