package form

import (
	"strings"
)

// A code is letters that cannot be taken for another letter or a digit; sixteen of them,
// so that each is four random bits. There is no vowel among them, so that a code is no
// word.
const (
	codeLetters = "BCDFGHJKMNPRTVWX"
	codeLength  = 9
	codeGroup   = 3 // written together
)

// Code writes random bytes, nine or more of them, as a code: KXT-WRM-GHB.
func Code(random []byte) string {
	var b strings.Builder
	for i, c := range random[:codeLength] {
		if i > 0 && i%codeGroup == 0 {
			b.WriteByte('-')
		}
		b.WriteByte(codeLetters[c&15])
	}
	return b.String()
}

// CodeBytes is how many random bytes a code takes.
const CodeBytes = codeLength

// ParseCode reads a code as it may be typed, in small letters and without its hyphens.
func ParseCode(text string) Text {
	var letters []byte
	for _, c := range []byte(strings.ToUpper(text)) {
		switch k := strings.IndexByte(codeLetters, c); {
		case k >= 0:
			letters = append(letters, byte(k))
		case c != ' ' && c != '-':
			return refused[string](text, "A code has nine letters, such as KXT-WRM-GHB.")
		}
	}
	if len(letters) != codeLength {
		return refused[string](text, "A code has nine letters, such as KXT-WRM-GHB.")
	}
	return Text{Text: text, Value: Code(letters)}
}

// AskCoach asks the coach of a code.
type AskCoach struct {
	Code Text
	From Day // the first day shared; zero for everything
}

// ParseAskCoach reads the form.
func ParseAskCoach(code, from string) AskCoach {
	return AskCoach{ParseCode(code), ParseSharedFrom(from)}
}

// Sound reports whether nothing is wrong with the form.
func (a AskCoach) Sound() bool { return sound(a.Code, a.From) }
