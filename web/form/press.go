package form

import "strings"

// Press is what a key of the pad does to a line: the line after it. Keys are
// the letters and marks of the line, and undo, back, holed and pickedup; any
// other leaves the line as it is.
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
		if len(last) == 1 && strings.Contains("frbvg", last) {
			return replaceLast(key)
		}
		return another(key)
	case "0", "1", "2", "3", "4", "5", "6", "7", "8", "9", ".":
		if growing(last) {
			return replaceLast(last + key)
		}
		return another(key)
	case "s", "x", "w", "u":
		if last == "" || strings.Contains(last, "/") {
			return another(key)
		}
		return replaceLast(last + key)
	case "undo":
		return strings.Join(words[:max(len(words)-1, 0)], " ")
	case "back":
		line = strings.TrimRight(line, " ")
		return strings.TrimRight(line[:max(len(line)-1, 0)], " ")
	case "holed":
		if last == "" || !endsInDigit(last) && last != "h" {
			return another("h")
		}
		return line
	case "pickedup":
		if strings.HasSuffix(last, "-") {
			return line
		}
		return another("-")
	default:
		return line
	}
}

// growing reports whether a digit belongs to the word: a letter or a number
// with no mark behind it, or yards of green.
func growing(word string) bool {
	if word == "" || strings.ContainsAny(word, "/=-+h") {
		return false
	}
	end := word[len(word)-1]
	return endsInDigit(word) || end == '.' || end == 's' && len(word) > 1 || len(word) == 1 && strings.Contains("frbvgt", word)
}

func endsInDigit(word string) bool {
	end := word[len(word)-1]
	return end >= '0' && end <= '9'
}
