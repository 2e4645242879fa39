package words

import (
	"strings"
	"unicode/utf8"
)

// List joins words as a sentence does: a, b and c.
func List(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

// ExcerptMost is how many characters of a text are quoted at most.
const ExcerptMost = 60

// Excerpt quotes the beginning of a text, with an ellipsis when it is cut.
func Excerpt(text string) string {
	for i := range text {
		if utf8.RuneCountInString(text[:i]) == ExcerptMost {
			return text[:i] + "…"
		}
	}
	return text
}

// Capital writes a text with a capital first letter.
func Capital(s string) string {
	_, size := utf8.DecodeRuneInString(s)
	return strings.ToUpper(s[:size]) + s[size:]
}

// Joined joins the parts that are not empty with commas.
func Joined(parts ...string) string {
	var kept []string
	for _, p := range parts {
		if p != "" {
			kept = append(kept, p)
		}
	}
	return strings.Join(kept, ", ")
}

// Whose is the possessive of a name: Robin’s, Ines’.
func Whose(name string) string {
	if strings.HasSuffix(name, "s") {
		return name + "’"
	}
	return name + "’s"
}
