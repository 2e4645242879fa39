package shotsfile

import (
	"strings"
	"unicode/utf8"
)

// risky are the first letters at which a spreadsheet takes a cell for a formula
// or a command, narrow and wide, and the apostrophe that keeps it from doing so.
const risky = "=+-@|\uff1d\uff0b\uff0d\uff20'"

func isRisky(text string) bool {
	letter, _ := utf8.DecodeRuneInString(text)
	return text != "" && strings.ContainsRune(risky, letter)
}

// Harmless is a text as a cell of any file may hold it, harmless to a spreadsheet.
func Harmless(text string) string { return harmless(text) }

// harmless puts an apostrophe before a text that a spreadsheet would run, and
// before each part of it that would begin a cell where a spreadsheet takes the
// semicolon for the separator.
func harmless(text string) string {
	return parts(text, func(part string) string {
		if isRisky(part) {
			return "'" + part
		}
		return part
	})
}

// bare takes those apostrophes off again.
func bare(text string) string {
	return parts(text, func(part string) string {
		if rest, quoted := strings.CutPrefix(part, "'"); quoted && isRisky(rest) {
			return rest
		}
		return part
	})
}

// parts changes what stands between the semicolons of a text, the spaces and
// quotes before it apart.
func parts(text string, change func(string) string) string {
	all := strings.Split(text, ";")
	for i, part := range all {
		words := strings.TrimLeft(part, ` "`)
		all[i] = part[:len(part)-len(words)] + change(words)
	}
	return strings.Join(all, ";")
}
