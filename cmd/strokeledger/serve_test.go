package main

import (
	"strings"
	"testing"
)

func TestAProxyMustBeNamed(t *testing.T) {
	r := runLine("", "serve", "--behind-tls")
	if r.status != exitUsage || !strings.Contains(r.err, "--proxies 127.0.0.1/32") {
		t.Errorf("%+v", r)
	}
	t.Setenv("STROKELEDGER_BEHIND_TLS", "yes")
	if r := runLine("", "serve"); r.status != exitUsage || !strings.Contains(r.err, "--proxies") {
		t.Errorf("from the environment: %+v", r)
	}
}

func TestServeReadsTheEnvironment(t *testing.T) {
	for name, value := range map[string]string{"STROKELEDGER_BEHIND_TLS": "yes", "STROKELEDGER_PROXIES": "10.0.0.0/8, 127.0.0.1/32", "STROKELEDGER_ADDRESS": "https://Golf.example.org:443",
		"STROKELEDGER_SIGN_UP": "closed", "STROKELEDGER_LISTEN": "0.0.0.0:1", "DATABASE_URL": "postgres://x"} {
		t.Setenv(name, value)
	}
	c, err := readServeConfig(nil, streams{})
	if err != nil {
		t.Fatal(err)
	}
	if !c.tls || strings.Join(c.proxies, " ") != "10.0.0.0/8 127.0.0.1/32" || c.address != "https://golf.example.org" || c.signUp != "closed" || c.listen != "0.0.0.0:1" || c.database != "postgres://x" {
		t.Errorf("%+v", c)
	}
}

func TestOtherMachinesWithoutTLSAreWarnedOf(t *testing.T) {
	for listen, want := range map[string]bool{"127.0.0.1:8177": false, "localhost:8177": false, "[::1]:8177": false, "0.0.0.0:8177": true, ":8177": true, "192.168.1.5:8177": true, "[::]:8177": true} {
		if c := (serveConfig{listen: listen}); c.unguarded() != want {
			t.Errorf("%s: %v", listen, c.unguarded())
		}
		if c := (serveConfig{listen: listen, tls: true}); c.unguarded() {
			t.Errorf("%s with TLS is warned of", listen)
		}
	}
}
