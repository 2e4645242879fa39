package mail

import (
	"bufio"
	"cmp"
	"errors"
	"fmt"
	"io"
	"mime"
	"mime/quotedprintable"
	"net"
	netmail "net/mail"
	"strings"
	"sync"
	"testing"
	"time"
)

// taken is a letter as a mail server took it.
type taken struct{ from, to, data string }

// postOffice is a small SMTP server on loopback, which speaks as much of RFC 5321 as it
// takes to hand over a letter.
type postOffice struct {
	net.Listener
	mu     sync.Mutex
	all    []taken
	refuse string // answer to RCPT; empty to take it
	judge  string // answer to a whole letter; empty to take it
	hangUp string // after which command the line goes dead: DATA, once the letter is there, or RSET; empty for never
}

// newPostOffice opens one until the test ends.
func newPostOffice(t *testing.T, refuse string) (*postOffice, Server) {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	p := &postOffice{Listener: l, refuse: refuse}
	var serving sync.WaitGroup
	serving.Go(func() {
		for {
			c, err := l.Accept()
			if err != nil {
				return
			}
			p.serve(c)
		}
	})
	t.Cleanup(func() { l.Close(); serving.Wait() })
	return p, Server{Host: "127.0.0.1", Port: l.Addr().(*net.TCPAddr).Port, Security: Plain, From: "golf@club.example"}
}

func (p *postOffice) serve(c net.Conn) {
	defer c.Close()
	c.SetDeadline(time.Now().Add(2 * time.Second))
	in := bufio.NewReader(c)
	say := func(line string) { fmt.Fprintf(c, "%s\r\n", line) }
	say("220 post.example ready")
	var got taken
	for {
		line, err := in.ReadString('\n')
		if err != nil {
			return
		}
		switch command := strings.ToUpper(line[:min(4, len(line))]); {
		case command == "EHLO":
			say("250-post.example")
			say("250 8BITMIME")
		case command == "RCPT" && p.refuse != "":
			say(p.refuse)
		case command == "MAIL", command == "RCPT":
			if command == "MAIL" {
				got = taken{from: strings.TrimSpace(line)}
			} else {
				got.to += strings.TrimSpace(line)
			}
			say("250 OK")
		case command == "DATA":
			say("354 go on")
			for line = ""; line != ".\r\n" && err == nil; line, err = in.ReadString('\n') {
				got.data += strings.TrimPrefix(line, ".")
			}
			p.mu.Lock()
			p.all = append(p.all, got)
			p.mu.Unlock()
			if p.hangUp == "DATA" {
				return
			}
			say(cmp.Or(p.judge, "250 taken"))
		case command == "RSET" && p.hangUp == "RSET":
			return
		case command == "QUIT":
			say("221 bye")
			return
		default:
			say("250 OK")
		}
	}
}

