package main

import (
	"flag"
	"os"

	"strokeledger/handlers/mail"
)

// mailConfig says how letters are sent, as it was written.
type mailConfig struct{ at, from, security string }

// mailFlags adds the flags about mail. Who signs in to the mail server is read from the
// environment alone, since other people on a machine see the flags of a command.
func mailFlags(flags *flag.FlagSet) *mailConfig {
	var c mailConfig
	flags.StringVar(&c.at, "mail-server", os.Getenv("STROKELEDGER_MAIL_SERVER"), "mail server for mail about notices, such as mail.example.org:587; without it, no mail is sent (STROKELEDGER_MAIL_SERVER; STROKELEDGER_MAIL_USER and STROKELEDGER_MAIL_PASSWORD sign in to it)")
	flags.StringVar(&c.from, "mail-from", os.Getenv("STROKELEDGER_MAIL_FROM"), "address that the mail comes from (STROKELEDGER_MAIL_FROM)")
	flags.StringVar(&c.security, "mail-security", env("STROKELEDGER_MAIL_SECURITY", string(mail.StartTLS)), "how the connection to the mail server is protected: starttls, tls, or none on this machine (STROKELEDGER_MAIL_SECURITY)")
	return &c
}

// server checks the settings; it is nil without a mail server. Links in mail start with
// the address of the site.
func (c mailConfig) server(address string) (*mail.Server, error) {
	if c.at == "" {
		return nil, nil
	}
	s := mail.Server{Security: mail.Security(c.security), User: os.Getenv("STROKELEDGER_MAIL_USER"), Password: os.Getenv("STROKELEDGER_MAIL_PASSWORD")}
	var err error
	if s.Host, s.Port, err = mail.ParseServer(c.at); err != nil {
		return nil, usagef("--mail-server %v", err)
	}
	if s.From, err = mail.ParseFrom(c.from); err != nil {
		return nil, usagef("--mail-from %v", err)
	}
	switch {
	case s.Security != mail.StartTLS && s.Security != mail.TLS && s.Security != mail.Plain:
		return nil, usagef("--mail-security %q; allowed: starttls, tls, none", c.security)
	case s.Security == mail.Plain && !loopback(s.Host):
		return nil, usagef("--mail-security none with --mail-server %q; allowed: a mail server on this machine, such as 127.0.0.1:25", c.at)
	case (s.User == "") != (s.Password == ""):
		return nil, usagef("STROKELEDGER_MAIL_USER and STROKELEDGER_MAIL_PASSWORD; allowed: both or neither")
	case address == "":
		return nil, usagef("--mail-server without --address, so links in the mail would lead nowhere; name it, such as --address https://golf.example.org")
	}
	return &s, nil
}
