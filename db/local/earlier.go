package local

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"time"
)

// errGone is what the kernel says about a process that no longer exists.
var errGone error = syscall.ESRCH

// process is a living Postgres process.
type process struct {
	pid, parent int
	began       string // tells it from a later process with the same number
	command     string // with its arguments
	folder      string // where it works; empty where that cannot be seen
}

// isPostgres reports whether a command belongs to a server, or to one of its
// children, which rename themselves.
func isPostgres(command string) bool {
	program, _, _ := strings.Cut(command, " -D ")
	return strings.HasPrefix(command, "postgres: ") || filepath.Base(program) == "postgres"
}

// ourFlags are flags with which only this package starts a server.
const ourFlags = " -c listen_addresses= -c unix_socket_directories="

// servers are the processes that work on a data folder.
type servers struct {
	ours    []process // servers that this package started, and children of those or of dead ones
	foreign []process // servers that somebody else started
	unclear []process // children without a server, whose folder cannot be seen
}

// sortOut finds the processes that work on a data folder. A server counts as
// ours by its folder and its command line together, or, where the folder cannot
// be seen, by a command line that names it.
func sortOut(all []process, data string) servers {
	var found servers
	mine := map[int]bool{}
	for _, p := range all {
		if strings.HasPrefix(p.command, "postgres: ") {
			continue
		}
		named := strings.Contains(p.command, " -D "+data+" ") || strings.HasSuffix(p.command, " -D "+data)
		switch {
		case p.folder != data && (p.folder != "" || !named):
		case strings.Contains(p.command, ourFlags):
			found.ours = append(found.ours, p)
			mine[p.pid] = true
		default:
			found.foreign = append(found.foreign, p)
		}
	}
	for _, p := range all {
		if !strings.HasPrefix(p.command, "postgres: ") {
			continue
		}
		hasServer := slices.ContainsFunc(all, func(q process) bool { return q.pid == p.parent })
		switch {
		case mine[p.parent], p.folder == data && !hasServer:
			found.ours = append(found.ours, p)
		case p.folder == "" && !hasServer:
			found.unclear = append(found.unclear, p)
		}
	}
	return found
}

// step is one signal on the way to stop a server, and how long it has to work.
type step struct {
	signal syscall.Signal
	wait   time.Duration
}

// earlierSteps stop a server that an earlier run left behind: quickly, then
// immediately, which still takes Postgres up to five seconds, then by force.
// Together they take less than twenty seconds.
var earlierSteps = []step{{syscall.SIGINT, 7 * time.Second}, {syscall.SIGQUIT, 7 * time.Second}, {syscall.SIGKILL, 4 * time.Second}}

// endEarlier stops what an earlier run of this program left running on a data
// folder, and removes a postmaster.pid whose process no longer exists. It touches
// only processes that it has verified, and refuses if somebody else's server uses
// the folder.
func endEarlier(data string, steps []step) error {
	known := map[int]process{} // verified while their server was still alive
	for _, s := range steps {
		sent := map[int]bool{}
		for deadline := time.Now().Add(s.wait); ; time.Sleep(20 * time.Millisecond) {
			all, err := processes()
			if err != nil {
				return err
			}
			found := sortOut(all, data)
			if len(found.foreign) > 0 {
				return fmt.Errorf("another Postgres, process %d, is using the data folder %s; this program did not start it and leaves it alone", found.foreign[0].pid, data)
			}
			living := stillThere(all, found.ours, known)
			if len(living) == 0 {
				return removeStale(data, found.unclear)
			}
			if time.Now().After(deadline) {
				break
			}
			signal(living, s.signal, sent)
		}
	}
	return fmt.Errorf("an earlier Postgres is still using the data folder %s and cannot be stopped; to see its processes, run: ps -ef", data)
}

// stillThere are the processes known from now or before that are still alive.
func stillThere(all, ours []process, known map[int]process) []process {
	for _, p := range ours {
		known[p.pid] = p
	}
	var living []process
	for _, p := range all {
		if k, ok := known[p.pid]; ok && k.began == p.began {
			living = append(living, p)
		}
	}
	return living
}

// signal sends each process a signal once. Children, each in a process group of its
// own, are stopped by their server; only those without a server, or all of them
// when it comes to force, get the signal themselves.
func signal(living []process, s syscall.Signal, sent map[int]bool) {
	for _, p := range living {
		child := strings.HasPrefix(p.command, "postgres: ")
		hasServer := slices.ContainsFunc(living, func(q process) bool { return q.pid == p.parent })
		switch {
		case sent[p.pid], child && hasServer && s != syscall.SIGKILL:
			continue
		case s == syscall.SIGKILL:
			syscall.Kill(-p.pid, s) // its process group
			syscall.Kill(p.pid, s)
		case child:
			syscall.Kill(p.pid, syscall.SIGQUIT) // no server is left to wait for it
		default:
			syscall.Kill(p.pid, s)
		}
		sent[p.pid] = true
	}
}

// removeStale removes the file by which Postgres recognises a running server, if no
// process of the folder is alive: its number may belong to another program by now,
// which Postgres would take for a server. If that is not certain the file stays, and
// Postgres decides.
func removeStale(data string, unclear []process) error {
	if len(unclear) > 0 {
		return nil
	}
	err := os.Remove(filepath.Join(data, "postmaster.pid"))
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	return err
}
