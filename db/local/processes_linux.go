package local

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
)

// processes lists the living Postgres processes of this machine. One that ends
// while it is read is left out.
func processes() ([]process, error) {
	entries, err := os.ReadDir("/proc")
	if err != nil {
		return nil, err
	}
	var all []process
	for _, e := range entries {
		pid, err := strconv.Atoi(e.Name())
		if err != nil {
			continue
		}
		p, ok, err := readProcess(pid)
		if err != nil {
			return nil, err
		}
		if ok {
			all = append(all, p)
		}
	}
	return all, nil
}

// ending stands for the command of a process that is ending: it has lost its
// words and still holds the shared memory that the next server needs.
const ending = "postgres: ending"

// readProcess reads one process; ok is false when it is no Postgres, or gone,
// or dead and only waiting to be counted.
func readProcess(pid int) (p process, ok bool, err error) {
	at := filepath.Join("/proc", strconv.Itoa(pid))
	words, err := os.ReadFile(filepath.Join(at, "cmdline"))
	if err != nil {
		return p, false, ignoreGone(err)
	}
	p.pid, p.command = pid, strings.TrimSpace(string(bytes.ReplaceAll(words, []byte{0}, []byte{' '})))
	if p.command != "" && !isPostgres(p.command) {
		return p, false, nil
	}
	stat, err := os.ReadFile(filepath.Join(at, "stat"))
	if err != nil {
		return p, false, ignoreGone(err)
	}
	if p.command == "" {
		if !bytes.Contains(stat, []byte(" (postgres) ")) {
			return p, false, nil
		}
		p.command = ending
	}
	// The name, in brackets, may hold anything; state, parent and, as the
	// twentieth from there, the time of the start follow it.
	fields := strings.Fields(string(stat[bytes.LastIndexByte(stat, ')')+1:]))
	if len(fields) < 20 || fields[0] == "Z" || fields[0] == "X" {
		return p, false, nil
	}
	if p.parent, err = strconv.Atoi(fields[1]); err != nil {
		return p, false, err
	}
	p.began = fields[19]
	// Root in a container may not look where another user's process works.
	if p.folder, err = os.Readlink(filepath.Join(at, "cwd")); err != nil && !errors.Is(err, fs.ErrPermission) {
		return p, false, ignoreGone(err)
	}
	return p, true, nil
}

// ignoreGone forgives that a process ended while it was looked at. Reading of
// one says "no such process" rather than "no such file" at times.
func ignoreGone(err error) error {
	if errors.Is(err, fs.ErrNotExist) || errors.Is(err, errGone) || errors.Is(err, fs.ErrPermission) {
		return nil
	}
	return err
}
