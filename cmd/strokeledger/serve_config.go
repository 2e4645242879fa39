package main

import (
	"crypto/rand"
	"flag"
	"log/slog"
	"net"
	"net/netip"
	"os"
	"strings"
	"time"

	"strokeledger/handlers"
	"strokeledger/handlers/mail"
)

// serveConfig says how the web app runs.
type serveConfig struct {
	listen   string
	database string // URL of a server; empty for a private one in data
	data     string
	signUp   string
	tls      bool // a proxy in front speaks TLS
	proxies  []string
	address  string       // of the site; empty for any
	mail     *mail.Server // nil for a site without mail
	demo     bool
}

// readServeConfig reads flags and the environment; flags win.
func readServeConfig(args []string, s streams) (serveConfig, error) {
	var c serveConfig
	flags := flag.NewFlagSet("serve", flag.ContinueOnError)
	flags.StringVar(&c.listen, "listen", env("STROKELEDGER_LISTEN", "127.0.0.1:8177"), "address and port to listen on (STROKELEDGER_LISTEN)")
	flags.StringVar(&c.database, "database", os.Getenv("DATABASE_URL"), "URL of a Postgres server; without it, a private one is started (DATABASE_URL)")
	flags.StringVar(&c.data, "data", os.Getenv("STROKELEDGER_DATA"), "data folder of the private Postgres; without it, one in your home folder (STROKELEDGER_DATA)")
	flags.StringVar(&c.signUp, "sign-up", env("STROKELEDGER_SIGN_UP", "invitation"), "who may create an account: open, invitation or closed (STROKELEDGER_SIGN_UP)")
	flags.BoolVar(&c.tls, "behind-tls", os.Getenv("STROKELEDGER_BEHIND_TLS") == "yes", "a proxy in front speaks TLS, so cookies are sent over TLS only; --proxies names it (STROKELEDGER_BEHIND_TLS=yes)")
	proxies := flags.String("proxies", os.Getenv("STROKELEDGER_PROXIES"), "address ranges of the proxies in front, with commas between them, such as 10.0.0.0/8 (STROKELEDGER_PROXIES)")
	flags.StringVar(&c.address, "address", os.Getenv("STROKELEDGER_ADDRESS"), "address of the site, such as https://golf.example.org; links start with it, and requests for other hosts are refused (STROKELEDGER_ADDRESS)")
	post := mailFlags(flags)
	flags.BoolVar(&c.demo, "demo", false, "put a made-up club with players, a coach and rounds into the private Postgres")
	rest, err := parse(flags, args, s, "[--listen ADDRESS] [--database URL] [--data FOLDER] [--sign-up WHO] [--behind-tls] [--proxies RANGES] [--address URL] [--mail-server HOST:PORT] [--mail-from ADDRESS] [--mail-security HOW] [--demo]")
	if err != nil {
		return c, err
	}
	if len(rest) > 0 {
		return c, usagef("unexpected argument %q", rest[0])
	}
	if tls := os.Getenv("STROKELEDGER_BEHIND_TLS"); tls != "" && tls != "yes" && tls != "no" {
		return c, usagef("STROKELEDGER_BEHIND_TLS %q; allowed: yes, no", tls)
	}
	if c.proxies, err = parseProxies(*proxies); err != nil {
		return c, err
	}
	if err := c.check(); err != nil {
		return c, err
	}
	c.mail, err = post.server(c.address)
	return c, err
}

// parseProxies reads address ranges with commas between them.
func parseProxies(text string) ([]string, error) {
	var all []string
	for prefix := range strings.SplitSeq(text, ",") {
		if prefix = strings.TrimSpace(prefix); prefix == "" {
			continue
		}
		if _, err := netip.ParsePrefix(prefix); err != nil {
			return nil, usagef("--proxies %q; allowed: address ranges with commas between them, such as 10.0.0.0/8", text)
		}
		all = append(all, prefix)
	}
	return all, nil
}

func env(name, otherwise string) string {
	if value := os.Getenv(name); value != "" {
		return value
	}
	return otherwise
}

// check refuses wrong settings with their name, their value and what is allowed, and
// fills in the data folder.
func (c *serveConfig) check() error {
	host, _, err := net.SplitHostPort(c.listen)
	if err != nil {
		return usagef("--listen %q; allowed: ADDRESS:PORT, such as 127.0.0.1:8177", c.listen)
	}
	switch handlers.SignUp(c.signUp) {
	case handlers.SignUpOpen, handlers.SignUpInvitation, handlers.SignUpClosed:
	default:
		return usagef("--sign-up %q; allowed: open, invitation, closed", c.signUp)
	}
	if err := c.checkFront(); err != nil {
		return err
	}
	if err := c.checkDemo(host); err != nil {
		return err
	}
	if c.database == "" && c.data == "" {
		if c.data, err = ownData(); err != nil {
			return err
		}
	}
	if c.database != "" {
		c.data = ""
	}
	return nil
}

// checkDemo refuses the made-up club where others might sign in to it.
func (c *serveConfig) checkDemo(host string) error {
	if c.demo && c.database != "" {
		return usagef("--demo with --database; allowed: the private Postgres only, since the password of the demo is printed")
	}
	if c.demo && !loopback(host) {
		return usagef("--demo with --listen %q; allowed: a loopback address, such as 127.0.0.1:8177", c.listen)
	}
	return nil
}

// checkFront refuses settings of the proxy in front that do not fit together.
func (c *serveConfig) checkFront() (err error) {
	if c.tls && len(c.proxies) == 0 {
		return usagef("--behind-tls without --proxies, so all visitors would count as one; name the address ranges of the proxy, such as --proxies 127.0.0.1/32")
	}
	if c.address == "" {
		return nil
	}
	if c.address, err = handlers.ParseAddress(c.address); err != nil {
		return usagef("--address %v", err)
	}
	if c.tls != strings.HasPrefix(c.address, "https://") {
		return usagef("--address %q; allowed: https with --behind-tls, http without", c.address)
	}
	return nil
}

// options are the settings that the handlers need. The setup token is new each
// time.
func (c *serveConfig) options(log *slog.Logger) handlers.Options {
	options := handlers.Options{SignUp: handlers.SignUp(c.signUp), Secure: c.tls, Proxies: c.proxies, Address: c.address, SetupToken: rand.Text(), Log: log, Clock: time.Now}
	if c.mail != nil {
		options.Mail = c.mail.Send
	}
	return options
}

// unguarded reports whether other machines can reach the address without TLS.
func (c *serveConfig) unguarded() bool {
	host, _, _ := net.SplitHostPort(c.listen)
	return !c.tls && !loopback(host)
}

func loopback(host string) bool {
	ip := net.ParseIP(host)
	return host == "localhost" || ip != nil && ip.IsLoopback()
}
