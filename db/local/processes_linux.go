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

// processes lists the living Postgres processes of this machine. A process that
// ends while it is being read is left out.
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

// ending stands for the command of a process that is ending: its command line is
// gone, but it still holds the shared memory that the next server needs.
const ending = "postgres: ending"

// readProcess reads one process. ok is false if it is not Postgres, or has ended, or
// is a zombie.
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
	// The name, in brackets, may contain anything. After it come state, parent and,
	// in the twentieth field, the time of the start.
	fields := strings.Fields(string(stat[bytes.LastIndexByte(stat, ')')+1:]))
	if len(fields) < 20 || fields[0] == "Z" || fields[0] == "X" {
		return p, false, nil
	}
	if p.parent, err = strconv.Atoi(fields[1]); err != nil {
		return p, false, err
	}
	p.began = fields[19]
	// Root in a container may not see the folder of another user's process.
	if p.folder, err = os.Readlink(filepath.Join(at, "cwd")); err != nil && !errors.Is(err, fs.ErrPermission) {
		return p, false, ignoreGone(err)
	}
	return p, true, nil
}

// ignoreGone ignores the errors of reading a process that has just ended. Sometimes
// that is "no such process" rather than "no such file".
func ignoreGone(err error) error {
	if errors.Is(err, fs.ErrNotExist) || errors.Is(err, errGone) || errors.Is(err, fs.ErrPermission) {
		return nil
	}
	return err
}
