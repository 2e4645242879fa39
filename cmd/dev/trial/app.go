package trial

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"syscall"
	"time"
)

// app is the program on a data folder of its own.
type app struct {
	url, token string
	folder     string
	flags      []string // of serve, besides address and folder
	command    *exec.Cmd
	server     int // the process of its Postgres that was killed last
}

// hopeless is how long a start is waited for before the run is given up: longer
// than allowed, so that the figure is known.
const hopeless = 2 * time.Minute

var (
	address    = regexp.MustCompile(`is at (http://\S+)`)
	setupToken = regexp.MustCompile(`setup token (\S+)`)
)

func build(root, folder string) (*app, error) {
	c := exec.Command("go", "build", "-o", filepath.Join(folder, "strokeledger"), "./cmd/strokeledger")
	c.Dir = root
	if out, err := c.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("go build: %w: %s", err, out)
	}
	return &app{folder: folder}, nil
}

func (a *app) data() string { return filepath.Join(a.folder, "data") }

// start runs the program and reads where it serves and, the first time, the
// token of the first account.
func (a *app) start() error {
	a.command = exec.Command(filepath.Join(a.folder, "strokeledger"), append([]string{"serve", "--listen", "127.0.0.1:0", "--data", a.data()}, a.flags...)...)
	for _, setting := range os.Environ() { // a named database would be somebody's own
		if !strings.HasPrefix(setting, "DATABASE_URL=") && !strings.HasPrefix(setting, "STROKELEDGER_") {
			a.command.Env = append(a.command.Env, setting)
		}
	}
	out, err := a.command.StdoutPipe()
	if err != nil {
		return err
	}
	log, err := os.OpenFile(filepath.Join(a.folder, "log"), os.O_CREATE|os.O_APPEND|os.O_WRONLY, 0o600)
	if err != nil {
		return err
	}
	defer log.Close()
	a.command.Stderr = log
	if err := a.command.Start(); err != nil {
		return err
	}
	said := make(chan error, 1)
	go func() { said <- a.read(out) }()
	select {
	case err := <-said:
		return err
	case <-time.After(hopeless):
		return fmt.Errorf("the app did not start within %s", hopeless)
	}
}

func (a *app) read(out io.Reader) error {
	first := a.token == ""
	found := false
	lines := bufio.NewScanner(out)
	for lines.Scan() {
		if m := address.FindStringSubmatch(lines.Text()); m != nil {
			a.url, found = m[1], true
		}
		if m := setupToken.FindStringSubmatch(lines.Text()); m != nil {
			a.token = m[1]
		}
		if found && (!first || a.token != "") {
			return nil
		}
	}
	log, _ := os.ReadFile(filepath.Join(a.folder, "log"))
	return fmt.Errorf("the app ended: %s", log[max(0, len(log)-2000):])
}

// kill ends the program as a power cut does.
func (a *app) kill() {
	a.command.Process.Kill()
	a.command.Wait()
}

// stop ends the program in peace.
func (a *app) stop() error {
	if a.command == nil || a.command.Process == nil || a.command.ProcessState != nil {
		return nil
	}
	a.command.Process.Signal(syscall.SIGTERM)
	if err := a.command.Wait(); err != nil {
		return fmt.Errorf("the app: %w", err)
	}
	return nil
}

// postgres reads which process is the server of the data folder now.
func (a *app) postgres() (int, error) {
	said, err := os.ReadFile(filepath.Join(a.data(), "postgres", "data", "postmaster.pid"))
	if err != nil {
		return 0, err
	}
	first, _, _ := strings.Cut(string(said), "\n")
	return strconv.Atoi(first)
}

// killPostgres kills the server, and every process that it started when all is
// set, after seeing that it is the one of this folder.
func (a *app) killPostgres(all bool) error {
	pid, err := a.postgres()
	if err != nil {
		return err
	}
	out, err := exec.Command("ps", "-A", "-ww", "-o", "pid=,ppid=,args=").Output()
	if err != nil {
		return fmt.Errorf("ps: %w", err)
	}
	var server bool
	var children []int
	for line := range strings.Lines(string(out)) {
		words := strings.Fields(line)
		if len(words) < 3 {
			continue
		}
		switch strconv.Itoa(pid) {
		case words[0]:
			server = strings.Contains(line, " -D "+filepath.Join(a.data(), "postgres", "data")+" ")
		case words[1]:
			if child, err := strconv.Atoi(words[0]); err == nil {
				children = append(children, child)
			}
		}
	}
	if !server {
		return fmt.Errorf("process %d is not the Postgres of this run", pid)
	}
	syscall.Kill(pid, syscall.SIGKILL)
	if all {
		for _, child := range children {
			syscall.Kill(child, syscall.SIGKILL)
		}
	}
	a.server = pid
	return nil
}

// waitReady waits until another server has taken the place of the one that was
// killed, and the app says that it is ready.
func (a *app) waitReady() error {
	for deadline := time.Now().Add(hopeless); time.Now().Before(deadline); time.Sleep(50 * time.Millisecond) {
		if pid, err := a.postgres(); err != nil || pid == a.server {
			continue
		}
		got, err := http.Get(a.url + "/readyz")
		if err != nil {
			return fmt.Errorf("the app is gone: %w", err)
		}
		got.Body.Close()
		if got.StatusCode == http.StatusOK {
			return nil
		}
	}
	return errors.New("the app did not find its Postgres again")
}
