package aim

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// The rows of a picture as text, a row a line, in yards:
//
//	bend 260: 10 right
//	fairway 170: 18 left, 15 right
//	water 180 to 260, across -40 to -15
//	out 0 to open, across 45 to open
//	green 419: 26 wide, 26 deep
//	green 419: 26 wide, 26 deep, turned -15
//
// Letter case, commas, colons and more space do not matter, and the words after a
// number may be left out: "fairway 170 18 15". A zone without "across" reaches
// from side to side. Bends and fairway points are put in order; zones keep theirs.

// longestRow is the most bytes of a line.
const longestRow = 200

// ParseRows reads rows into a picture of the par and length of the card. Its
// faults, and those of Check, say in which line they are. Numbers are kept to a
// hundredth of a yard.
func ParseRows(par int, length float64, text string) (Picture, Faults) {
	r := rowReader{picture: Picture{Par: par, Length: hundredth(length)}, lines: map[string][]int{}}
	if len(text) > MaxBytes {
		return r.picture, Faults{{What: fmt.Sprintf("the rows have %d bytes; allowed: at most %d", len(text), MaxBytes)}}
	}
	line := 0
	for row := range strings.SplitSeq(text, "\n") {
		line++
		if err := r.row(line, row); err != nil {
			r.faults = append(r.faults, Fault{Line: line, What: err.Error()})
		}
	}
	r.inOrder()
	for _, f := range r.picture.Check() {
		f.Line = r.lineOf(f)
		r.faults = append(r.faults, f)
	}
	return r.picture, r.faults
}

// rowReader gathers the rows of a text.
type rowReader struct {
	picture Picture
	lines   map[string][]int // the line of each row of a part
	faults  Faults
}

// lineOf is the line that a fault of Check is about; 0 where it is about none.
func (r *rowReader) lineOf(f Fault) int {
	at := r.lines[f.Part]
	switch {
	case f.Row > 0 && f.Row <= len(at):
		return at[f.Row-1]
	case len(at) > 0:
		return at[len(at)-1]
	}
	return 0
}

// inOrder puts bends and fairway points in order, with their lines.
func (r *rowReader) inOrder() {
	p := &r.picture
	sortWith(p.Bends, r.lines["bends"], func(b Bend) float64 { return b.At })
	sortWith(p.Fairway, r.lines["fairway"], func(w Width) float64 { return w.At })
}

// sortWith sorts rows by a number and keeps their lines beside them.
func sortWith[T any](rows []T, lines []int, at func(T) float64) {
	type both struct {
		row  T
		line int
	}
	all := make([]both, len(rows))
	for i := range rows {
		all[i] = both{rows[i], lines[i]}
	}
	slices.SortStableFunc(all, func(a, b both) int { return cmp.Compare(at(a.row), at(b.row)) })
	for i, x := range all {
		rows[i], lines[i] = x.row, x.line
	}
}

// row reads one line.
func (r *rowReader) row(line int, text string) error {
	if len(text) > longestRow {
		return fmt.Errorf("a row of %d bytes; allowed: at most %d", len(text), longestRow)
	}
	words := rowWords(text)
	if len(words) == 0 {
		return nil
	}
	return r.words(line, words[0], words[1:])
}

// words reads the words of a row, the first of which says what it is.
func (r *rowReader) words(line int, first string, rest []string) error {
	p := &r.picture
	switch first {
	case "bend":
		b, err := parseBend(rest)
		if err != nil {
			return err
		}
		return keep(r, "bends", line, &p.Bends, b)
	case "fairway":
		w, err := parseWidth(rest)
		if err != nil {
			return err
		}
		return keep(r, "fairway", line, &p.Fairway, w)
	case "green":
		return r.green(line, rest)
	}
	kind, err := ParseKind(first)
	if err != nil {
		return fmt.Errorf("no kind %q; allowed: bend, fairway, out, water, trees, bunker, rough, green", shortened(first))
	}
	z, err := parseZone(kind, rest)
	if err != nil {
		return err
	}
	return keep(r, "zones", line, &p.Zones, z)
}

// green reads the green, of which there is one.
func (r *rowReader) green(line int, rest []string) error {
	g, err := parseGreen(rest)
	if err != nil {
		return err
	}
	if r.picture.Green.Drawn() {
		return errors.New("a second green; allowed: one")
	}
	r.picture.Green, r.lines["green"] = g, []int{line}
	return nil
}

// rowWords are the words of a row, in lower case.
func rowWords(text string) []string {
	return strings.FieldsFunc(strings.ToLower(strings.ReplaceAll(text, "−", "-")), func(c rune) bool {
		return c == ' ' || c == '\t' || c == '\r' || c == ',' || c == ':'
	})
}

// mostRows is how many rows of a part are kept.
var mostRows = map[string]int{"bends": MaxBends, "fairway": MaxWidths, "zones": MaxZones}

// keep keeps a row of a part that was read.
func keep[T any](r *rowReader, part string, line int, to *[]T, row T) error {
	if len(*to) == mostRows[part] {
		return fmt.Errorf("more than %d rows of this kind", mostRows[part])
	}
	*to, r.lines[part] = append(*to, row), append(r.lines[part], line)
	return nil
}

// open is how rows write an end that is open.
const open = "open"

// parseNumber reads a number of a row.
func parseNumber(word string) (float64, error) {
	x, err := strconv.ParseFloat(word, 64)
	if err != nil || math.IsNaN(x) || math.IsInf(x, 0) || strings.ContainsAny(word, "xX_pP") {
		return 0, fmt.Errorf("%q is not a number", shortened(word))
	}
	return hundredth(x), nil
}

// parseNumbers reads so many numbers, each of which may have the word after it
// that stands beside it.
func parseNumbers(words []string, after []string, example string) ([]float64, []string, error) {
	var all []float64
	for _, word := range after {
		if len(words) == 0 {
			return nil, nil, fmt.Errorf("a number is missing; such as: %s", example)
		}
		x, err := parseNumber(words[0])
		if err != nil {
			return nil, nil, fmt.Errorf("%w; such as: %s", err, example)
		}
		all, words = append(all, x), words[1:]
		if len(words) > 0 && words[0] == word {
			words = words[1:]
		}
	}
	return all, words, nil
}
