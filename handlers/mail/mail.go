// Package mail hands letters to a mail server. It answers whether the server took one;
// what is said in a letter, and to whom, is decided elsewhere.
//
// There are three answers, not two. A server that was heard to take the letter has it,
// whatever happens to the connection afterwards. One that refused it, or never got to
// its end, does not have it. Between the last line of the letter and the answer to it
// nobody knows (RFC 1047): then Send returns ErrUncertain. Whoever sends such a letter
// again gives it the same ID, date and text. It is then the same message (RFC 5322,
// section 3.6.4), and a mailbox that drops duplicates shows it once (RFC 7352).
package mail

import (
	"cmp"
	"context"
	"crypto/rand"
	"errors"
	"fmt"
	"net"
	netmail "net/mail"
	"regexp"
	"strconv"
	"strings"
	"time"
	"unicode"

	"github.com/wneessen/go-mail"
)

// Security says how the connection to a mail server is protected.
type Security string

// The ways of protecting it. A server is never spoken to without protection unless that
// was chosen, which is allowed on this machine only.
const (
	StartTLS Security = "starttls" // after the greeting, or not at all; usually port 587
	TLS      Security = "tls"      // from the first byte; usually port 465
	Plain    Security = "none"
)

// Server is a mail server and the account that sends through it.
type Server struct {
	Host     string
	Port     int
	Security Security
	User     string // empty for a server that asks for none
	Password string
	From     string // the address that letters come from
}

// Letter is a letter of plain text to one person.
type Letter struct {
	Name, To    string // of that person
	Subject     string
	Text        string
	Unsubscribe string // where the person can end such letters; empty for letters that come once

	ID   string    // the first part of its Message-ID, for a letter that may have to be sent again; empty for one that is sent once
	Date time.Time // when it was written; zero for now
}

// NewID makes the first part of a Message-ID.
func NewID() string { return rand.Text() }

// ErrHeader says that a value cannot stand in the head of a letter, where it might begin
// a line of its own.
var ErrHeader = errors.New("a control character in the head of a letter")

// ErrUncertain says that the server may have taken a letter: it was handed over whole,
// and the answer did not come.
var ErrUncertain = errors.New("nobody knows whether the mail server took the letter")

// sendTime is how long a mail server may take for a letter.
const sendTime = 30 * time.Second

// ParseServer reads host and port of a mail server, such as mail.example.org:587.
func ParseServer(text string) (host string, port int, err error) {
	host, number, err := net.SplitHostPort(text)
	if err == nil {
		port, err = strconv.Atoi(number)
	}
	if err != nil || host == "" || port < 1 || port > 65535 || strings.ContainsFunc(host, unicode.IsSpace) {
		return "", 0, fmt.Errorf("%q; allowed: HOST:PORT, such as mail.example.org:587", text)
	}
	return host, port, nil
}

// ParseFrom reads the address that letters come from.
func ParseFrom(text string) (string, error) {
	if !plain(text) {
		return "", fmt.Errorf("%q; allowed: an address alone, such as golf@example.org", text)
	}
	return text, nil
}

// plain reports whether a text is one address and nothing besides.
func plain(text string) bool {
	a, err := netmail.ParseAddress(text)
	return err == nil && a.Address == text && !strings.ContainsFunc(text, unicode.IsControl)
}

// domain is what the sender's address ends with. It stands in for the name of this
// machine, which is nobody's business.
func (s Server) domain() string {
	_, domain, _ := strings.Cut(s.From, "@")
	return domain
}

