// Package local runs a private Postgres for a person who has named no server: with
// its own data folder, without a network, and with a socket in a folder that only
// its owner may enter. It stops what an earlier run left behind on that folder, and
// restarts a server that dies.
//
// It refuses a data folder of another major version or of a running program, and
// does not serve other machines.
package local

import (
	"errors"
	"fmt"
	"log/slog"
	"net/url"
	"os"
	"path/filepath"
	"sync"
	"syscall"
	"time"
)

// ErrMissing means that no Postgres is installed; it says how to install one.
var ErrMissing = errors.New("no Postgres found; on Debian or Ubuntu run: sudo apt-get install postgresql, on macOS: brew install postgresql@17, or name a server in DATABASE_URL")

// Server is a private Postgres that is running.
type Server struct {
	URL string // for a client on this machine; the same at every start

	place    place
	lock     *os.File
	running  *child // the current process; only the watch changes it
	stopping chan struct{}
	watching sync.WaitGroup
}

// startLimit is how long a server may take to answer at its first start, and
// restartLimit at a restart, when it may have much to recover.
const (
	startLimit   = 60 * time.Second
	restartLimit = 5 * time.Minute
)

// Start starts Postgres on a data folder, which it creates if there is none. When
// run as root it starts Postgres as user postgres or nobody, since Postgres refuses
// to run as root. It first stops a server that an earlier run left behind, and
// refuses a folder that a running program uses. The caller stops the server.
func Start(folder string) (*Server, error) { return start(folder, nil) }

// StartThrowaway is Start for tests, which throw the folder away: it saves seconds
// by not syncing a new data folder to the disk. The server itself is the same.
func StartThrowaway(folder string) (*Server, error) { return start(folder, []string{"--no-sync"}) }

func start(folder string, initFlags []string) (*Server, error) {
	bin, err := binaries()
	if err != nil {
		return nil, err
	}
	owner, err := ownerOf()
	if err != nil {
		return nil, err
	}
	if folder, err = prepareFolder(folder, owner); err != nil {
		return nil, err
	}
	lock, err := lockFolder(folder)
	if err != nil {
		return nil, err
	}
	owner.cleanLeft(os.TempDir(), time.Now())
	data := filepath.Join(folder, "data")
	s := &Server{place: place{bin, data, socketFolderOf(data), owner}, lock: lock, stopping: make(chan struct{})}
	s.URL = "postgres:///?host=" + url.QueryEscape(s.place.socket) + "&user=ledger&dbname=postgres"
	if err := s.place.makeData(initFlags); err != nil {
		return nil, errors.Join(err, lock.Close())
	}
	if s.running, err = s.place.launch(startLimit, nil); err != nil {
		removeSocket(s.place.socket)
		return nil, errors.Join(err, lock.Close())
	}
	return s, nil
}

// prepareFolder creates the folder for data, log and lock, and returns its path
// without links, so that one folder has one path.
func prepareFolder(folder string, o owner) (string, error) {
	if err := os.MkdirAll(folder, 0o700); err != nil {
		return "", err
	}
	if err := o.own(folder); err != nil {
		return "", err
	}
	whole, err := filepath.Abs(folder)
	if err != nil {
		return "", err
	}
	return filepath.EvalSymlinks(whole)
}

// lockFolder locks a folder for this process, so that the server of a running
// program is never taken for one that was left behind.
func lockFolder(folder string) (*os.File, error) {
	lock, err := os.OpenFile(filepath.Join(folder, "lock"), os.O_CREATE|os.O_RDWR, 0o600)
	if err != nil {
		return nil, err
	}
	if err := syscall.Flock(int(lock.Fd()), syscall.LOCK_EX|syscall.LOCK_NB); err != nil {
		lock.Close()
		return nil, fmt.Errorf("the folder %s is in use by another running program", folder)
	}
	return lock, nil
}

// How long the watch waits before it restarts a dead server: at first, and at most.
// The wait doubles after each failure.
const (
	firstWait = 500 * time.Millisecond
	mostWait  = 30 * time.Second
)

// Watch restarts the server whenever it dies, until Stop, and logs it. It returns
// immediately, and is called once.
func (s *Server) Watch(log *slog.Logger) {
	s.watching.Go(func() {
		for {
			select {
			case <-s.stopping:
				return
			case <-s.running.exited:
			}
			died := time.Now()
			log.Error("the private Postgres died and is being restarted", "why", fmt.Sprint(s.running.err))
			if !s.restart(log) {
				return
			}
			log.Info("the private Postgres is running again", "after", time.Since(died).Round(time.Millisecond).String())
		}
	})
}

// restart tries until the server runs, waiting longer each time. It returns false if
// the program stops first.
func (s *Server) restart(log *slog.Logger) bool {
	for wait := firstWait; ; wait = min(2*wait, mostWait) {
		select {
		case <-s.stopping:
			return false
		case <-time.After(wait):
		}
		next, err := s.place.launch(restartLimit, s.stopping)
		if err == nil {
			s.running = next
			return true
		}
		log.Error("the private Postgres did not start", "error", err.Error(), "next try after", min(2*wait, mostWait).String())
	}
}

// Stop stops the watch and the server, and waits until both have ended. Transactions
// in progress fail.
func (s *Server) Stop() {
	close(s.stopping)
	s.watching.Wait()
	end(s.running)
	endEarlier(s.place.data, earlierSteps) // what a server that died left behind
	removeSocket(s.place.socket)
	s.lock.Close()
}
