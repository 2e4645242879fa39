package shotsfile

import "strings"

// risky are the first characters at which a spreadsheet takes a cell for a
// formula, and the apostrophe that keeps it from doing so.
const risky = "=+-@'"

// harmless puts an apostrophe before a text that a spreadsheet would run.
func harmless(text string) string {
	if text != "" && strings.IndexByte(risky, text[0]) >= 0 {
		return "'" + text
	}
	return text
}

// bare takes that apostrophe off again.
func bare(text string) string {
	if len(text) > 1 && text[0] == '\'' && strings.IndexByte(risky, text[1]) >= 0 {
		return text[1:]
	}
	return text
}
