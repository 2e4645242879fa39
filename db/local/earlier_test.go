package local

import (
	"context"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"
)

// impatient makes the steps of ending a server short.
func impatient(t *testing.T) {
	t.Helper()
	steps := earlierSteps
	t.Cleanup(func() { earlierSteps = steps })
	earlierSteps = []step{{syscall.SIGINT, 300 * time.Millisecond}, {syscall.SIGQUIT, 300 * time.Millisecond}, {syscall.SIGKILL, 20 * time.Second}}
}

// abandoned starts a server and forgets it, as a program does that is killed,
// with a client whose backend is returned.
func abandoned(t *testing.T, where string) (server *child, backend int) {
	t.Helper()
	s, err := StartThrowaway(where)
	if err != nil {
		t.Fatal(err)
	}
	c, err := pgx.Connect(t.Context(), s.URL)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { c.Close(context.Background()) })
	if err := c.QueryRow(t.Context(), "select pg_backend_pid()").Scan(&backend); err != nil {
		t.Fatal(err)
	}
	s.lock.Close()
	return s.running, backend
}

func settled(t *testing.T, where string) {
	t.Helper()
	s, err := StartThrowaway(where)
	if err != nil {
		log, _ := os.ReadFile(filepath.Join(where, "postgres.log"))
		t.Fatalf("%v\n%s", err, log)
	}
	s.Stop()
	if _, err := os.Stat(s.place.socket); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("the socket's folder is left: %v", err)
	}
}

// However much of an earlier server hangs, it is ended and the next one starts.
func TestAServerThatHangsIsEnded(t *testing.T) {
	for name, hang := range map[string]func(server, backend int){
		"nothing hangs": func(int, int) {},
		"a backend":     func(_, backend int) { syscall.Kill(backend, syscall.SIGSTOP) },
		"the server":    func(server, _ int) { syscall.Kill(server, syscall.SIGSTOP) },
		"a backend without server": func(server, backend int) {
			syscall.Kill(backend, syscall.SIGSTOP)
			syscall.Kill(server, syscall.SIGKILL)
		},
		"a server without backends": func(server, backend int) {
			syscall.Kill(server, syscall.SIGSTOP)
			syscall.Kill(backend, syscall.SIGKILL)
		},
	} {
		t.Run(name, func(t *testing.T) {
			impatient(t)
			where := folder(t)
			server, backend := abandoned(t, where)
			hang(server.pid, backend)
			settled(t, where)
			<-server.exited
			if all, err := processes(); err != nil || slices.ContainsFunc(all, func(p process) bool { return p.pid == backend }) {
				t.Errorf("the backend lives, %v", err)
			}
		})
	}
}

// The number in the file of a server that died may be that of another program.
func TestANumberThatBelongsToAnotherProgram(t *testing.T) {
	where := folder(t)
	settled(t, where)
	o, err := ownerOf()
	if err != nil {
		t.Fatal(err)
	}
	other := exec.Command("sleep", "600")
	other.SysProcAttr = childOf(o.credential, syscall.SIGKILL)
	running, err := begin(other)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { other.Process.Kill(); <-running.exited }()
	file := filepath.Join(where, "data", "postmaster.pid")
	if err := os.WriteFile(file, []byte(strconv.Itoa(running.pid)+"\n"+filepath.Join(where, "data")+"\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := o.own(file); err != nil {
		t.Fatal(err)
	}
	settled(t, where)
	select {
	case <-running.exited:
		t.Error("the other program was ended")
	default:
	}
}

func TestALivingProgramKeepsItsServer(t *testing.T) {
	where := folder(t)
	s, err := StartThrowaway(where)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Stop()
	if _, err := StartThrowaway(where); err == nil || !strings.Contains(err.Error(), "in use by another running program") {
		t.Errorf("%v", err)
	}
	if !answers(s.place.socket) {
		t.Error("the server was ended")
	}
}

// A server that somebody started by hand is left alone.
func TestAServerStartedByHandIsLeftAlone(t *testing.T) {
	where := folder(t)
	settled(t, where)
	o, err := ownerOf()
	if err != nil {
		t.Fatal(err)
	}
	bin, err := binaries()
	if err != nil {
		t.Fatal(err)
	}
	data := filepath.Join(where, "data")
	hand := exec.Command(filepath.Join(bin, "postgres"), "-D", data, "-k", where, "-h", "")
	hand.Dir, hand.SysProcAttr = where, childOf(o.credential, syscall.SIGQUIT)
	running, err := begin(hand)
	if err != nil {
		t.Fatal(err)
	}
	defer end(running)
	if err := (place{data: data}).ready(running, startLimit, nil); err != nil {
		t.Fatal(err)
	}
	if _, err := StartThrowaway(where); err == nil || !strings.Contains(err.Error(), "process "+strconv.Itoa(running.pid)) {
		t.Errorf("%v", err)
	}
	select {
	case <-running.exited:
		t.Error("it was ended")
	default:
	}
}

func TestWhoIsVerified(t *testing.T) {
	const data, flags = "/d/data", " -c listen_addresses= -c unix_socket_directories=/tmp/s"
	server := func(pid int, folder, command string) process { return process{pid, 1, "1", command, folder} }
	backend := func(pid, parent int, folder string) process {
		return process{pid, parent, "1", "postgres: ledger postgres [local] idle", folder}
	}
	for _, c := range []struct {
		name                   string
		all                    []process
		ours, foreign, unclear []int
	}{
		{"ours with a backend", []process{server(5, data, "/b/postgres -D /d/data"+flags), backend(6, 5, data)}, []int{5, 6}, nil, nil},
		{"ours, where no folder can be seen", []process{server(5, "", "/b/postgres -D /d/data"+flags), backend(6, 5, "")}, []int{5, 6}, nil, nil},
		{"of another folder", []process{server(5, "/e/data", "/b/postgres -D /e/data"+flags), backend(6, 5, "/e/data")}, nil, nil, nil},
		{"a command line that lies", []process{server(5, "/e/data", "/b/postgres -D /d/data"+flags)}, nil, nil, nil},
		{"of a longer name", []process{server(5, "", "/b/postgres -D /d/data2"+flags)}, nil, nil, nil},
		{"started by hand", []process{server(5, data, "/b/postgres -D /d/data"), backend(6, 5, data)}, nil, []int{5}, nil},
		{"started by hand, not to be seen", []process{server(5, "", "/b/postgres -D /d/data"), backend(6, 5, "")}, nil, []int{5}, nil},
		{"a backend whose server died", []process{backend(6, 1, data)}, []int{6}, nil, nil},
		{"a backend that is ending", []process{{6, 1, "1", "postgres: ending", data}}, []int{6}, nil, nil},
		{"a backend of a dead server of any folder", []process{backend(6, 1, "")}, nil, nil, []int{6}},
	} {
		found := sortOut(c.all, data)
		for i, got := range [][]process{found.ours, found.foreign, found.unclear} {
			var pids []int
			for _, p := range got {
				pids = append(pids, p.pid)
			}
			if want := [][]int{c.ours, c.foreign, c.unclear}[i]; !slices.Equal(pids, want) {
				t.Errorf("%s: group %d is %v, want %v", c.name, i, pids, want)
			}
		}
	}
}

// The steps together leave a start under twenty seconds.
func TestEndingTakesLessThanTwentySeconds(t *testing.T) {
	sum := time.Duration(0)
	for _, s := range earlierSteps {
		sum += s.wait
	}
	if sum >= 20*time.Second {
		t.Error(sum)
	}
}
