package main

import (
	"flag"
	"fmt"
	"net/http"
	"time"

	"strokeledger/web/paths"
)

// readyTime is how long a running app may take to say that it is ready.
const readyTime = 4 * time.Second

// ready asks a running app whether it and its database answer. It serves as the
// health check of a container.
func ready(args []string, s streams) error {
	flags := flag.NewFlagSet("ready", flag.ContinueOnError)
	address := flags.String("address", "127.0.0.1:8177", "address and port on which the app listens")
	rest, err := parse(flags, args, s, "[--address ADDRESS]")
	if err != nil {
		return err
	}
	if len(rest) > 0 {
		return usagef("unexpected argument %q", rest[0])
	}
	client := http.Client{Timeout: readyTime}
	got, err := client.Get("http://" + *address + paths.Ready)
	if err != nil {
		return err
	}
	defer got.Body.Close()
	if got.StatusCode != http.StatusOK {
		return fmt.Errorf("not ready: %s", got.Status)
	}
	fmt.Fprintln(s.out, "ready")
	return nil
}
