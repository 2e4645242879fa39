package shotsfile

import (
	"strconv"
	"strings"
)

// natural reads a whole number of 1 or more. It is 0 with a fault, so that what is
// checked later can tell.
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

// most is the largest whole number worth telling apart from others: far beyond
// every range, and far from overflowing.
const most = 1_000_000

// integer reads digits alone; a sign or a decimal point is a fault. It is 0 with a
// fault.
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
// separates by semicolons. Signs, exponents, nan and inf are faults. Ranges are
// checked by the rules of golf.
func (r *rowReader) number(c column, allowed string) float64 {
	text := r.cell(c)
	if r.decimalComma {
		text = strings.Replace(text, ",", ".", 1)
	}
	x, err := strconv.ParseFloat(text, 64)
	if err != nil || !isPlain(text) {
		r.fault(c, "not a plain number", allowed)
		return 0
	}
	return x
}

// isPlain reports whether a text that was parsed as a number is digits and a
// decimal point alone.
func isPlain(text string) bool {
	return !strings.ContainsFunc(text, func(r rune) bool { return r != '.' && (r < '0' || r > '9') })
}
