// Package local runs a private Postgres for a person who has named no server:
// in a data folder of its own, reached by a socket in a folder that only its
// owner may enter, with no network.
//
// It answers "where is a database for this folder?" and refuses to touch a data
// folder of another major version, or to be the server of several machines.
package local

import (
	"errors"
	"fmt"
	"net/url"
	"os"
	"os/exec"
	"os/user"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"syscall"
	"time"
)

// ErrMissing is the error when no Postgres is installed; it says what to type.
var ErrMissing = errors.New("no Postgres found; on Debian or Ubuntu type: sudo apt-get install postgresql, on macOS: brew install postgresql@17, or name a server in DATABASE_URL")

// Server is a running private Postgres.
type Server struct {
	URL string // for a client on this machine

	command *exec.Cmd
	socket  string
	exited  chan error
}

// startLimit is how long a server may take to answer.
const startLimit = 60 * time.Second

// Start makes the data folder when there is none, and starts Postgres on it.
// Run as root, it starts it as user postgres, or nobody, since Postgres refuses
// to be root. The caller stops it.
func Start(folder string) (*Server, error) {
	bin, err := binaries()
	if err != nil {
		return nil, err
	}
	owner, err := ownerOf()
	if err != nil {
		return nil, err
	}
	if err := prepareFolder(bin, folder, owner); err != nil {
		return nil, err
	}
	waitForEarlier(filepath.Join(folder, "data"))
	socket, err := os.MkdirTemp("", "ledger-")
	if err != nil {
		return nil, err
	}
	if err := owner.own(socket); err != nil {
		return nil, err
	}
	s := &Server{
		URL:    "postgres:///?host=" + url.QueryEscape(socket) + "&user=ledger&dbname=postgres",
		socket: socket, exited: make(chan error, 1),
	}
	s.command = exec.Command(filepath.Join(bin, "postgres"), "-D", filepath.Join(folder, "data"),
		"-c", "listen_addresses=", "-c", "unix_socket_directories="+socket, "-c", "unix_socket_permissions=0700",
		"-c", "max_connections=50", "-c", "log_min_messages=fatal")
	s.command.Dir = socket
	log, err := os.OpenFile(filepath.Join(folder, "postgres.log"), os.O_CREATE|os.O_APPEND|os.O_WRONLY, 0o600)
	if err != nil {
		return nil, err
	}
	defer log.Close()
	s.command.Stdout, s.command.Stderr = log, log
	s.command.SysProcAttr = childOf(owner.credential)
	if err := s.run(); err != nil {
		return nil, errors.Join(err, os.RemoveAll(socket))
	}
	return s, s.answers(folder)
}

// earlierLimit is how long a start waits for a server that still stops on the
// same folder.
const earlierLimit = 15 * time.Second

// waitForEarlier waits for a server whose program was killed and that is still
// stopping. The number in its file may be that of another process by now; then
// Postgres itself finds out.
func waitForEarlier(data string) {
	for deadline := time.Now().Add(earlierLimit); time.Now().Before(deadline); time.Sleep(20 * time.Millisecond) {
		text, err := os.ReadFile(filepath.Join(data, "postmaster.pid"))
		if err != nil {
			return
		}
		first, _, _ := strings.Cut(string(text), "\n")
		pid, err := strconv.Atoi(first)
		if err != nil || errors.Is(syscall.Kill(pid, 0), syscall.ESRCH) {
			return
		}
	}
}

// run starts the process from a thread that lives as long as the process, since
// on Linux a child may be tied to the thread that started it.
func (s *Server) run() error {
	began := make(chan error)
	go func() {
		runtime.LockOSThread()
		err := s.command.Start()
		began <- err
		if err == nil {
			s.exited <- s.command.Wait()
		}
	}()
	return <-began
}

// answers waits until the server takes connections.
func (s *Server) answers(folder string) error {
	deadline := time.After(startLimit)
	for {
		select {
		case <-s.exited:
			os.RemoveAll(s.socket)
			return fmt.Errorf("postgres did not start; see %s", filepath.Join(folder, "postgres.log"))
		case <-deadline:
			s.Stop()
			return fmt.Errorf("postgres did not answer within %s; see %s", startLimit, filepath.Join(folder, "postgres.log"))
		case <-time.After(20 * time.Millisecond):
			pid, err := os.ReadFile(filepath.Join(folder, "data", "postmaster.pid"))
			own := strconv.Itoa(s.command.Process.Pid) + "\n" // not a file that a crash left behind
			if err == nil && strings.HasPrefix(string(pid), own) && strings.Contains(string(pid), "ready") {
				return nil
			}
		}
	}
}

