// Package local runs a private Postgres for a person who has named no server:
// in a data folder of its own, reached by a socket in a folder that only its
// owner may enter, with no network. It ends what an earlier run left on that
// folder, and starts a server again that dies.
//
// It answers "where is a database for this folder?" and refuses to touch a data
// folder of another major version or of a living program, and to be the server
// of several machines.
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

// ErrMissing is the error when no Postgres is installed; it says what to type.
var ErrMissing = errors.New("no Postgres found; on Debian or Ubuntu type: sudo apt-get install postgresql, on macOS: brew install postgresql@17, or name a server in DATABASE_URL")

// Server is a private Postgres that runs.
type Server struct {
	URL string // for a client on this machine; the same at every start

	place    place
	lock     *os.File
	running  *child // the server of the moment; the watch's own while there is one
	stopping chan struct{}
	watching sync.WaitGroup
}

// startLimit is how long a server may take to answer when it is first started,
// and restartLimit when it is started again and may have much to recover.
const (
	startLimit   = 60 * time.Second
	restartLimit = 5 * time.Minute
)

// Start makes the data folder when there is none, and starts Postgres on it.
// Run as root, it starts it as user postgres, or nobody, since Postgres refuses
// to be root. A server that an earlier run left is ended first; a folder that a
// living program has is refused. The caller stops it.
func Start(folder string) (*Server, error) { return start(folder, nil) }

// StartThrowaway is Start for tests, whose folder is thrown away: a new data
// folder is not written through to the disk when it is made, which takes
// seconds. The server itself is the same.
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

// prepareFolder makes the folder of data, log and lock, and returns its path
// without links, which tells it from every other.
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

// lockFolder takes a folder for this process, so that a living program's server
// is never taken for one that was left.
func lockFolder(folder string) (*os.File, error) {
	lock, err := os.OpenFile(filepath.Join(folder, "lock"), os.O_CREATE|os.O_RDWR, 0o600)
	if err != nil {
		return nil, err
	}
	if err := syscall.Flock(int(lock.Fd()), syscall.LOCK_EX|syscall.LOCK_NB); err != nil {
		lock.Close()
		return nil, fmt.Errorf("the folder %s is in use by another program that runs", folder)
	}
	return lock, nil
}

// How long the watch waits before it starts a dead server again: the first time,
// doubled after each start that fails, and at most.
const (
	firstWait = 500 * time.Millisecond
	mostWait  = 30 * time.Second
)

// Watch starts the server again whenever it dies, until Stop, and says so in the
// log. It returns at once, and is called once.
func (s *Server) Watch(log *slog.Logger) {
	s.watching.Go(func() {
		for {
			select {
			case <-s.stopping:
				return
			case <-s.running.exited:
			}
			died := time.Now()
			log.Error("the private Postgres ended; it is started again", "why", fmt.Sprint(s.running.err))
			if !s.startAgain(log) {
				return
			}
			log.Info("the private Postgres runs again", "after", time.Since(died).Round(time.Millisecond).String())
		}
	})
}

// startAgain tries until the server runs, waiting longer each time; it returns
// false when the program stops first.
func (s *Server) startAgain(log *slog.Logger) bool {
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
		log.Error("the private Postgres does not start", "error", err.Error(), "tried again after", min(2*wait, mostWait).String())
	}
}

// Stop ends the server and the watch, letting transactions in flight fail, and
// waits for it.
func (s *Server) Stop() {
	close(s.stopping)
	s.watching.Wait()
	end(s.running)
	endEarlier(s.place.data, earlierSteps) // what a server that died left
	removeSocket(s.place.socket)
	s.lock.Close()
}
