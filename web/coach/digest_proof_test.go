package coach

import (
	"strings"
	"testing"
	"time"
)

// The letter says who asks, what for, how to answer and what to do if it was somebody
// else.
func TestProof(t *testing.T) {
	got := NewProof(ProofInput{Name: "Robin Ó Briain", Site: "https://golf.example.org", Daily: true, Link: "https://golf.example.org/x", Until: time.Date(2026, 6, 8, 18, 30, 0, 0, time.UTC)})
	want := Digest{Subject: "Strokeledger: confirm your address", Text: `The account “Robin Ó Briain” on https://golf.example.org asked for mail to this address: once a day at most, with what is new between coach and pupil.

If that was you, open this page and press “Start the mail”:
https://golf.example.org/x

The link works once, until 8 Jun 2026, 18:30 UTC. No mail comes before that.

If it was not you, you need do nothing, and no mail comes. Somebody may have mistyped an address. If you say so on the same page, no letter like this comes for 90 days.
`}
	if got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// Whoever makes an account cannot have an address or an advertisement sent to anybody in
// its name.
func TestTheNameInALetterIsAName(t *testing.T) {
	for name, stands := range map[string]bool{
		"Robin": true, "Inès Le Gall-O’Neill": true, "J. R. Møller Jr.": true, "O'Brien": true, "佐藤 健": true,
		"": false, "evil.example": false, "Win at http://evil.example": false, "www Evil": false, "robin@evil.example": false, "Call 555 123": false,
		"Robin\r\nBcc: all@club.example": false, strings.Repeat("a", 41): false, "a/b": false, "“Robin” wrote to you:": false,
	} {
		text := NewProof(ProofInput{Name: name, Site: "https://golf.example.org"}).Text
		if got := strings.Contains(text, "“"+name+"”"); got != stands {
			t.Errorf("%q: %v: %s", name, got, text)
		}
		if begins := strings.HasPrefix(text, "An account on https://golf.example.org asked"); begins == stands {
			t.Errorf("%q: %s", name, text)
		}
	}
}