// message writes a letter in the form in which it is sent.
func (s Server) message(l Letter) (*mail.Msg, error) {
	for _, head := range []string{s.From, l.Name, l.To, l.Subject, l.Unsubscribe, l.ID} {
		if strings.ContainsFunc(head, unicode.IsControl) {
			return nil, ErrHeader
		}
	}
	m := mail.NewMsg(mail.WithNoDefaultUserAgent())
	if err := m.FromFormat("Strokeledger", s.From); err != nil {
		return nil, errors.New("the sender is not an address")
	}
	if !plain(l.To) {
		return nil, errors.New("the receiver is not an address")
	}
	m.ToMailAddress(&netmail.Address{Name: l.Name, Address: l.To})
	m.Subject(l.Subject)
	m.SetDateWithValue(cmp.Or(l.Date, time.Now()))
	m.SetMessageIDWithValue(cmp.Or(l.ID, NewID()) + "@" + s.domain())
	m.SetGenHeader("Auto-Submitted", "auto-generated") // RFC 3834, section 5: no holiday notes in answer
	if l.Unsubscribe != "" {
		m.SetGenHeaderPreformatted(mail.HeaderListUnsubscribe, "<"+l.Unsubscribe+">") // RFC 2369, section 3.2
		if strings.HasPrefix(l.Unsubscribe, "https://") {
			m.SetGenHeaderPreformatted(mail.HeaderListUnsubscribePost, "List-Unsubscribe=One-Click") // RFC 8058, section 3.1
		}
	}
	m.SetBodyString(mail.TypeTextPlain, l.Text)
	return m, nil
}

// client connects to the server.
func (s Server) client() (*mail.Client, error) {
	options := []mail.Option{mail.WithPort(s.Port), mail.WithTimeout(sendTime), mail.WithHELO(s.domain())}
	switch s.Security {
	case TLS:
		options = append(options, mail.WithSSL())
	case Plain:
		options = append(options, mail.WithTLSPolicy(mail.NoTLS))
	default:
		options = append(options, mail.WithTLSPolicy(mail.TLSMandatory))
	}
	if s.User != "" {
		options = append(options, mail.WithSMTPAuth(mail.SMTPAuthAutoDiscover), mail.WithUsername(s.User), mail.WithPassword(s.Password))
	}
	return mail.NewClient(s.Host, options...)
}

// Send hands a letter to the server. Its errors may be logged: they name no address and
// no password. With ErrUncertain the server may have the letter, with any other error
// it does not.
func (s Server) Send(ctx context.Context, l Letter) error {
	m, err := s.message(l)
	if err != nil {
		return err
	}
	c, err := s.client()
	if err != nil {
		return s.harmless(err)
	}
	ctx, cancel := context.WithTimeout(ctx, sendTime)
	defer cancel()
	open, err := c.DialToSMTPClientWithContext(ctx)
	if err != nil {
		return s.harmless(err)
	}
	defer c.CloseWithSMTPClient(open) // says goodbye; what became of the letter is known by then
	switch err = c.SendWithSMTPClient(open, m); {
	case m.IsDelivered():
		return nil
	case unanswered(err):
		return fmt.Errorf("%w: %w", ErrUncertain, s.harmless(err))
	}
	return s.harmless(err)
}

// unanswered reports whether an error came after the end of a letter, without a code of
// the server's. Source: RFC 5321, section 4.1.1.4: only the answer to the end of the
// data says who is responsible for the letter.
func unanswered(err error) bool {
	var failed *mail.SendError
	return errors.As(err, &failed) && failed.Reason == mail.ErrSMTPDataClose && failed.ErrorCode() == 0
}

var addressLike = regexp.MustCompile(`[^\s<>"']+@[^\s<>"',;]+`)

// mostError is how many letters of an error are kept.
const mostError = 300

// harmless takes out of an error what a mail server may repeat in it: addresses, and what
// it was signed in with.
func (s Server) harmless(err error) error {
	if err == nil {
		return nil
	}
	text := addressLike.ReplaceAllString(err.Error(), "(address)")
	for _, secret := range []string{s.Password, s.User} {
		if secret != "" {
			text = strings.ReplaceAll(text, secret, "(secret)")
		}
	}
	if len(text) > mostError {
		text = strings.ToValidUTF8(text[:mostError], "") + "…"
	}
	return errors.New(text)
}
