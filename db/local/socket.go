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

// mostSocketPath is the longest path of a socket that every system takes.
const mostSocketPath = 100

// socketFile is what Postgres calls its socket; it may not be told otherwise.
const socketFile = ".s.PGSQL.5432"

// socketFolderOf is where the server of a data folder listens, the same at each
// start, so that a client finds a server that was started again. It is not in
// the data folder, whose path may be too long for a socket.
func socketFolderOf(data string) string {
	sum := sha256.Sum256([]byte(data))
	name := "strokeledger-" + hex.EncodeToString(sum[:6])
	folder := filepath.Join(os.TempDir(), name)
	if len(filepath.Join(folder, socketFile)) > mostSocketPath {
		return filepath.Join("/tmp", name)
	}
	return folder
}

// prepareSocket makes the socket's folder, or cleans the one that a killed
// server left. A folder of somebody else, or a link, is refused: its owner could
// listen in the server's place.
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

// emptySocket removes what a server leaves in its socket's folder.
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

// leftFolder is the name of a socket's folder: one number for each start, as
// versions before this one made, or one for each data folder.
var leftFolder = regexp.MustCompile(`^(ledger-[0-9]+|strokeledger-[0-9a-f]{12})$`)

// leftAge is how old a folder without a server is before it counts as left.
const leftAge = 24 * time.Hour

// cleanLeft removes socket folders that killed starts left in a folder: ours by
// name and owner, a day old, with nothing in them but a socket on which nobody
// answers. What cannot be removed stays; it does no harm.
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
		removeSocket(folder) // which a folder with anything else in it outlives
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
