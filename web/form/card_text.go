package form

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"unicode"

	"strokeledger/analysis/golf"
)

// PastedCard is a card pasted as text: what it fills in, and which lines could
// not be read as they stand.
type PastedCard struct {
	Card     Card     // the rows as far as they were read
	Problems []string // what is wrong, each a sentence that names its line
}

// PasteCard reads a card from text, a line for each hole: par, length and,
// where it is known, stroke index. The number of the hole may stand before
// them. Empty lines and a heading do not count. What the numbers may be is
// checked by Card.Read.
func PasteCard(text string, unit golf.Unit) PastedCard {
	var p PastedCard
	lines := cardLines(text)
	numbered := numberedHoles(lines)
	for i, line := range lines {
		number, words := i+1, line.words
		if numbered {
			number, _ = holeNumber(words[0])
			words = words[1:]
		}
		if number > MostHoles {
			p.add(line, "more than %d holes", MostHoles)
			break
		}
		p.Card.Holes = max(p.Card.Holes, number)
		row := &p.Card.Rows[number-1]
		for j, to := range []*string{&row.Par, &row.Length, &row.Index} {
			if j < len(words) {
				*to = short(words[j])
			}
		}
		row.Length = withoutUnit(row.Length, unit)
		if len(words) < 2 {
			p.add(line, "no length. A line is a par, a length and perhaps a stroke index, as in 4 392 5")
		}
		if len(words) > 3 {
			p.add(line, "“%s” is too much after the stroke index", short(words[3]))
		}
	}
	if len(lines) == 0 {
		p.Problems = append(p.Problems, "There is no line with a number.")
	}
	return p
}

func (p *PastedCard) add(line cardLine, format string, args ...any) {
	p.Problems = append(p.Problems, fmt.Sprintf("Line %d: ", line.number)+fmt.Sprintf(format, args...)+".")
}

type cardLine struct {
	number int // in the text, from 1
	words  []string
}

// cardLines cuts a text into the words of its lines.
func cardLines(text string) []cardLine {
	var lines []cardLine
	number := 0
	for row := range strings.Lines(text) {
		number++
		words := cardWords(row)
		heading := len(lines) == 0 && !strings.ContainsFunc(row, unicode.IsDigit)
		if len(words) > 0 && !heading {
			lines = append(lines, cardLine{number, words})
		}
	}
	return lines
}

// spacedUnit is a unit that stands apart from its number.
var spacedUnit = regexp.MustCompile(`(?i)([0-9])\s+(m|met(?:re|er)s?|y|yds?|yards?)\b`)

// cardWords cuts a line at spaces, semicolons and such commas as cannot be a
// decimal comma: one between digits is, when the line has other separators,
// two digits at least stand before it, and one or two behind it.
func cardWords(row string) []string {
	row = strings.TrimFunc(spacedUnit.ReplaceAllString(row, "$1$2"), unicode.IsSpace)
	gap := func(r rune) bool { return unicode.IsSpace(r) || r == ';' }
	onlyCommas := !strings.ContainsFunc(row, gap)
	letters := []rune(row)
	digits := func(from, step int) int {
		n := 0
		for i := from; i >= 0 && i < len(letters) && letters[i] >= '0' && letters[i] <= '9'; i += step {
			n++
		}
		return n
	}
	for i, r := range letters {
		behind := digits(i+1, 1)
		if decimal := !onlyCommas && digits(i-1, -1) >= 2 && behind >= 1 && behind <= 2; r == ',' && !decimal {
			letters[i] = ' '
		}
	}
	return strings.FieldsFunc(string(letters), gap)
}

// numberedHoles reports whether every line begins with the number of its hole:
// the first words rise, and either they are too many to be pars or what follows
// is a par on every line.
func numberedHoles(lines []cardLine) bool {
	last, pars, three := 0, true, false
	for _, line := range lines {
		n, ok := holeNumber(line.words[0])
		if !ok || n <= last || n > MostHoles {
			return false
		}
		last = n
		second := ""
		if len(line.words) > 1 {
			second = line.words[1]
		}
		_, par := whole(second, 3, 6)
		pars, three = pars && par, three || len(line.words) > 2
	}
	return len(lines) > 4 || pars && three
}

func holeNumber(word string) (int, bool) {
	n, err := strconv.Atoi(strings.TrimRight(strings.TrimLeft(word, "#"), ".:)"))
	return n, err == nil && n > 0
}

// withoutUnit leaves the player's own unit out, and sets another apart.
func withoutUnit(length string, unit golf.Unit) string {
	parts := lengthText.FindStringSubmatch(length)
	switch {
	case parts == nil || parts[2] == "":
		return length
	case strings.HasPrefix(strings.ToLower(parts[2]), "m") == (unit == golf.Metres):
		return parts[1]
	default:
		return parts[1] + " " + parts[2]
	}
}

// short keeps a word that a page shows again within bounds.
func short(word string) string {
	letters := []rune(strings.ToValidUTF8(word, ""))
	return string(letters[:min(len(letters), 20)])
}
