// Package mailtest is a small mail server on loopback, for tests: it keeps what it is
// sent, and goes wrong when it is told to.
package mailtest

import (
	"bufio"
	"cmp"
	"fmt"
	"net"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"
)

// Taken is a letter as the server took it: the two commands of its envelope, and the
// text with its head.
type Taken struct{ From, To, Data string }

// Office is the server. It speaks as much of RFC 5321 as it takes to hand over a letter.
// What makes it go wrong is set while no letter is on its way.
type Office struct {
	net.Listener
	Refuse string // answer to a receiver; empty to take every letter
	Judge  string // answer to a whole letter; empty to take it
	HangUp string // the line goes dead at DATA, once the letter is there, or at RSET; empty for never

	mu  sync.Mutex
	all []Taken
}

// Open opens one until the test ends.
func Open(t testing.TB) *Office {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	o := &Office{Listener: l}
	var serving sync.WaitGroup
	serving.Go(func() {
		for {
			c, err := l.Accept()
			if err != nil {
				return
			}
			o.serve(c)
		}
	})
	t.Cleanup(func() { l.Close(); serving.Wait() })
	return o
}

// Port is where it listens.
func (o *Office) Port() int { return o.Addr().(*net.TCPAddr).Port }

// All are the letters that came whole, those too that were refused afterwards.
func (o *Office) All() []Taken {
	o.mu.Lock()
	defer o.mu.Unlock()
	return slices.Clone(o.all)
}

// serve answers on one connection.
func (o *Office) serve(c net.Conn) {
	defer c.Close()
	c.SetDeadline(time.Now().Add(2 * time.Second))
	in := bufio.NewReader(c)
	say := func(line string) { fmt.Fprintf(c, "%s\r\n", line) }
	say("220 post.example ready")
	var got Taken
	for {
		line, err := in.ReadString('\n')
		if err != nil {
			return
		}
		switch command := strings.ToUpper(line[:min(4, len(line))]); {
		case command == "EHLO":
			say("250-post.example")
			say("250 8BITMIME")
		case command == "RCPT" && o.Refuse != "":
			say(o.Refuse)
		case command == "MAIL", command == "RCPT":
			if command == "MAIL" {
				got = Taken{From: strings.TrimSpace(line)}
			} else {
				got.To += strings.TrimSpace(line)
			}
			say("250 OK")
		case command == "DATA":
			say("354 go on")
			got.Data = data(in)
			o.keep(got)
			if o.HangUp == "DATA" {
				return
			}
			say(cmp.Or(o.Judge, "250 taken"))
		case command == "RSET" && o.HangUp == "RSET":
			return
		case command == "QUIT":
			say("221 bye")
			return
		default:
			say("250 OK")
		}
	}
}

// data reads a letter to its end.
func data(in *bufio.Reader) (text string) {
	for {
		line, err := in.ReadString('\n')
		if err != nil || line == ".\r\n" {
			return text
		}
		text += strings.TrimPrefix(line, ".")
	}
}

func (o *Office) keep(got Taken) {
	o.mu.Lock()
	defer o.mu.Unlock()
	o.all = append(o.all, got)
}
