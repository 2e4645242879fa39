package main

import (
	"os"
	"regexp"
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

// Every setting that the help names stands in the guide to settings, and reaches the app
// in Docker, where there is no private Postgres and so no data folder.
func TestEverySettingIsDocumentedAndReachesDocker(t *testing.T) {
	help := runLine("", "serve", "--help").out
	settings := regexp.MustCompile(`\(([A-Z_]{5,})(=yes)?\)`).FindAllStringSubmatch(help, -1)
	if len(settings) < 7 {
		t.Fatalf("%d settings in %s", len(settings), help)
	}
	read := func(name string) string {
		text, err := os.ReadFile("../../" + name)
		if err != nil {
			t.Fatal(err)
		}
		return string(text)
	}
	guide, compose := read("web/site/help/settings.md"), read("docker-compose.yml")
	for _, s := range settings {
		if !strings.Contains(guide, "`"+s[1]) {
			t.Errorf("the guide has no %s", s[1])
		}
		if s[1] != "STROKELEDGER_DATA" && !strings.Contains(compose, "      "+s[1]+": ") {
			t.Errorf("docker-compose.yml has no %s", s[1])
		}
	}
}
