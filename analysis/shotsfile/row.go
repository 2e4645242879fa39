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
	line      int       // in the file, from 1
	round     string    // name, empty with a fault
	player    string    // empty where the file does not say, as are course and tee
	course    string    // name
	tee       string    // name
	date      golf.Date // the zero value with a fault
	hole, par int       // 0 with a fault, as is number
	number    int       // place of the shot on its hole, from 1
	shot      golf.Shot
	pickedUp  bool // the ball was lifted after this shot
	scoreOnly int  // strokes of a hole whose shots are not known; 0 when they are
	sound     bool // every cell could be read
}

// rowReader reads the cells of one row after the other.
type rowReader struct {
	at           places
	decimalComma bool              // numbers may have one
	faults       *Faults           // where new ones go
	known        map[string]string // texts that come again and again
	dayText      string            // the last day that was read
	day          golf.Date

	line  int // of the row at hand, as are the rest
	cells []string
	sound bool
}

// fault notes a fault of a cell of the row at hand.
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

// read reads a row that has as many cells as the header.
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

// shot reads what a row says of its shot. A distance without a unit is in that of
// its lie: feet on the green, yards elsewhere.
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

// yes reads yes or no in any case of letters; an empty cell is no.
func (r *rowReader) yes(c column) bool {
	switch text := r.cell(c); {
	case strings.EqualFold(text, "yes"):
		return true
	case text != "" && !strings.EqualFold(text, "no"):
		r.fault(c, "neither yes nor no", "yes, no")
	}
	return false
}

// text reads a text of one line, taking off the apostrophes that keep a
// spreadsheet from running it. It is empty with a fault.
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

// manyTexts is how many texts are remembered at a time; a player has far fewer.
const manyTexts = 4096

// remember keeps what a text means, in copies, since the CSV reader uses the memory
// of a row again.
func (r *rowReader) remember(text, meant string) string {
	if len(r.known) >= manyTexts {
		clear(r.known)
	}
	meant = strings.Clone(meant)
	r.known[strings.Clone(text)] = meant
	return meant
}
