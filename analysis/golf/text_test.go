package golf

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestCleaned(t *testing.T) {
	for text, want := range map[string]string{
		"":                           "",
		"  Harrow\tFen ":             "Harrow Fen",
		"7i\ufeff":                   "7i",
		"a\x00b":                     "ab",
		"a\u2028b\r\n":               "a b",
		"\u2800":                     "",
		"bad \xff":                   "bad ?",
		"Zoë Ångström":               "Zoë Ångström",
		strings.Repeat("é", MaxText): strings.Repeat("é", MaxText/2),
	} {
		if got := Cleaned(text, MaxText); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

func TestWhatIsCleanedIsSayable(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text, most := string(rapid.SliceOf(rapid.Byte()).Draw(t, "bytes"))+rapid.String().Draw(t, "text"), rapid.IntRange(0, 20).Draw(t, "most")
		got := Cleaned(text, most)
		if !Sayable(got, most) || strings.TrimSpace(got) != got || Cleaned(got, most) != got {
			t.Fatalf("%q: %q", text, got)
		}
	})
}

func TestWhatNobodySeesIsNotSayable(t *testing.T) {
	for _, text := range []string{"", "Robin", "Zoë Ångström", "李小龍", "Игорь", "O'Neill-Smith 2", "7 iron ⛳", "❤️", strings.Repeat("a", 80)} {
		if !Sayable(text, 80) {
			t.Errorf("%q is refused", text)
		}
	}
	for _, text := range []string{"a\x00", "a\tb", "a\nb", "a\u200bb", "\u202enibor", "\u3164", "\u115f", "\uffa0", "\u2800", "soft\u00adhyphen", "\ufefftext", "a\u2028b", "\ue000", "bad \xff", strings.Repeat("a", 81)} {
		if Sayable(text, 80) {
			t.Errorf("%q is taken", text)
		}
	}
}
