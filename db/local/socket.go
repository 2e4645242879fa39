package local

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"net"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"time"
)

// mostSocketPath is the longest path of a socket that every system accepts.
const mostSocketPath = 100

// socketFile is what Postgres calls its socket; the name cannot be changed.
const socketFile = ".s.PGSQL.5432"

// socketFolderOf is where the server of a data folder listens. It is the same at each
// start, so that a client finds a restarted server, and not in the data folder,
// whose path may be too long for a socket.
func socketFolderOf(data string) string {
	sum := sha256.Sum256([]byte(data))
	name := "strokeledger-" + hex.EncodeToString(sum[:6])
	folder := filepath.Join(os.TempDir(), name)
	if len(filepath.Join(folder, socketFile)) > mostSocketPath {
		return filepath.Join("/tmp", name)
	}
	return folder
}

// prepareSocket creates the socket's folder, or cleans the one that a killed server
// left behind. It refuses a link or somebody else's folder, whose owner could listen
// in place of the server.
func (p place) prepareSocket() error {
	if err := os.Mkdir(p.socket, 0o700); err != nil && !errors.Is(err, fs.ErrExist) {
		return err
	}
	info, err := os.Lstat(p.socket)
	if err != nil {
		return err
	}
	if !info.IsDir() || !p.owner.has(info) {
		return fmt.Errorf("the folder %s for the socket of the private Postgres belongs to somebody else; remove it, or name another folder in TMPDIR", p.socket)
	}
	if err := os.Chmod(p.socket, 0o700); err != nil {
		return err
	}
	if err := p.owner.own(p.socket); err != nil {
		return err
	}
	return emptySocket(p.socket)
}

// emptySocket removes what a server leaves behind in its socket's folder.
func emptySocket(folder string) error {
	entries, err := os.ReadDir(folder)
	if err != nil {
		return err
	}
	for _, e := range entries {
		if strings.HasPrefix(e.Name(), ".s.PGSQL.") {
			if err := os.Remove(filepath.Join(folder, e.Name())); err != nil && !errors.Is(err, fs.ErrNotExist) {
				return err
			}
		}
	}
	return nil
}

func removeSocket(folder string) error {
	return errors.Join(emptySocket(folder), os.Remove(folder))
}

// leftFolder matches the name of a socket's folder: one for each data folder or, in
// earlier versions of this program, one for each start.
var leftFolder = regexp.MustCompile(`^(ledger-[0-9]+|strokeledger-[0-9a-f]{12})$`)

// leftAge is how old a folder without a server must be to count as left behind.
const leftAge = 24 * time.Hour

// cleanLeft removes socket folders that killed programs left behind in a folder: ours
// by name and owner, a day old, and with nothing in them but a socket on which
// nothing answers. What cannot be removed stays, and does no harm.
func (o owner) cleanLeft(where string, now time.Time) {
	entries, err := os.ReadDir(where)
	if err != nil {
		return
	}
	for _, e := range entries {
		folder := filepath.Join(where, e.Name())
		info, err := os.Lstat(folder)
		if err != nil || !leftFolder.MatchString(e.Name()) || !info.IsDir() || !o.has(info) || now.Sub(info.ModTime()) < leftAge || answers(folder) {
			continue
		}
		removeSocket(folder) // which fails if there is anything else in it
	}
}

// answers reports whether a server listens in a socket's folder.
func answers(folder string) bool {
	c, err := net.Dial("unix", filepath.Join(folder, socketFile))
	if err == nil {
		c.Close()
	}
	return err == nil
}
