package mail

import (
	"errors"
	"io"
	"mime"
	"mime/quotedprintable"
	netmail "net/mail"
	"strings"
	"testing"
	"time"

	"strokeledger/handlers/mail/mailtest"
)

// newPostOffice opens a post office, and returns the way to it. refuse is its answer to
// a receiver, empty to take every letter.
func newPostOffice(t *testing.T, refuse string) (*mailtest.Office, Server) {
	t.Helper()
	p := mailtest.Open(t)
	p.Refuse = refuse
	return p, Server{Host: "127.0.0.1", Port: p.Port(), Security: Plain, From: "golf@club.example"}
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
	if len(p.All()) != 1 || p.All()[0].From != "MAIL FROM:<golf@club.example> BODY=8BITMIME" || p.All()[0].To != "RCPT TO:<asa@club.example>" {
		t.Fatalf("%+v", p.All())
	}
	m, err := netmail.ReadMessage(strings.NewReader(p.All()[0].Data))
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
	if len(p.All()) != 1 || p.All()[0].To != "RCPT TO:<robin@club.example>" {
		t.Errorf("%+v", p.All())
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
	p.Refuse = ""
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
	if len(p.All()) != 0 {
		t.Errorf("%+v", p.All())
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
		p.Judge, p.HangUp = c.judge, c.hangUp
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
	for _, one := range p.All() {
		m, err := netmail.ReadMessage(strings.NewReader(one.Data))
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
	if p.All()[0] != p.All()[1] {
		t.Errorf("%+v is not %+v", p.All()[0], p.All()[1])
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
