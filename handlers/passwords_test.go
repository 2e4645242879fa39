package handlers

import (
	"strings"
	"testing"
)

// about is what a stranger knows of the owner of the passwords below.
var about = []string{"robin.calder@links.example", "Robin Calder", "ledger.fen.example", "Strokeledger"}

func TestWeakPasswordsAreRefused(t *testing.T) {
	for why, all := range map[string][]string{
		"Too short":   {"", "short", "123456789", "ééééééééé", "nine char"},
		"Too long":    {strings.Repeat("words apart ", 17), strings.Repeat("é", 101)},
		"It repeats":  {"aaaaaaaaaa", "          ", "ababababab", "abc!abc!abc!", "AAAAaaaaaa", "aaaaabbbbb", "monkeymonkey", "1111111111", "ééééééééééé"},
		"It follows":  {"1234567890", "0987654321", "qwertyuiop", "poiuytrewq", "QWERTYUIOP", "abcdefghij", "zyxwvutsrqp", "qwerty12345", "asdfgh!12345", "1qaz2wsx3edc", "azertyuiop", "qwertzuiop1", "abcd1234efgh", "xyzabcdefg"},
		"Many people": {"password12", "Password2026!", "P@ssw0rd1234", "pa55word!!", "passwordgolf", "1password1", "iloveyou123", "Iloveyou!!!", "letmein1234", "Dr4g0n123456", "golfer123456", "trustno1trustno1!", "!!welcome!!", "correct horse battery staple", "correcthorsebatterystaple", "sunshine2020", "Liverpool19!", "robinpassword"},
		"It is built": {"strokeledger", "StrokeLedger1", "5trokeledger!", "robin.calder@links.example", "Robin Calder", "robincalder", "calderrobin1", "robin12345", "calder!2026", "ledger.fen.example"},
	} {
		for _, password := range all {
			if got := weakness(password, about); !strings.HasPrefix(got, why) {
				t.Errorf("%q: %q, want %q", password, got, why)
			}
		}
	}
	for _, password := range []string{"a long password", "another password", "wet bunker at noon", "müller kauft brot", "kx7!pf2Qz0", "seven irons in march", "tea and a low draw", "Über1fluss", "the safe side left", "дождь на поле", strings.Repeat("ab cd ef.", 20) + "x y z"} {
		if got := weakness(password, about); got != "" {
			t.Errorf("%q: %s", password, got)
		}
	}
}

// Every entry of the list is refused, and it is long enough to matter.
func TestTheCommonPasswords(t *testing.T) {
	long := 0
	seen := map[string]bool{}
	for line := range strings.Lines(commonText) {
		entry := strings.TrimSuffix(line, "\n")
		if entry != strings.TrimSpace(entry) || bare(entry) == "" || seen[entry] {
			t.Errorf("%q", entry)
		}
		seen[entry] = true
		if len([]rune(entry)) < PasswordMin {
			continue
		}
		long++
		if weakness(entry, nil) == "" || weakness(strings.ToUpper(entry), nil) == "" {
			t.Errorf("%q is taken", entry)
		}
	}
	if long < 1000 {
		t.Errorf("%d of 10 characters and more", long)
	}
}

func BenchmarkWeakness(b *testing.B) {
	long := strings.Repeat("0", 99) + "é" + strings.Repeat("1", 98)
	for b.Loop() {
		weakness(long, about)
	}
}
