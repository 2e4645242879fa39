package shotsfile

import (
	"bufio"
	"io"
	"strconv"
	"strings"

	"strokeledger/analysis/golf"
)

// Writer writes rounds as a shots file with every column. Texts are cleaned, and
// the names of rounds made distinct, so that whatever it is given can be read
// again; texts that are sayable, without spaces at their ends, come back as they
// are.
type Writer struct {
	out   *bufio.Writer
	began bool       // the header was written
	names golf.Names // of the rounds so far
	cells cellRow    // of the row at hand
}

// cellRow is the cells of a row, by column.
type cellRow [columnCount]string

// NewWriter returns a writer to w. Call Flush at the end.
func NewWriter(w io.Writer) *Writer { return &Writer{out: bufio.NewWriter(w)} }

// Write writes one round, which has to be legal. A hole without a shot is not
// written.
func (w *Writer) Write(r golf.Round) error {
	r.ID = w.names.Distinct(golf.RoundName(r.ID, r.Date))
	w.header()
	for _, h := range r.Holes {
		for i := range h.Shots {
			w.row(r, h, i)
		}
	}
	_, err := w.out.Write(nil) // the first error of all
	return err
}

// Flush writes what is left, the header at least, and returns the first error.
func (w *Writer) Flush() error {
	w.header()
	return w.out.Flush()
}

// header writes the names of the columns, once.
func (w *Writer) header() {
	if !w.began {
		w.line(columnNames[:])
		w.began = true
	}
}

// line writes cells. One that a spreadsheet would cut in two, by commas or by
// semicolons, is quoted.
func (w *Writer) line(cells []string) {
	for i, cell := range cells {
		if i > 0 {
			w.out.WriteByte(',')
		}
		if strings.ContainsAny(cell, `",;`) {
			cell = `"` + strings.ReplaceAll(cell, `"`, `""`) + `"`
		}
		w.out.WriteString(cell)
	}
	w.out.WriteByte('\n')
}

// text is a text as a cell holds it: cleaned, and harmless to a spreadsheet.
func text(s string) string { return harmless(golf.Cleaned(s, golf.MaxText)) }

// row writes the shot at place i of a hole, counted from 0.
func (w *Writer) row(r golf.Round, h golf.Hole, i int) {
	c := &w.cells
	clear(c[:])
	c[colRound], c[colDate] = harmless(r.ID), r.Date.String()
	c[colPlayer], c[colCourse], c[colTee] = text(r.Player), text(r.Course), text(r.Tee)
	c[colHole], c[colPar], c[colShot] = strconv.Itoa(h.Number), strconv.Itoa(h.Par), strconv.Itoa(i+1)
	if h.PickedUp && i == len(h.Shots)-1 {
		c[colPickedUp] = "yes"
	}
	if h.ScoreOnly != 0 {
		c[colScoreOnly] = strconv.Itoa(h.ScoreOnly)
	}
	c.shot(h.Shots[i])
	w.line(c[:])
}

// shot fills in the cells of a shot. What is 0, no or the rule stays empty.
func (c *cellRow) shot(s golf.Shot) {
	c[colLie], c[colDistance] = s.Lie.String(), measured(s.WrittenUnit(), s.Distance)
	if s.Unit != 0 && s.Unit != s.Lie.Unit() {
		c[colUnit] = s.Unit.String()
	}
	if s.Penalty != 0 {
		c[colPenalty] = strconv.Itoa(s.Penalty)
	}
	if s.ShortSided {
		c[colShortSided] = "yes"
	}
	if s.GreenKnown {
		c[colGreen] = measured(golf.Yards, s.GreenToWork)
	}
	c[colClub], c[colMiss] = text(s.Club), s.Miss.String()
}

// measured writes a distance in a unit with as few digits as bring the same
// distance back: 150 and not 149.99999999999997.
func measured(u golf.Unit, d golf.Distance) string {
	x := float64(d / u.Of(1))
	for digits := 1; digits < 17; digits++ {
		text := strconv.FormatFloat(x, 'f', digits-1, 64)
		if y, err := strconv.ParseFloat(text, 64); err == nil && u.Of(y) == d {
			return text
		}
	}
	return strconv.FormatFloat(x, 'f', -1, 64)
}

// Same reports whether two rounds are the same in a file, no matter who played them.
func Same(a, b golf.Round) bool {
	write := func(r golf.Round) string {
		var text strings.Builder
		r.Player = ""
		w := NewWriter(&text)
		w.Write(r) // a builder never fails
		w.Flush()
		return text.String()
	}
	return write(a) == write(b)
}
