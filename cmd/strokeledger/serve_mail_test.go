package main

import (
	"strings"
	"testing"

	"strokeledger/handlers/mail"
)

func TestMailSettings(t *testing.T) {
	for name, value := range map[string]string{"SERVER": "mail.example.org:587", "FROM": "golf@example.org", "USER": "golf", "PASSWORD": "birdie on the 4th"} {
		t.Setenv("STROKELEDGER_MAIL_"+name, value)
	}
	t.Setenv("DATABASE_URL", "postgres://x")
	c, err := readServeConfig([]string{"--address", "http://golf.example.org"}, streams{})
	if err != nil {
		t.Fatal(err)
	}
	want := mail.Server{Host: "mail.example.org", Port: 587, Security: mail.StartTLS, User: "golf", Password: "birdie on the 4th", From: "golf@example.org"}
	if c.mail == nil || *c.mail != want || c.options(nil).Mail == nil {
		t.Errorf("%+v", c.mail)
	}
	for flags, want := range map[string]string{
		"":                       "--address",
		"--mail-server mail.org": "HOST:PORT",
		"--mail-from golf":       "golf@example.org",
		"--mail-security ssl":    "starttls, tls, none",
		"--mail-security none":   "127.0.0.1:25",
	} {
		args := append([]string{"serve"}, strings.Fields(flags)...)
		if flags != "" {
			args = append(args, "--address", "http://golf.example.org")
		}
		if r := runLine("", args...); r.status != exitUsage || !strings.Contains(r.err, want) || strings.Contains(r.err, "birdie") {
			t.Errorf("%s: %+v", flags, r)
		}
	}
	t.Setenv("STROKELEDGER_MAIL_PASSWORD", "")
	if r := runLine("", "serve", "--address", "http://golf.example.org"); r.status != exitUsage || !strings.Contains(r.err, "both or neither") {
		t.Errorf("%+v", r)
	}
	t.Setenv("STROKELEDGER_MAIL_SERVER", "")
	if c, err := readServeConfig(nil, streams{}); err != nil || c.mail != nil || c.options(nil).Mail != nil {
		t.Errorf("without a server: %+v, %v", c.mail, err)
	}
}