// Stop ends the server, letting transactions in flight fail, and waits for it.
func (s *Server) Stop() {
	s.command.Process.Signal(syscall.SIGINT)
	select {
	case <-s.exited:
	case <-time.After(20 * time.Second):
		s.command.Process.Kill()
		<-s.exited
	}
	os.RemoveAll(s.socket)
}

// owner is who the server runs as; the zero value is whoever runs this.
type owner struct {
	credential *syscall.Credential
	uid, gid   int
}

func ownerOf() (owner, error) {
	if os.Geteuid() != 0 {
		return owner{}, nil
	}
	for _, name := range []string{"postgres", "nobody"} {
		u, err := user.Lookup(name)
		if err != nil {
			continue
		}
		uid, err1 := strconv.Atoi(u.Uid)
		gid, err2 := strconv.Atoi(u.Gid)
		if err := errors.Join(err1, err2); err != nil {
			return owner{}, err
		}
		return owner{&syscall.Credential{Uid: uint32(uid), Gid: uint32(gid)}, uid, gid}, nil
	}
	return owner{}, errors.New("postgres refuses to run as root, and there is no user postgres or nobody")
}

func (o owner) own(path string) error {
	if o.credential == nil {
		return nil
	}
	return os.Chown(path, o.uid, o.gid)
}

// prepareFolder makes the data folder by initdb, in a folder beside it that is
// renamed when whole, so that a start that was cut off leaves nothing half made.
func prepareFolder(bin, folder string, o owner) error {
	if err := os.MkdirAll(folder, 0o700); err != nil {
		return err
	}
	if err := o.own(folder); err != nil {
		return err
	}
	data, fresh := filepath.Join(folder, "data"), filepath.Join(folder, "data.new")
	if _, err := os.Stat(data); err == nil {
		return sameMajor(bin, data)
	}
	if err := os.RemoveAll(fresh); err != nil {
		return err
	}
	initdb := exec.Command(filepath.Join(bin, "initdb"), "-D", fresh, "-U", "ledger", "-A", "trust", "-E", "UTF8", "--locale=C", "--no-sync")
	initdb.Dir = folder
	initdb.SysProcAttr = &syscall.SysProcAttr{Credential: o.credential}
	if out, err := initdb.CombinedOutput(); err != nil {
		return fmt.Errorf("initdb: %w: %s", err, lastLine(string(out)))
	}
	return os.Rename(fresh, data)
}

func lastLine(s string) string {
	lines := strings.Split(strings.TrimSpace(s), "\n")
	return lines[len(lines)-1]
}

// sameMajor refuses a data folder that another major version made.
func sameMajor(bin, data string) error {
	made, err := os.ReadFile(filepath.Join(data, "PG_VERSION"))
	if err != nil {
		return err
	}
	out, err := exec.Command(filepath.Join(bin, "postgres"), "--version").Output()
	if err != nil {
		return err
	}
	want, got := strings.TrimSpace(string(made)), strings.Fields(string(out))
	if len(got) < 3 || strings.Split(got[2], ".")[0] != want {
		return fmt.Errorf("the data folder %s was made by Postgres %s, and this is %s", data, want, strings.TrimSpace(string(out)))
	}
	return nil
}

// binaries finds the folder of initdb and postgres: PG_BIN, the folders of
// Debian and Homebrew, newest first, then the path.
func binaries() (string, error) {
	if named := os.Getenv("PG_BIN"); named != "" {
		if both(named) {
			return named, nil
		}
		return "", fmt.Errorf("PG_BIN is %q, where there is no initdb and postgres", named)
	}
	var found []string
	for _, pattern := range []string{"/usr/lib/postgresql/*/bin", "/opt/homebrew/opt/postgresql*/bin", "/usr/local/opt/postgresql*/bin"} {
		folders, _ := filepath.Glob(pattern)
		slices.SortFunc(folders, func(a, b string) int { return major(b) - major(a) })
		found = append(found, folders...)
	}
	if name, err := exec.LookPath("initdb"); err == nil {
		found = append(found, filepath.Dir(name))
	}
	for _, folder := range found {
		if both(folder) {
			return folder, nil
		}
	}
	return "", ErrMissing
}

func both(folder string) bool {
	_, err1 := os.Stat(filepath.Join(folder, "initdb"))
	_, err2 := os.Stat(filepath.Join(folder, "postgres"))
	return err1 == nil && err2 == nil
}

// major is the number in a folder's path, 0 when there is none.
func major(folder string) int {
	n, _ := strconv.Atoi(strings.Map(func(r rune) rune {
		if r >= '0' && r <= '9' {
			return r
		}
		return -1
	}, folder))
	return n
}
