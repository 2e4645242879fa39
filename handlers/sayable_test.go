package handlers

import (
	"strings"
	"testing"
)

func TestWhatNobodySeesIsNotSayable(t *testing.T) {
	for _, text := range []string{"", "Robin", "Zoë Ångström", "李小龍", "Игорь", "O'Neill-Smith 2", "7 iron ⛳", "❤️", strings.Repeat("a", 80)} {
		if !sayable(text, 80) {
			t.Errorf("%q is refused", text)
		}
	}
	for _, text := range []string{"a\x00", "a\tb", "a\nb", "a\u200bb", "\u202enibor", "\u3164", "\u115f", "\uffa0", "\u2800", "soft\u00adhyphen", "\ufefftext", "a\u2028b", "\ue000", "bad \xff", strings.Repeat("a", 81)} {
		if sayable(text, 80) {
			t.Errorf("%q is taken", text)
		}
	}
}
