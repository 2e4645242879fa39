package shotsfile

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"strokeledger/analysis/golf"
)

// row is one row of a file, read. A number that could not be read is 0 and
// sound is false.
type row struct {
	line                       int
	round, player, course, tee string
	date                       golf.Date
	hole, par, number          int
	shot                       golf.Shot
	pickedUp                   bool
	scoreOnly                  int
	sound                      bool
}

// rowReader reads the cells of one row after the other.
type rowReader struct {
	at           places
	decimalComma bool
	faults       *Faults
	known        map[string]string // texts that come again and again
	dayText      string            // the last day that was read
	day          golf.Date

	line  int
	cells []string
	sound bool
}

func (r *rowReader) fault(c column, what, allowed string) {
	r.faults.add(r.line, c.String(), what, r.cell(c), allowed)
	r.sound = false
}

// cell is the text of a column, trimmed; "" where the file does not have it.
func (r *rowReader) cell(c column) string {
	if r.at[c] < 0 {
		return ""
	}
	return strings.TrimSpace(r.cells[r.at[c]])
}

func (r *rowReader) read(line int, cells []string) row {
	r.line, r.cells, r.sound = line, cells, true
	out := row{
		line:  line,
		round: r.text(colRound), player: r.text(colPlayer), course: r.text(colCourse), tee: r.text(colTee),
		date: r.date(), hole: r.natural(colHole, "1 to 18"), par: r.natural(colPar, "3 to 6"),
		number: r.natural(colShot, "1, 2, 3 and so on, without a gap"),
	}
	if out.round == "" {
		r.fault(colRound, "no round", "any text")
	}
	out.shot = r.shot()
	out.pickedUp = r.yes(colPickedUp)
	if r.cell(colScoreOnly) != "" {
		out.scoreOnly = r.natural(colScoreOnly, "strokes of the hole, 1 to 99")
	}
	out.sound = r.sound
	return out
}

func (r *rowReader) shot() golf.Shot {
	var s golf.Shot
	var err error
	if s.Lie, err = golf.ParseLie(r.cell(colLie)); err != nil {
		r.fault(colLie, "unknown lie", "tee, fairway, rough, bunker, recovery, green")
	}
	if text := r.cell(colUnit); text != "" {
		if s.Unit, err = golf.ParseUnit(text); err != nil {
			r.fault(colUnit, "unknown unit", "yd, m, ft")
		}
	}
	if s.Unit == s.Lie.Unit() {
		s.Unit = 0
	}
	s.Distance = s.WrittenUnit().Of(r.number(colDistance, "a number over 0, at most 700 yd, on the green at most 300 ft"))
	if r.cell(colPenalty) != "" {
		s.Penalty = r.integer(colPenalty, "0 to 9")
	}
	s.ShortSided = r.yes(colShortSided)
	if s.GreenKnown = r.cell(colGreen) != ""; s.GreenKnown {
		s.GreenToWork = golf.Yards.Of(r.number(colGreen, "yards, 0 or more and less than the distance"))
	}
	s.Club = r.text(colClub)
	if s.Miss, err = golf.ParseMiss(r.cell(colMiss)); err != nil {
		r.fault(colMiss, "unknown miss", "left, right, short, long, or two of them joined with a hyphen")
	}
	return s
}

// date reads the day; the rows of a round have the same one.
func (r *rowReader) date() golf.Date {
	text := r.cell(colDate)
	if text == r.dayText && text != "" {
		return r.day
	}
	d, err := golf.ParseDate(text)
	if err != nil {
		r.fault(colDate, "not a day", "YYYY-MM-DD")
		return d
	}
	r.dayText, r.day = strings.Clone(text), d
	return d
}

func (r *rowReader) yes(c column) bool {
	switch text := r.cell(c); {
	case strings.EqualFold(text, "yes"):
		return true
	case text != "" && !strings.EqualFold(text, "no"):
		r.fault(c, "neither yes nor no", "yes, no")
	}
	return false
}

// natural reads a whole number of 1 or more.
func (r *rowReader) natural(c column, allowed string) int {
	before := r.sound
	r.sound = true
	n := r.integer(c, allowed)
	if n == 0 && r.sound {
		r.fault(c, "out of range", allowed)
	}
	r.sound = r.sound && before
	return n
}

// most is the largest whole number worth telling apart from others.
const most = 1_000_000

func (r *rowReader) integer(c column, allowed string) int {
	text := r.cell(c)
	n := 0
	for i := range len(text) {
		if text[i] < '0' || text[i] > '9' || n > most {
			r.fault(c, "not a whole number", allowed)
			return 0
		}
		n = 10*n + int(text[i]-'0')
	}
	if text == "" {
		r.fault(c, "no number", allowed)
	}
	return n
}

// number reads digits with at most one decimal point, or comma in a file that
// separates by semicolons. Signs, exponents, nan and inf are faults.
func (r *rowReader) number(c column, allowed string) float64 {
	text := r.cell(c)
	if r.decimalComma {
		text = strings.Replace(text, ",", ".", 1)
	}
	points, digits := 0, 0
	for i := range len(text) {
		switch {
		case text[i] == '.':
			points++
		case text[i] >= '0' && text[i] <= '9':
			digits++
		default:
			points = 2
		}
	}
	x, err := strconv.ParseFloat(text, 64)
	if points > 1 || digits == 0 || err != nil {
		r.fault(c, "not a plain number", allowed)
		return 0
	}
	return x
}

// text reads a text, taking off the apostrophes that keep a spreadsheet from
// running it.
func (r *rowReader) text(c column) string {
	text := r.cell(c)
	if known, ok := r.known[text]; ok {
		return known
	}
	meant := bare(text)
	switch {
	case len(meant) > golf.MaxText:
		r.fault(c, "text is too long", "at most "+strconv.Itoa(golf.MaxText)+" bytes")
		return ""
	case !utf8.ValidString(text):
		r.fault(c, "not UTF-8", "text in UTF-8")
		return ""
	case !golf.Sayable(meant, golf.MaxText):
		r.fault(c, "control character", "text in one line")
		return ""
	}
	return r.remember(text, meant)
}

// manyTexts is how many texts are remembered at a time.
const manyTexts = 4096

func (r *rowReader) remember(text, meant string) string {
	if len(r.known) >= manyTexts {
		clear(r.known)
	}
	meant = strings.Clone(meant)
	r.known[strings.Clone(text)] = meant
	return meant
}
