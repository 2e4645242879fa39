package form

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// Press is what a key of the pad does to a line: the line after it. Keys are
// the letters and marks of the line, and next, undo and back; any other leaves
// the line as it is. It edits at the end of the line. With script the browser
// does the same at the caret (static/keys.js); one table of cases holds the two
// together.
func Press(line, key string) string {
	press, known := padKeyed[key]
	if !known {
		return line
	}
	return press(padLine{line, strings.Fields(line)}, key)
}

// padKeyed is what each key of the pad does.
var padKeyed = func() map[string]func(padLine, string) string {
	keys := map[string]func(padLine, string) string{
		"next": padLine.pressNext, "undo": padLine.pressUndo, "back": padLine.pressBack,
		"h": padLine.pressHoled, "-": padLine.pressPickedUp, "t": padLine.pressTee,
		scoreSign: padLine.pressScore, clubSign: padLine.pressClub, aboutSign: padLine.pressAbout,
	}
	for _, key := range strings.Split("0123456789.", "") {
		keys[key] = padLine.pressDigit
	}
	for _, l := range lies[1:] { // the tee has a key of its own
		keys[string(l.letter)] = padLine.pressLie
	}
	for _, m := range marks {
		if !m.ends && m.number != mustNumber {
			keys[m.written] = padLine.pressMark
		}
	}
	return keys
}()

// padLine is a line as the pad edits it: its text, and the words of that.
type padLine struct {
	text  string
	words []string
}

// last is the word at the end of the line, empty for none.
func (l padLine) last() string {
	if len(l.words) == 0 {
		return ""
	}
	return l.words[len(l.words)-1]
}

// replaceLast is the line with another word at its end.
func (l padLine) replaceLast(word string) string {
	return strings.Join(append(slices.Clone(l.words[:len(l.words)-1]), word), " ")
}

// another is the line with one word more.
func (l padLine) another(word string) string {
	return strings.Join(append(slices.Clone(l.words), word), " ")
}

func (l padLine) pressLie(key string) string {
	if loneLie(l.last()) {
		return l.replaceLast(key)
	}
	return l.another(key)
}

// pressNext begins the next shot from the same lie.
func (l padLine) pressNext(string) string {
	if lie := l.lie(); lie != "" && l.last() != lie {
		return l.another(lie)
	}
	return l.text
}

func (l padLine) pressDigit(key string) string {
	if growing(l.last()) {
		return l.replaceLast(l.last() + key)
	}
	return l.another(key)
}

func (l padLine) pressMark(key string) string {
	if l.last() == "" || strings.Contains(l.last(), clubSign) {
		return l.another(key)
	}
	return l.replaceLast(l.last() + key)
}

// pressUndo takes the last word off.
func (l padLine) pressUndo(string) string {
	return strings.Join(l.words[:max(len(l.words)-1, 0)], " ")
}

// pressBack takes the last letter off.
func (l padLine) pressBack(string) string {
	line := strings.TrimRight(l.text, " ")
	_, size := utf8.DecodeLastRuneInString(line)
	return strings.TrimRight(line[:len(line)-size], " ")
}

// pressHoled says that the ball was holed: with the last shot, or from the tee.
func (l padLine) pressHoled(key string) string {
	last := l.last()
	over := strings.HasSuffix(last, "h") || strings.HasSuffix(last, "-") || strings.HasPrefix(last, scoreSign)
	switch {
	case last == "" || strings.Contains(last, clubSign) && !strings.HasSuffix(last, clubSign):
		return l.another(key)
	case over || loneLie(last) || last == "t":
		return l.text
	default:
		return l.replaceLast(last + key)
	}
}

func (l padLine) pressPickedUp(key string) string {
	if strings.HasSuffix(l.last(), key) {
		return l.text
	}
	return l.another(key)
}

func (l padLine) pressScore(key string) string {
	if strings.Contains(" "+l.text, " "+scoreSign) {
		return l.text
	}
	return l.another(key)
}

// pressTee puts the tee shot at the head of the line.
func (l padLine) pressTee(key string) string {
	if len(l.words) > 0 && l.words[0][0] == key[0] {
		return l.text
	}
	return strings.Join(append([]string{key}, l.words...), " ")
}

func (l padLine) pressClub(key string) string {
	switch {
	case l.last() == "":
		return key
	case strings.Contains(l.last(), clubSign):
		return l.text
	default:
		return strings.Join(l.words, " ") + key
	}
}

// pressAbout says that the distance of the last shot is not remembered well.
func (l padLine) pressAbout(key string) string {
	last := l.last()
	if last == "" || strings.Contains(last, key) {
		return l.text
	}
	_, distance := leadingLie(last)
	return l.replaceLast(strings.TrimSuffix(last, distance) + key + distance)
}

// loneLie reports whether a word is the letter of a lie off the tee, and nothing
// else.
func loneLie(word string) bool {
	lie, rest := leadingLie(word)
	return lie != 0 && rest == "" && word != "t"
}

// lie is the letter of the lie of the last shot that has one, empty for the
// tee's.
func (l padLine) lie() string {
	for _, word := range slices.Backward(l.words) {
		if lie, _ := leadingLie(word); lie != 0 {
			return strings.TrimPrefix(word[:1], "t")
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
	if score, found := strings.CutPrefix(word, scoreSign); found {
		return strings.Trim(score, "0123456789") == ""
	}
	if strings.ContainsAny(word, "/-+h") {
		return false
	}
	end := word[len(word)-1]
	lie, rest := leadingLie(strings.TrimSuffix(word, aboutSign))
	return digit(end) || end == '.' || end == 's' && len(word) > 1 || lie != 0 && rest == ""
}
