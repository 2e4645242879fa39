package form

import (
	"strings"
	"unicode/utf8"
)

// Press is what a key of the pad does to a line: the line after it. Keys are
// the letters and marks of the line, and next, undo and back; any other leaves
// the line as it is. It edits at the end of the line. With script the browser
// does the same at the caret (static/keys.js); one table of cases holds the two
// together.
func Press(line, key string) string {
	words := strings.Fields(line)
	last := ""
	if len(words) > 0 {
		last = words[len(words)-1]
	}
	replaceLast := func(word string) string {
		return strings.Join(append(words[:len(words)-1:len(words)-1], word), " ")
	}
	another := func(word string) string { return strings.Join(append(words, word), " ") }
	switch key {
	case "f", "r", "b", "v", "g":
		if loneLie(last) {
			return replaceLast(key)
		}
		return another(key)
	case "next":
		if lie := lieOf(words); lie != "" && last != lie {
			return another(lie)
		}
	case "0", "1", "2", "3", "4", "5", "6", "7", "8", "9", ".":
		if growing(last) {
			return replaceLast(last + key)
		}
		return another(key)
	case "s", "x", "w", "u", "u2", "d":
		if last == "" || strings.Contains(last, "/") {
			return another(key)
		}
		return replaceLast(last + key)
	case "undo":
		return strings.Join(words[:max(len(words)-1, 0)], " ")
	case "back":
		line = strings.TrimRight(line, " ")
		_, size := utf8.DecodeLastRuneInString(line)
		return strings.TrimRight(line[:len(line)-size], " ")
	case "h":
		return pressHoled(last, replaceLast, another, line)
	case "-":
		if !strings.HasSuffix(last, "-") {
			return another("-")
		}
	default:
		return pressMore(words, last, key, line)
	}
	return line
}

// pressHoled says that the ball was holed: with the last shot, or from the tee.
func pressHoled(last string, replaceLast, another func(string) string, line string) string {
	switch {
	case last == "" || strings.Contains(last, "/") && !strings.HasSuffix(last, "/"):
		return another("h")
	case strings.HasSuffix(last, "h") || strings.HasSuffix(last, "-") || strings.HasPrefix(last, "=") || loneLie(last) || last == "t":
		return line
	default:
		return replaceLast(last + "h")
	}
}

// pressMore does the keys behind More.
func pressMore(words []string, last, key, line string) string {
	switch key {
	case "=":
		if !strings.Contains(" "+line, " =") {
			return strings.Join(append(words, "="), " ")
		}
	case "t":
		if len(words) == 0 || words[0][0] != 't' {
			return strings.Join(append([]string{"t"}, words...), " ")
		}
	case "/":
		if last == "" {
			return "/"
		}
		if !strings.Contains(last, "/") {
			return strings.Join(words, " ") + "/"
		}
	case "~":
		if last == "" || strings.Contains(last, "~") {
			return line
		}
		at := 0
		if strings.Contains("frbvgt", last[:1]) {
			at = 1
		}
		return strings.Join(append(words[:len(words)-1:len(words)-1], last[:at]+"~"+last[at:]), " ")
	}
	return line
}

func loneLie(word string) bool { return len(word) == 1 && strings.Contains("frbvg", word) }

// lieOf is the letter of the lie of the last shot that has one, empty for the
// tee's.
func lieOf(words []string) string {
	for i := len(words) - 1; i >= 0; i-- {
		if first := words[i][:1]; strings.Contains("frbvg", first) {
			return first
		} else if first == "t" {
			return ""
		}
	}
	return ""
}

// growing reports whether a digit belongs to the word: a letter or a number
// with no mark behind it, yards of green, or a score.
func growing(word string) bool {
	if word == "" {
		return false
	}
	if score, found := strings.CutPrefix(word, "="); found {
		return strings.Trim(score, "0123456789") == ""
	}
	if strings.ContainsAny(word, "/-+h") {
		return false
	}
	end := word[len(word)-1]
	lie := strings.TrimSuffix(word, "~")
	return end >= '0' && end <= '9' || end == '.' || end == 's' && len(word) > 1 || len(lie) == 1 && strings.Contains("frbvgt", lie)
}
