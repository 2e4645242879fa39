package form

import (
	"slices"
	"strings"
	"unicode"
)

// packed is an item without the spaces and commas between its letters, and
// where each of its letters stands in the line.
type packed struct {
	text string
	at   []int
}

// cut finds the items of the line. Spaces and commas stand between items, and
// between a letter and its number; everything behind a slash up to the next
// space is a club.
func (p *lineParser) cut() {
	text := p.line.Text
	commas := commasOf(text)
	words := wordsOf(text, commas)
	for k := 0; k < len(words); {
		word := packed{}
		word.add(text, words[k])
		from, to := words[k].from, words[k].to
		for k++; k < len(words) && joined(word.text, nextWord(text, words[k:])); k++ {
			word.add(text, words[k])
			to = words[k].to
		}
		p.packed = append(p.packed, word)
		p.line.Items = append(p.line.Items, Item{Text: text[from:to], From: from})
	}
	p.askOfCommas(commas)
}

func (w *packed) add(text string, s span) {
	for i := s.from; i < s.to; i++ {
		w.at = append(w.at, i)
	}
	w.text += text[s.from:s.to]
}

// span is a piece of the line, in bytes.
type span struct{ from, to int }

// commas are the commas between two digits, where one may be either a decimal
// comma or the end of an item.
type commas struct {
	places []int
	split  bool // they stand between items
}

// commasOf finds the commas between two digits. They are decimal commas, unless
// the line shows that it has its commas between items: one stands against a
// letter or mark on a side and against something on the other, as in f140,g30;
// one follows another within a number, as in 30,3,2; or the number has a point
// too.
func commasOf(text string) commas {
	var c commas
	club := false
	for i, r := range text {
		club = r == '/' || club && !unicode.IsSpace(r)
		if r != ',' || club || i == 0 || i == len(text)-1 {
			continue
		}
		switch before, after := text[i-1], text[i+1]; {
		case digit(before) && digit(after):
			c.places = append(c.places, i)
			c.split = c.split || pointed(text, i)
		case before != ' ' && after != ' ' && before != ',' && after != ',':
			c.split = true
		}
	}
	return c
}

// pointed reports whether the number around a comma has another comma or point.
func pointed(text string, comma int) bool {
	before, after := digitsAround(text, comma)
	last, next := comma-before-1, comma+after+1
	return last > 0 && (text[last] == '.' || text[last] == ',') && digit(text[last-1]) ||
		next < len(text)-1 && (text[next] == '.' || text[next] == ',') && digit(text[next+1])
}

// digitsAround counts the digits right before a place and right behind it.
func digitsAround(text string, place int) (before, after int) {
	for before < place && digit(text[place-before-1]) {
		before++
	}
	for place+after+1 < len(text) && digit(text[place+after+1]) {
		after++
	}
	return before, after
}

// wordsOf cuts a text at its spaces and at the commas that are no decimal ones.
func wordsOf(text string, c commas) []span {
	decimal := map[int]bool{}
	for _, i := range c.places {
		decimal[i] = !c.split
	}
	var words []span
	from, club := -1, false
	for i, r := range text {
		club = r == '/' || club && !unicode.IsSpace(r)
		between := unicode.IsSpace(r) || r == ',' && !club && !decimal[i]
		if between && from >= 0 {
			words = append(words, span{from, i})
			from = -1
		} else if !between && from < 0 {
			from = i
		}
	}
	if from >= 0 {
		words = append(words, span{from, len(text)})
	}
	return words
}

// nextWord is the first of some words. A lone "~" is one with what follows it.
func nextWord(text string, words []span) string {
	next := text[words[0].from:words[0].to]
	if next == aboutSign && len(words) > 1 {
		next += text[words[1].from:words[1].to]
	}
	return next
}

// joined reports whether a word goes on with the next: a letter or a "~" with
// its number, a number with its unit, + and = with theirs.
func joined(word, next string) bool {
	switch {
	case strings.Contains(word, clubSign):
		return false
	case word == scoreSign || wantsNumber(word):
		return digit(next[0])
	}
	lie, rest := leadingLie(lower(word))
	rest, about := strings.CutPrefix(rest, aboutSign)
	if rest == "" {
		goesOn := digit(next[0]) || !about && strings.HasPrefix(next, aboutSign)
		behind, _ := cutHead(lower(next))
		return goesOn && (lie == 0 || behind.lie == 0) // as t ~f140 and t 140f are two shots
	}
	_, behind := leadingNumber(rest)
	return behind == "" && isUnit(next)
}

// wantsNumber reports whether a word ends with a mark that has a number behind
// it.
func wantsNumber(word string) bool {
	return slices.ContainsFunc(marks, func(m mark) bool { return m.number == mustNumber && strings.HasSuffix(word, m.written) })
}

func isUnit(word string) bool {
	unit, rest := leadingUnit(lower(word))
	return unit != 0 && rest == ""
}

// askOfCommas asks about commas that may well have been meant otherwise.
func (p *lineParser) askOfCommas(c commas) {
	text := p.line.Text
	for _, i := range c.places {
		before, after := digitsAround(text, i)
		number := text[i-before : i+after+1]
		p.item = p.itemAt(i - 1)
		switch {
		case c.split && before == 1 && after == 1:
			p.ask("Are these two shots, " + number[:1] + " and " + number[2:] + "? If “" + number + "” is one distance, write " + number[:1] + "." + number[2:] + ".")
		case !c.split && (before > 1 || after > 2):
			p.ask("Is “" + number + "” one distance, " + strings.Replace(number, ",", ".", 1) + "? If these are two shots, put a space between them.")
		}
	}
}

// itemAt is the item at a place of the line.
func (p *lineParser) itemAt(place int) int {
	for i, item := range p.line.Items {
		if place >= item.From && place < item.From+len(item.Text) {
			return i
		}
	}
	return -1
}
