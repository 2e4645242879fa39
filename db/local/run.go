package local

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"syscall"
	"time"
)

// place is where a private Postgres runs.
type place struct {
	bin    string // folder of the programs
	data   string // the data folder, without links
	socket string
	owner  owner
}

// child is a process that we started.
type child struct {
	pid    int
	exited chan struct{} // closed when it has ended
	err    error         // why, once it has ended
}

// begin starts a process from a thread that lives as long as the process, since
// on Linux a child may be tied to the thread that started it.
func begin(command *exec.Cmd) (*child, error) {
	c := &child{exited: make(chan struct{})}
	began := make(chan error)
	go func() {
		runtime.LockOSThread()
		err := command.Start()
		if err == nil {
			c.pid = command.Process.Pid
		}
		began <- err
		if err == nil {
			c.err = command.Wait()
			close(c.exited)
		}
	}()
	return c, <-began
}

// launchTries is how often to start a server that ends immediately: where this
// program cannot see all processes, one of an earlier run may still be ending.
const launchTries = 3

// launch starts the server and waits until it accepts connections, or until stop is
// closed.
func (p place) launch(limit time.Duration, stop <-chan struct{}) (c *child, err error) {
	for range launchTries {
		if c, err = p.launchOnce(limit, stop); !errors.Is(err, errEnded) {
			return c, err
		}
		select {
		case <-stop:
			return nil, err
		case <-time.After(time.Second):
		}
	}
	return nil, err
}

func (p place) launchOnce(limit time.Duration, stop <-chan struct{}) (*child, error) {
	if err := endEarlier(p.data, earlierSteps); err != nil {
		return nil, err
	}
	if err := p.prepareSocket(); err != nil {
		return nil, err
	}
	logName := filepath.Join(filepath.Dir(p.data), "postgres.log")
	log, err := os.OpenFile(logName, os.O_CREATE|os.O_APPEND|os.O_WRONLY, 0o600)
	if err != nil {
		return nil, err
	}
	defer log.Close()
	command := exec.Command(filepath.Join(p.bin, "postgres"), p.flags()...)
	command.Dir = p.socket
	command.Stdout, command.Stderr = log, log
	command.SysProcAttr = childOf(p.owner.credential, syscall.SIGINT)
	c, err := begin(command)
	if err != nil {
		return nil, err
	}
	if err := p.ready(c, limit, stop); err != nil {
		end(c)
		return nil, fmt.Errorf("%w; see %s", err, logName)
	}
	return c, nil
}

// flags are the flags of a server without a network. The last three are always on,
// whatever a settings file says, so that what was acknowledged survives a power cut.
// endEarlier recognises our servers by the first ones.
func (p place) flags() []string {
	return []string{"-D", p.data, "-c", "listen_addresses=", "-c", "unix_socket_directories=" + p.socket, "-c", "unix_socket_permissions=0700",
		"-c", "max_connections=50", "-c", "log_min_messages=fatal",
		"-c", "fsync=on", "-c", "full_page_writes=on", "-c", "synchronous_commit=on"}
}

var errEnded = errors.New("postgres did not start")

// ready waits until the server says that it is ready.
func (p place) ready(c *child, limit time.Duration, stop <-chan struct{}) error {
	deadline := time.After(limit)
	for {
		select {
		case <-c.exited:
			return errEnded
		case <-stop:
			return errors.New("postgres is no longer needed")
		case <-deadline:
			return fmt.Errorf("postgres did not answer within %s", limit)
		case <-time.After(20 * time.Millisecond):
			status, err := os.ReadFile(filepath.Join(p.data, "postmaster.pid"))
			own := strconv.Itoa(c.pid) + "\n" // not a file from before a crash
			if err == nil && strings.HasPrefix(string(status), own) && strings.Contains(string(status), "ready") {
				return nil
			}
		}
	}
}

// end stops a server and waits until it has ended. Transactions in progress fail.
func end(c *child) {
	for _, s := range earlierSteps {
		select {
		case <-c.exited:
			return
		default:
			syscall.Kill(c.pid, s.signal)
		}
		select {
		case <-c.exited:
		case <-time.After(s.wait):
		}
	}
	<-c.exited
}
