package form

import (
	"bytes"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// A code is read as it was written, in any case, with and without its hyphens; every
// letter can come, and none of those that look like another.
func TestCodes(t *testing.T) {
	seen := map[rune]bool{}
	rapid.Check(t, func(t *rapid.T) {
		random := rapid.SliceOfN(rapid.Byte(), CodeBytes, CodeBytes).Draw(t, "random")
		code := Code(random)
		if len(code) != 11 || code[3] != '-' || code[7] != '-' {
			t.Fatal(code)
		}
		for _, c := range code {
			seen[c] = true
		}
		for _, typed := range []string{code, strings.ToLower(code), " " + strings.ReplaceAll(code, "-", ""), strings.ReplaceAll(code, "-", " ")} {
			if f := ParseCode(typed); !f.Sound() || f.Value != code {
				t.Fatalf("%q: %+v", typed, f)
			}
		}
	})
	for i := range 16 {
		if c := rune(Code(bytes.Repeat([]byte{byte(i)}, CodeBytes))[0]); strings.ContainsRune("AEIOUYLQSZ0123456789", c) {
			t.Errorf("%c", c)
		}
	}
	if len(seen) != 17 {
		t.Errorf("%d letters", len(seen))
	}
	for _, typed := range []string{"", "KXT-WRM", "KXT-WRM-GHBB", "KXT-WRM-GHA", "KXTWRMGH0", "KXT_WRM_GHB", "ÄXT-WRM-GHB"} {
		if f := ParseCode(typed); f.Sound() || f.Text != typed {
			t.Errorf("%q: %+v", typed, f)
		}
	}
	if f := ParseAskCoach("x", "May"); f.Sound() || f.Code.Problem == "" || f.From.Problem == "" {
		t.Errorf("%+v", f)
	}
}
