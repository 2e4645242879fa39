package local

import (
	"errors"
	"net"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func folder(t *testing.T) string {
	name, err := os.MkdirTemp("", "ledger-local-")
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Chmod(name, 0o755); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { os.RemoveAll(name) })
	return filepath.Join(name, "pg")
}

// socketOf is where the server of a URL listens.
func socketOf(s *Server) string { return filepath.Join(s.place.socket, socketFile) }

func TestStartStopAndStartAgain(t *testing.T) {
	where := folder(t)
	spaced := filepath.Join(filepath.Dir(where), "a & b")
	if err := os.Mkdir(spaced, 0o755); err != nil {
		t.Fatal(err)
	}
	t.Setenv("TMPDIR", spaced)
	for range 2 {
		s, err := Start(where)
		if err != nil {
			t.Fatal(err)
		}
		if u, err := url.Parse(s.URL); err != nil || u.Query().Get("host") != s.place.socket || u.Query().Get("user") != "ledger" {
			t.Errorf("%s, %v", s.URL, err)
		}
		c, err := net.Dial("unix", socketOf(s))
		if err != nil {
			t.Fatal(err)
		}
		c.Close()
		if info, err := os.Stat(s.place.socket); err != nil || info.Mode().Perm() != 0o700 {
			t.Errorf("the socket's folder: %v, %v", info.Mode(), err)
		}
		s.Stop()
		if _, err := os.Stat(s.place.socket); !errors.Is(err, os.ErrNotExist) {
			t.Errorf("the socket's folder is left: %v", err)
		}
	}
}

func TestAnotherMajorIsRefused(t *testing.T) {
	where := folder(t)
	if err := os.MkdirAll(filepath.Join(where, "data"), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(where, "data", "PG_VERSION"), []byte("9\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := Start(where); err == nil || !strings.Contains(err.Error(), "Postgres 9") {
		t.Errorf("%v", err)
	}
}

func TestAFolderThatWasLeftHalfMade(t *testing.T) {
	where := folder(t)
	if err := os.MkdirAll(filepath.Join(where, "data.new", "base"), 0o700); err != nil {
		t.Fatal(err)
	}
	s, err := Start(where)
	if err != nil {
		t.Fatal(err)
	}
	s.Stop()
}

func TestNamedBinariesMustBeThere(t *testing.T) {
	t.Setenv("PG_BIN", t.TempDir())
	if _, err := Start(folder(t)); err == nil || !strings.Contains(err.Error(), "PG_BIN") {
		t.Errorf("%v", err)
	}
}
