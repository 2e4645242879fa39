package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net/http"
	"os"
	"os/exec"
	"strings"
	"time"
)

// The database of known vulnerabilities, unless GOVULNDB names another, and how
// long it may take to answer.
const (
	vulnerabilityDatabase = "https://vuln.go.dev"
	databaseWait          = 4 * time.Second
)

// foundVulnerabilities is how govulncheck ends when our code reaches one.
const foundVulnerabilities = 3

// vulnerabilities looks for known vulnerabilities that our code reaches. A
// machine without a connection is no fault: one line says that nothing was run.
func vulnerabilities() error {
	database := os.Getenv("GOVULNDB")
	if database == "" {
		database = vulnerabilityDatabase
	}
	return seekVulnerabilities(os.Stdout, database, func() error {
		return command("go", "tool", "govulncheck", "-db", database, "./...")
	})
}

// seekVulnerabilities runs govulncheck when its database answers, and fails only
// when it found something.
func seekVulnerabilities(w io.Writer, database string, run func() error) error {
	if err := answers(database); err != nil {
		fmt.Fprintf(w, "govulncheck: not run, its database does not answer: %v\n", err)
		return nil
	}
	err := run()
	var exit *exec.ExitError
	switch {
	case err == nil:
		fmt.Fprintln(w, "govulncheck: clean")
		return nil
	case errors.As(err, &exit) && exit.ExitCode() == foundVulnerabilities:
		return fmt.Errorf("govulncheck: %w", err)
	default:
		fmt.Fprintf(w, "govulncheck: not run to its end: %v\n", err)
		return nil
	}
}

// answers asks a database for its own description.
func answers(database string) error {
	if !strings.HasPrefix(database, "http") {
		return nil // a folder
	}
	ctx, cancel := context.WithTimeout(context.Background(), databaseWait)
	defer cancel()
	request, err := http.NewRequestWithContext(ctx, http.MethodGet, strings.TrimSuffix(database, "/")+"/index/db.json", nil)
	if err != nil {
		return err
	}
	response, err := http.DefaultClient.Do(request)
	if err != nil {
		return err
	}
	defer response.Body.Close()
	if response.StatusCode != http.StatusOK {
		return fmt.Errorf("%s answers %s", database, response.Status)
	}
	return nil
}
