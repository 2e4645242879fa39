package main

import (
	"context"
	"fmt"
	"log/slog"
	"net"
	"net/http"
	"os"
	"os/signal"
	"path/filepath"
	"sync"
	"syscall"
	"time"

	"strokeledger/db"
	"strokeledger/db/local"
	"strokeledger/handlers"
)

// serve runs the web app until a signal stops it.
func serve(args []string, s streams) error {
	config, err := readServeConfig(args, s)
	if err != nil {
		return err
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	log := slog.New(slog.NewTextHandler(s.err, nil))
	if config.database == "" {
		return servePrivately(ctx, config, s, log)
	}
	return runServer(ctx, config, s, log)
}

// servePrivately runs the app with its own Postgres. A second start on the same data
// folder says where the first one is.
func servePrivately(ctx context.Context, config serveConfig, s streams, log *slog.Logger) error {
	locked, running, err := lockData(config.data)
	if err != nil {
		return err
	}
	if running != "" {
		fmt.Fprintf(s.out, "already running on http://%s\n", running)
		return nil
	}
	defer locked.Close()
	if err := os.WriteFile(addressFile(config.data), nil, 0o600); err != nil { // it may hold the address of a run that was killed
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
	return runServer(ctx, config, s, log)
}

// runServer answers requests from a database, and does meanwhile what no request asks
// for, until the context ends.
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
	any, err := store.AnyPlayer(ctx)
	if err != nil {
		return err
	}
	listener, err := listen(config)
	if err != nil {
		return err
	}
	options := config.options(log)
	announce(config, listener.Addr(), s, log)
	if !any {
		fmt.Fprintf(s.out, "Create the first account with the setup token %s\n", options.SetupToken)
	}
	working, stopWorking := context.WithCancel(ctx)
	var unasked sync.WaitGroup
	unasked.Go(func() { store.SweepDaily(working, log) })
	unasked.Go(func() { handlers.PeersDaily(working, store, log) })
	unasked.Go(func() { handlers.NewErrands(store, options).Run(working) })
	defer func() { stopWorking(); unasked.Wait() }()
	return serveUntil(ctx, listener, handlers.New(store, options))
}

// listen opens the address, and writes it into the data folder, if there is one, so
// that a second start finds it.
func listen(config serveConfig) (net.Listener, error) {
	listener, err := net.Listen("tcp", config.listen)
	if err != nil {
		return nil, fmt.Errorf("cannot listen on %s: %w", config.listen, err)
	}
	if config.data == "" {
		return listener, nil
	}
	return listener, os.WriteFile(addressFile(config.data), []byte(listener.Addr().String()), 0o600)
}

// announce says where the app is, and warns if others could eavesdrop.
func announce(config serveConfig, at net.Addr, s streams, log *slog.Logger) {
	if config.unguarded() {
		log.Warn("other machines can reach this address without TLS, so passwords may cross the network unencrypted; see --behind-tls", "listen", config.listen)
	}
	if config.address != "" {
		fmt.Fprintf(s.out, "Strokeledger is at %s, and listens on %s\n", config.address, at)
	} else {
		fmt.Fprintf(s.out, "Strokeledger is at http://%s\n", at)
	}
}

// How long a request may take to arrive and to be answered, and how long shutting
// down waits for requests in progress.
const (
	headerTime   = 10 * time.Second
	requestTime  = time.Minute
	shutdownTime = 20 * time.Second
)

// serveUntil answers requests until the context ends, and then finishes those in
// progress.
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
