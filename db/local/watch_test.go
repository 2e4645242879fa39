package local

import (
	"bytes"
	"context"
	"log/slog"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"
)

// sayings is a log that may be read while it is written.
type sayings struct {
	mu   sync.Mutex
	text bytes.Buffer
}

func (s *sayings) Write(b []byte) (int, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.text.Write(b)
}

func (s *sayings) String() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.text.String()
}

// pidOf reads which process serves a data folder.
func pidOf(t *testing.T, data string) int {
	t.Helper()
	all, err := processes()
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range sortOut(all, data).ours {
		if !strings.HasPrefix(p.command, "postgres: ") {
			return p.pid
		}
	}
	t.Fatalf("no server of %s", data)
	return 0
}

// A server that dies is started again at the same address, with what was
// committed, however often.
func TestADeadServerIsStartedAgain(t *testing.T) {
	s, err := StartThrowaway(folder(t))
	if err != nil {
		t.Fatal(err)
	}
	log := &sayings{}
	s.Watch(slog.New(slog.NewTextHandler(log, nil)))
	ask := func(sql string) (n int, err error) {
		ctx, cancel := context.WithTimeout(t.Context(), 5*time.Second)
		defer cancel()
		c, err := pgx.Connect(ctx, s.URL)
		if err != nil {
			return 0, err
		}
		defer c.Close(ctx)
		return n, c.QueryRow(ctx, sql).Scan(&n)
	}
	if _, err := ask("with made as (select 1 as n) select n from made"); err != nil {
		t.Fatal(err)
	}
	c, err := pgx.Connect(t.Context(), s.URL)
	if err != nil {
		t.Fatal(err)
	}
	defer c.Close(context.Background())
	if _, err := c.Exec(t.Context(), "create table kept (n int); insert into kept values (42)"); err != nil {
		t.Fatal(err)
	}
	for range 2 {
		died := pidOf(t, s.place.data)
		syscall.Kill(died, syscall.SIGKILL)
		for deadline := time.Now().Add(time.Minute); ; time.Sleep(50 * time.Millisecond) {
			if n, err := ask("select n from kept"); err == nil && n == 42 && pidOf(t, s.place.data) != died {
				break
			} else if time.Now().After(deadline) {
				t.Fatalf("not started again: %v\n%s", err, log)
			}
		}
	}
	s.Stop()
	if text := log.String(); strings.Count(text, "is being restarted") != 2 || !strings.Contains(text, "is running again") {
		t.Error(text)
	}
	if _, err := ask("select 1"); err == nil {
		t.Error("it runs after its stop")
	}
}

// Stop ends a watch that is waiting to start a server again.
func TestStopWhileTheServerIsDown(t *testing.T) {
	s, err := StartThrowaway(folder(t))
	if err != nil {
		t.Fatal(err)
	}
	log := &sayings{}
	s.Watch(slog.New(slog.NewTextHandler(log, nil)))
	hidden := s.place.data + ".hidden"
	if err := os.Rename(s.place.data, hidden); err != nil { // so that no start succeeds
		t.Fatal(err)
	}
	syscall.Kill(s.running.pid, syscall.SIGKILL)
	for deadline := time.Now().Add(time.Minute); !strings.Contains(log.String(), "the private Postgres did not start"); time.Sleep(20 * time.Millisecond) {
		if time.Now().After(deadline) {
			t.Fatal(log)
		}
	}
	s.Stop()
	if all, err := processes(); err != nil || len(sortOut(all, filepath.Clean(hidden)).ours) > 0 {
		t.Errorf("left: %v, %v", all, err)
	}
}

// What was acknowledged outlives a power cut, whatever the folder's own file of
// settings says.
func TestTheServerWritesThrough(t *testing.T) {
	where := folder(t)
	settled(t, where)
	file, err := os.OpenFile(filepath.Join(where, "data", "postgresql.auto.conf"), os.O_APPEND|os.O_WRONLY, 0)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := file.WriteString("fsync = off\nfull_page_writes = off\nsynchronous_commit = off\n"); err != nil {
		t.Fatal(err)
	}
	file.Close()
	s, err := StartThrowaway(where)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Stop()
	c, err := pgx.Connect(t.Context(), s.URL)
	if err != nil {
		t.Fatal(err)
	}
	defer c.Close(context.Background())
	for _, name := range []string{"fsync", "full_page_writes", "synchronous_commit"} {
		var on string
		if err := c.QueryRow(t.Context(), "select current_setting($1)", name).Scan(&on); err != nil || on != "on" {
			t.Errorf("%s is %q, %v", name, on, err)
		}
	}
}
