package handlers

import (
	"unicode"
	"unicode/utf8"
)

// sayable is the rule for names and other short texts: of at most so many
// bytes, in one line, and with nothing in them that no reader sees, which would
// make two different names look the same.
func sayable(text string, most int) bool {
	if len(text) > most || !utf8.ValidString(text) {
		return false
	}
	for _, letter := range text {
		if unicode.In(letter, unicode.Cc, unicode.Cf, unicode.Co, unicode.Zl, unicode.Zp, unicode.Other_Default_Ignorable_Code_Point) || letter == emptyBraille {
			return false
		}
	}
	return true
}

// emptyBraille is a letter of braille without a dot.
const emptyBraille = '\u2800'
