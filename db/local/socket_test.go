package local

import (
	"errors"
	"net"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// shortTemp makes the folder for temporary files one of the test's own.
func shortTemp(t *testing.T) string {
	t.Helper()
	where, err := os.MkdirTemp("/tmp", "ledger-temp-")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { os.RemoveAll(where) })
	if err := os.Chmod(where, 0o755); err != nil {
		t.Fatal(err)
	}
	t.Setenv("TMPDIR", where)
	return where
}

func TestAForeignSocketFolderIsRefused(t *testing.T) {
	shortTemp(t)
	p := place{socket: socketFolderOf("/d/data")}
	if err := os.Symlink(t.TempDir(), p.socket); err != nil {
		t.Fatal(err)
	}
	if err := p.prepareSocket(); err == nil || !strings.Contains(err.Error(), "belongs to somebody else") {
		t.Errorf("a link: %v", err)
	}
	nobodys, err := os.Stat("/") // of root
	if err != nil {
		t.Fatal(err)
	}
	if os.Geteuid() == 0 {
		other := t.TempDir()
		if err := os.Chown(other, 12345, 12345); err != nil {
			t.Fatal(err)
		}
		if nobodys, err = os.Stat(other); err != nil {
			t.Fatal(err)
		}
	}
	if (owner{}).has(nobodys) {
		t.Error("a folder of somebody else counts as ours")
	}
}

func TestASocketFolderIsShortPrivateAndItsOwn(t *testing.T) {
	where := shortTemp(t)
	one, two := socketFolderOf("/d/data"), socketFolderOf("/e/data")
	if one == two || one != socketFolderOf("/d/data") || filepath.Dir(one) != where {
		t.Errorf("%s, %s", one, two)
	}
	t.Setenv("TMPDIR", "/"+strings.Repeat("long", 30))
	if long := socketFolderOf("/d/data"); filepath.Dir(long) != "/tmp" {
		t.Error(long)
	}
	p := place{socket: one}
	if err := errors.Join(os.Mkdir(one, 0o755), os.WriteFile(filepath.Join(one, socketFile), nil, 0o600), p.prepareSocket()); err != nil {
		t.Fatal(err)
	}
	left, err := os.ReadDir(one)
	if info, err := os.Stat(one); err != nil || info.Mode().Perm() != 0o700 {
		t.Errorf("%v, %v", info, err)
	}
	if err != nil || len(left) > 0 {
		t.Errorf("%v, %v", left, err)
	}
}

// Folders that killed starts left are removed; everything else stays.
func TestLeftSocketFoldersAreRemoved(t *testing.T) {
	where := shortTemp(t)
	o := owner{}
	now := time.Now()
	goes := map[string]bool{"ledger-123": true, "strokeledger-0123456789ab": true, "ledger-124": true,
		"ledger-5": false, "ledger-6": false, "ledger-7": false, "ledger-test-8": false, "strokeledger-9": false, "ledger-10": false}
	for name := range goes {
		folder := filepath.Join(where, name)
		if err := os.Mkdir(folder, 0o700); err != nil {
			t.Fatal(err)
		}
		switch name {
		case "ledger-124": // the socket of a server that was killed
			l, err := net.ListenUnix("unix", &net.UnixAddr{Name: filepath.Join(folder, socketFile), Net: "unix"})
			if err != nil {
				t.Fatal(err)
			}
			l.SetUnlinkOnClose(false)
			l.Close()
		case "ledger-6": // a server
			l, err := net.Listen("unix", filepath.Join(folder, socketFile))
			if err != nil {
				t.Fatal(err)
			}
			defer l.Close()
		case "ledger-7": // something of somebody's
			if err := os.WriteFile(filepath.Join(folder, "letter"), nil, 0o600); err != nil {
				t.Fatal(err)
			}
		}
		if old := now.Add(-25 * time.Hour); name != "ledger-5" {
			if err := os.Chtimes(folder, old, old); err != nil {
				t.Fatal(err)
			}
		}
	}
	if err := errors.Join(os.Remove(filepath.Join(where, "ledger-10")), os.Symlink(where, filepath.Join(where, "ledger-10"))); err != nil {
		t.Fatal(err)
	}
	o.cleanLeft(where, now)
	for name, gone := range goes {
		if _, err := os.Lstat(filepath.Join(where, name)); errors.Is(err, os.ErrNotExist) != gone {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := os.Stat(filepath.Join(where, "ledger-7", "letter")); err != nil {
		t.Error(err)
	}
}
