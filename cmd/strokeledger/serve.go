package main

import (
	"context"
	"crypto/rand"
	"errors"
	"flag"
	"fmt"
	"log/slog"
	"net"
	"net/http"
	"net/netip"
	"os"
	"os/signal"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"time"

	"strokeledger/db"
	"strokeledger/db/local"
	"strokeledger/handlers"
)

// serveConfig is how the web app is run.
type serveConfig struct {
	listen   string
	database string // URL of a server; empty for a private one in data
	data     string
	signUp   string
	tls      bool // a proxy in front speaks TLS
	proxies  []string
	address  string // of the site; empty for any
	demo     bool
}

// serve runs the web app until it is told to stop.
func serve(args []string, s streams) error {
	config, err := readServeConfig(args, s)
	if err != nil {
		return err
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	log := slog.New(slog.NewTextHandler(s.err, nil))
	if config.database == "" {
		locked, running, err := lockData(config.data)
		if err != nil {
			return err
		}
		if running != "" {
			fmt.Fprintf(s.out, "already running on http://%s\n", running)
			return nil
		}
		defer locked.Close()
		if err := os.WriteFile(addressFile(config.data), nil, 0o600); err != nil { // a killed run's is of no use
			return err
		}
		postgres, err := local.Start(filepath.Join(config.data, "postgres"))
		if err != nil {
			return err
		}
		defer postgres.Stop()
		postgres.Watch(log)
		config.database = postgres.URL
		defer os.WriteFile(addressFile(config.data), nil, 0o600)
	}
	return runServer(ctx, config, s, log)
}

func runServer(ctx context.Context, config serveConfig, s streams, log *slog.Logger) error {
	store, err := db.Open(ctx, config.database)
	if err != nil {
		return err
	}
	defer store.Close()
	if config.demo {
		if err := fillDemo(ctx, store, config.data, s); err != nil {
			return err
		}
	}
	options := handlers.Options{SignUp: handlers.SignUp(config.signUp), Secure: config.tls, Proxies: config.proxies, Address: config.address, SetupToken: rand.Text(), Log: log}
	any, err := store.AnyPlayer(ctx)
	if err != nil {
		return err
	}
	listener, err := net.Listen("tcp", config.listen)
	if err != nil {
		return fmt.Errorf("%s cannot be listened on: %w", config.listen, err)
	}
	if config.data != "" {
		if err := os.WriteFile(addressFile(config.data), []byte(listener.Addr().String()), 0o600); err != nil {
			return err
		}
	}
	if config.unguarded() {
		options.Log.Warn("other machines may reach this address without TLS, so passwords may cross the network unencrypted; see --behind-tls", "listen", config.listen)
	}
	if config.address != "" {
		fmt.Fprintf(s.out, "Strokeledger is at %s, and listens on %s\n", config.address, listener.Addr())
	} else {
		fmt.Fprintf(s.out, "Strokeledger is at http://%s\n", listener.Addr())
	}
	if !any {
		fmt.Fprintf(s.out, "Make the first account with the setup token %s\n", options.SetupToken)
	}
	sweeping, stopSweeping := context.WithCancel(ctx)
	var sweeper sync.WaitGroup
	sweeper.Go(func() { store.SweepDaily(sweeping, log) })
	defer func() { stopSweeping(); sweeper.Wait() }()
	return serveUntil(ctx, listener, handlers.New(store, options))
}

// How long a request may take to arrive and to be answered, and how long a
// stop waits for those in flight.
const (
	headerTime   = 10 * time.Second
	requestTime  = time.Minute
	shutdownTime = 20 * time.Second
)

// serveUntil answers requests until the context ends, and then finishes those
// in flight.
func serveUntil(ctx context.Context, listener net.Listener, handler http.Handler) error {
	server := &http.Server{Handler: handler, ReadHeaderTimeout: headerTime, ReadTimeout: requestTime, WriteTimeout: requestTime}
	failed := make(chan error, 1)
	go func() { failed <- server.Serve(listener) }()
	select {
	case err := <-failed:
		return err
	case <-ctx.Done():
	}
	quiet, cancel := context.WithTimeout(context.Background(), shutdownTime)
	defer cancel()
	return server.Shutdown(quiet)
}

// readServeConfig reads flags and the environment; a flag wins.
func readServeConfig(args []string, s streams) (serveConfig, error) {
	var c serveConfig
	flags := flag.NewFlagSet("serve", flag.ContinueOnError)
	flags.StringVar(&c.listen, "listen", env("STROKELEDGER_LISTEN", "127.0.0.1:8177"), "address and port to listen on (STROKELEDGER_LISTEN)")
	flags.StringVar(&c.database, "database", os.Getenv("DATABASE_URL"), "URL of a Postgres server; none starts a private one (DATABASE_URL)")
	flags.StringVar(&c.data, "data", os.Getenv("STROKELEDGER_DATA"), "data folder of the private Postgres (STROKELEDGER_DATA); without it the user's own")
	flags.StringVar(&c.signUp, "sign-up", env("STROKELEDGER_SIGN_UP", "invitation"), "who may make an account: open, invitation or closed (STROKELEDGER_SIGN_UP)")
	flags.BoolVar(&c.tls, "behind-tls", os.Getenv("STROKELEDGER_BEHIND_TLS") == "yes", "a proxy in front speaks TLS, so cookies are sent over TLS only; --proxies names it (STROKELEDGER_BEHIND_TLS=yes)")
	proxies := flags.String("proxies", os.Getenv("STROKELEDGER_PROXIES"), "address ranges of proxies in front, with commas, as 10.0.0.0/8 (STROKELEDGER_PROXIES)")
	flags.StringVar(&c.address, "address", os.Getenv("STROKELEDGER_ADDRESS"), "address of the site, as https://golf.example.org: links are made from it, and requests for other hosts are refused (STROKELEDGER_ADDRESS)")
	flags.BoolVar(&c.demo, "demo", false, "put a made-up club with a player and a season into the private Postgres")
	rest, err := parse(flags, args, s, "[--listen ADDRESS] [--database URL] [--data FOLDER] [--sign-up WHO] [--behind-tls] [--proxies RANGES] [--address URL] [--demo]")
	if err != nil {
		return c, err
	}
	if len(rest) > 0 {
		return c, usagef("unexpected argument %q", rest[0])
	}
	if tls := os.Getenv("STROKELEDGER_BEHIND_TLS"); tls != "" && tls != "yes" && tls != "no" {
		return c, usagef("STROKELEDGER_BEHIND_TLS %q; allowed: yes, no", tls)
	}
	for prefix := range strings.SplitSeq(*proxies, ",") {
		if prefix = strings.TrimSpace(prefix); prefix == "" {
			continue
		}
		if _, err := netip.ParsePrefix(prefix); err != nil {
			return c, usagef("--proxies %q; allowed: address ranges with commas, as 10.0.0.0/8", *proxies)
		}
		c.proxies = append(c.proxies, prefix)
	}
	return c, c.check()
}

func env(name, otherwise string) string {
	if value := os.Getenv(name); value != "" {
		return value
	}
	return otherwise
}

// check refuses what cannot be meant, with the name, the value and what is
// allowed.
func (c *serveConfig) check() error {
	host, _, err := net.SplitHostPort(c.listen)
	if err != nil {
		return usagef("--listen %q; allowed: ADDRESS:PORT, as 127.0.0.1:8177", c.listen)
	}
	switch handlers.SignUp(c.signUp) {
	case handlers.SignUpOpen, handlers.SignUpInvitation, handlers.SignUpClosed:
	default:
		return usagef("--sign-up %q; allowed: open, invitation, closed", c.signUp)
	}
	if err := c.checkFront(); err != nil {
		return err
	}
	if c.demo && c.database != "" {
		return usagef("--demo with a named database; allowed: the private one only, since its passwords are printed")
	}
	if c.demo && !loopback(host) {
		return usagef("--demo with --listen %q; allowed: a loopback address, as 127.0.0.1:8177", c.listen)
	}
	if c.database == "" && c.data == "" {
		if c.data, err = ownData(); err != nil {
			return err
		}
	}
	if c.database != "" {
		c.data = ""
	}
	return nil
}

// checkFront refuses settings of the proxy in front that do not fit together.
func (c *serveConfig) checkFront() (err error) {
	if c.tls && len(c.proxies) == 0 {
		return usagef("--behind-tls without --proxies, so all visitors would count as one; name the address ranges of the proxy, as --proxies 127.0.0.1/32")
	}
	if c.address == "" {
		return nil
	}
	if c.address, err = handlers.ParseAddress(c.address); err != nil {
		return usagef("--address %v", err)
	}
	if c.tls != strings.HasPrefix(c.address, "https://") {
		return usagef("--address %q; allowed: https with --behind-tls, http without", c.address)
	}
	return nil
}

// unguarded is an address that other machines may reach, without TLS.
func (c *serveConfig) unguarded() bool {
	host, _, _ := net.SplitHostPort(c.listen)
	return !c.tls && !loopback(host)
}

func loopback(host string) bool {
	ip := net.ParseIP(host)
	return host == "localhost" || ip != nil && ip.IsLoopback()
}

// ownData is the data folder of whoever runs this.
func ownData() (string, error) {
	if os.Geteuid() == 0 {
		return "/var/lib/strokeledger", nil
	}
	if named := os.Getenv("XDG_DATA_HOME"); named != "" {
		return filepath.Join(named, "strokeledger"), nil
	}
	home, err := os.UserHomeDir()
	if err != nil {
		return "", errors.New("no home folder; give one with --data")
	}
	return filepath.Join(home, ".local", "share", "strokeledger"), nil
}

func addressFile(data string) string { return filepath.Join(data, "address") }

// lockData takes a data folder for this process. When another has it, running
// is the address that it serves.
func lockData(data string) (locked *os.File, running string, err error) {
	if err := os.MkdirAll(data, 0o711); err != nil {
		return nil, "", err
	}
	locked, err = os.OpenFile(filepath.Join(data, "lock"), os.O_CREATE|os.O_RDWR, 0o600)
	if err != nil {
		return nil, "", err
	}
	if err := syscall.Flock(int(locked.Fd()), syscall.LOCK_EX|syscall.LOCK_NB); err != nil {
		locked.Close()
		address, _ := os.ReadFile(addressFile(data))
		if len(address) == 0 {
			return nil, "", fmt.Errorf("the data folder %s is in use by another process that is starting or stopping", data)
		}
		return nil, string(address), nil
	}
	return locked, "", nil
}
