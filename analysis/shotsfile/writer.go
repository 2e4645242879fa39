package shotsfile

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"

	"strokeledger/analysis/golf"
)

// Writer writes rounds as a shots file with every column.
type Writer struct {
	csv   *csv.Writer
	began bool
	cells [columnCount]string
}

// NewWriter returns a writer to w. Call Flush at the end.
func NewWriter(w io.Writer) *Writer { return &Writer{csv: csv.NewWriter(w)} }

// Write writes one round. It refuses one without a name and one whose texts
// would not come back as they are: with spaces at an end or a control
// character.
func (w *Writer) Write(r golf.Round) error {
	if r.ID == "" {
		return fmt.Errorf("a round of %s has no name", r.Date)
	}
	for _, text := range []string{r.ID, r.Player, r.Course, r.Tee} {
		if !trimmed(text) {
			return fmt.Errorf("round %q: the text %q has a space at an end or a control character", r.ID, text)
		}
	}
	w.header()
	for _, h := range r.Holes {
		for i := range h.Shots {
			if !trimmed(h.Shots[i].Club) {
				return fmt.Errorf("round %q, hole %d: the club %q has a space at an end or a control character", r.ID, h.Number, h.Shots[i].Club)
			}
			w.row(r, h, i)
		}
	}
	return w.csv.Error()
}

// Flush writes what is left, the header at least, and returns the first error.
func (w *Writer) Flush() error {
	w.header()
	w.csv.Flush()
	return w.csv.Error()
}

func (w *Writer) header() {
	if !w.began {
		w.csv.Write(columnNames[:])
		w.began = true
	}
}

func (w *Writer) row(r golf.Round, h golf.Hole, i int) {
	s, c := h.Shots[i], &w.cells
	clear(c[:])
	c[colRound], c[colDate] = harmless(r.ID), r.Date.String()
	c[colPlayer], c[colCourse], c[colTee] = harmless(r.Player), harmless(r.Course), harmless(r.Tee)
	c[colHole], c[colPar], c[colShot] = strconv.Itoa(h.Number), strconv.Itoa(h.Par), strconv.Itoa(i+1)
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
	if h.PickedUp && i == len(h.Shots)-1 {
		c[colPickedUp] = "yes"
	}
	if h.ScoreOnly != 0 {
		c[colScoreOnly] = strconv.Itoa(h.ScoreOnly)
	}
	c[colClub], c[colMiss] = harmless(s.Club), s.Miss.String()
	w.csv.Write(c[:])
}

// measured writes a distance in a unit with as few digits as bring the same
// distance back.
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