// A letter arrives as it was written: one receiver, plain text in UTF-8, a date, an
// identifier, and the way to end such letters. Sources: RFC 5322, sections 3.6.1 to
// 3.6.4; RFC 2369, section 3.2; RFC 8058, section 3.1; RFC 3834, section 5.
func TestSend(t *testing.T) {
	p, server := newPostOffice(t, "")
	text := "Since the last mail:\n\n.a line that begins with a dot\nInès hat “gezeigt”.\n"
	l := Letter{Name: `Åsa "Putt" Lund`, To: "asa@club.example", Subject: "Strokeledger: zwei – neue", Text: text, Unsubscribe: "https://golf.example.org/notices/mail/end?player=1&token=AB"}
	if err := server.Send(t.Context(), l); err != nil {
		t.Fatal(err)
	}
	if len(p.all) != 1 || p.all[0].from != "MAIL FROM:<golf@club.example> BODY=8BITMIME" || p.all[0].to != "RCPT TO:<asa@club.example>" {
		t.Fatalf("%+v", p.all)
	}
	m, err := netmail.ReadMessage(strings.NewReader(p.all[0].data))
	if err != nil {
		t.Fatal(err)
	}
	to, err := m.Header.AddressList("To")
	if err != nil || len(to) != 1 || *to[0] != (netmail.Address{Name: l.Name, Address: l.To}) {
		t.Errorf("to %v, %v", to, err)
	}
	if subject, err := new(mime.WordDecoder).DecodeHeader(m.Header.Get("Subject")); err != nil || subject != l.Subject {
		t.Errorf("%q, %v", subject, err)
	}
	if _, err := m.Header.Date(); err != nil {
		t.Error(err)
	}
	for name, want := range map[string]string{"From": `"Strokeledger" <golf@club.example>`, "List-Unsubscribe": "<" + l.Unsubscribe + ">", "List-Unsubscribe-Post": "List-Unsubscribe=One-Click",
		"Auto-Submitted": "auto-generated", "Content-Type": "text/plain; charset=UTF-8", "Content-Transfer-Encoding": "quoted-printable"} {
		if got := m.Header.Get(name); got != want {
			t.Errorf("%s: %q, want %q", name, got, want)
		}
	}
	if id := m.Header.Get("Message-ID"); !strings.HasSuffix(id, "@club.example>") {
		t.Errorf("Message-ID %q", id)
	}
	body, err := io.ReadAll(quotedprintable.NewReader(m.Body))
	if err != nil || strings.TrimRight(strings.ReplaceAll(string(body), "\r\n", "\n"), "\n") != strings.TrimRight(text, "\n") {
		t.Errorf("%q, %v", body, err)
	}
}

// Nothing that a person chose begins a line of its own in the head of a letter.
func TestNothingIsAddedToTheHead(t *testing.T) {
	p, server := newPostOffice(t, "")
	for _, l := range []Letter{
		{Name: "Robin\r\nBcc: all@club.example", To: "robin@club.example"},
		{Name: "Robin\nSubject: You have won", To: "robin@club.example"},
		{Name: "Robin", To: "robin@club.example\r\nRCPT TO:<all@club.example>"},
		{Name: "Robin", To: "robin@club.example", Subject: "News\r\n\r\nanother body"},
		{Name: "Robin", To: "robin@club.example", Unsubscribe: "https://x.example\r\nBcc: all@club.example"},
		{Name: "Robin\x00", To: "robin@club.example"},
	} {
		if err := server.Send(t.Context(), l); !errors.Is(err, ErrHeader) {
			t.Errorf("%q: %v", l, err)
		}
	}
	for _, to := range []string{"", "robin", "robin@club.example, all@club.example", "<all@club.example>"} {
		if err := server.Send(t.Context(), Letter{Name: "Robin", To: to}); err == nil {
			t.Errorf("sent to %q", to)
		}
	}
	hostile := Letter{Name: `"Robin" <all@club.example>, x`, To: "robin@club.example", Subject: "News"}
	if err := server.Send(t.Context(), hostile); err != nil {
		t.Fatal(err)
	}
	if len(p.all) != 1 || p.all[0].to != "RCPT TO:<robin@club.example>" {
		t.Errorf("%+v", p.all)
	}
}

// What goes wrong is told without an address or a password; a server that offers no
// protection gets nothing unless that was chosen.
func TestFailuresAreHarmless(t *testing.T) {
	p, server := newPostOffice(t, "550 5.1.1 <robin@club.example>: no such user of hunter2")
	server.User, server.Password = "", "hunter2"
	l := Letter{Name: "Robin", To: "robin@club.example", Subject: "News", Text: "Hello."}
	err := server.Send(t.Context(), l)
	if err == nil || strings.Contains(err.Error(), "robin") || strings.Contains(err.Error(), "hunter2") || !strings.Contains(err.Error(), "550") {
		t.Errorf("%v", err)
	}
	p.refuse = ""
	server.Security = StartTLS
	if err := server.Send(t.Context(), l); err == nil {
		t.Error("sent without protection")
	}
	server.Security = TLS
	if err := server.Send(t.Context(), l); err == nil {
		t.Error("sent without protection")
	}
	p.Close()
	server.Security = Plain
	if err := server.Send(t.Context(), l); err == nil {
		t.Error("sent to nobody")
	}
	if len(p.all) != 0 {
		t.Errorf("%+v", p.all)
	}
}

// A letter that the server took is sent, even when the line goes dead right after. One
// of whose end nobody heard an answer is uncertain, and one that was refused is not.
// Sources: RFC 1047; RFC 5321, section 4.1.1.4.
func TestWhetherTheServerHasTheLetter(t *testing.T) {
	l := Letter{Name: "Robin", To: "robin@club.example", Subject: "News", Text: "Hello."}
	for name, c := range map[string]struct {
		judge, hangUp   string
		sent, uncertain bool
	}{
		"taken, then a dead line": {hangUp: "RSET", sent: true},
		"no answer":               {hangUp: "DATA", uncertain: true},
		"refused for now":         {judge: "451 4.7.1 later"},
		"refused for good":        {judge: "554 5.7.1 no"},
	} {
		p, server := newPostOffice(t, "")
		p.judge, p.hangUp = c.judge, c.hangUp
		err := server.Send(t.Context(), l)
		if (err == nil) != c.sent || errors.Is(err, ErrUncertain) != c.uncertain {
			t.Errorf("%s: %v", name, err)
		}
	}
	p, server := newPostOffice(t, "550 no")
	p.Close()
	if err := server.Send(t.Context(), l); err == nil || errors.Is(err, ErrUncertain) {
		t.Errorf("no server: %v", err)
	}
}

// A letter that is sent again is the same letter, and other letters are others.
// Source: RFC 5322, section 3.6.4.
func TestALetterSentAgainIsTheSame(t *testing.T) {
	p, server := newPostOffice(t, "")
	l := Letter{Name: "Robin", To: "robin@club.example", Subject: "News", Text: "Hello.", ID: NewID(), Date: time.Date(2026, 6, 5, 7, 0, 0, 0, time.UTC)}
	other := l
	other.ID = ""
	for _, one := range []Letter{l, l, other, other} {
		if err := server.Send(t.Context(), one); err != nil {
			t.Fatal(err)
		}
	}
	ids := map[string]int{}
	for _, one := range p.all {
		m, err := netmail.ReadMessage(strings.NewReader(one.data))
		if err != nil {
			t.Fatal(err)
		}
		if date, err := m.Header.Date(); err != nil || !date.Equal(l.Date) {
			t.Errorf("%v, %v", date, err)
		}
		ids[m.Header.Get("Message-ID")]++
	}
	if len(ids) != 3 || ids["<"+l.ID+"@club.example>"] != 2 {
		t.Errorf("%v", ids)
	}
	if p.all[0] != p.all[1] {
		t.Errorf("%+v is not %+v", p.all[0], p.all[1])
	}
}

func TestSettings(t *testing.T) {
	if host, port, err := ParseServer("mail.example.org:587"); err != nil || host != "mail.example.org" || port != 587 {
		t.Error(host, port, err)
	}
	for _, text := range []string{"", "mail.example.org", ":587", "mail.example.org:0", "mail.example.org:smtp", "a b:25"} {
		if _, _, err := ParseServer(text); err == nil {
			t.Errorf("took %q", text)
		}
	}
	if from, err := ParseFrom("golf@example.org"); err != nil || from != "golf@example.org" {
		t.Error(from, err)
	}
	for _, text := range []string{"", "golf", "Golf <golf@example.org>", "golf@example.org\r\nBcc: x@example.org"} {
		if _, err := ParseFrom(text); err == nil {
			t.Errorf("took %q", text)
		}
	}
}
