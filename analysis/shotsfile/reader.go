package shotsfile

import (
	"encoding/csv"
	"errors"
	"io"
	"iter"
	"strconv"

	"strokeledger/analysis/golf"
)

// Limits are the most that a caller takes; 0 sets no limit. A file beyond one of
// them ends in a *LimitError.
type Limits struct {
	Bytes  int64 // of the file; a limit also bounds the length of a line
	Rows   int   // after the header
	Rounds int   // with distinct names
}

// Reader reads the rounds of one shots file, from front to back, once.
type Reader struct {
	limits  Limits
	in      io.Reader
	faults  Faults          // so far
	unknown []string        // columns
	seen    map[string]bool // names of the rounds that have begun
	round   build           // at hand; its ID is empty before the first
}

// NewReader returns a reader of r.
func NewReader(r io.Reader, limits Limits) *Reader {
	if limits.Bytes > 0 {
		r = &limitedReader{in: r, most: limits.Bytes, left: limits.Bytes}
	}
	return &Reader{limits: limits, in: r, seen: map[string]bool{}}
}

// Unknown lists the columns that were passed over, each once, as they are named in
// the file. It is empty until the header was read.
func (r *Reader) Unknown() []string { return r.unknown }

// Rounds yields the rounds of the file in its order, as long as no fault has
// been found. A fault ends the rounds; the rest of the file is still read, and
// the last pair holds the error: *Faults, *LimitError, or that of the file
// underneath. It can be ranged over once.
func (r *Reader) Rounds() iter.Seq2[golf.Round, error] {
	return func(yield func(golf.Round, error) bool) {
		stopped := false
		send := func(round golf.Round) bool {
			stopped = !yield(round, nil)
			return !stopped
		}
		if err := r.read(send); err != nil && !stopped {
			yield(golf.Round{}, err)
		}
	}
}

// read reads the header and then every row.
func (r *Reader) read(send func(golf.Round) bool) error {
	rows, comma, err := r.open()
	if err != nil {
		return err
	}
	head, err := rows.Read()
	switch {
	case err == io.EOF:
		r.faults.add(1, "", "the file is empty", "", "a header row and a row a stroke")
		return &r.faults
	case err != nil && !r.rowFault(err):
		return err
	case err != nil:
		return &r.faults
	}
	cells := rowReader{decimalComma: comma == ';', faults: &r.faults, known: map[string]string{}}
	if cells.at, r.unknown = readHeader(head, &r.faults); r.faults.any() {
		return &r.faults
	}
	return r.readRows(rows, &cells, len(head), send)
}

// readRows reads the rows after the header, which has width cells. A row that
// cannot be read leaves its round unsure; reading goes on for the other faults.
func (r *Reader) readRows(rows *csv.Reader, cells *rowReader, width int, send func(golf.Round) bool) error {
	for n := 0; ; {
		record, err := rows.Read()
		if err == io.EOF {
			return r.end(n, send)
		}
		if n++; r.limits.Rows > 0 && n > r.limits.Rows {
			return &LimitError{int64(r.limits.Rows), "rows"}
		}
		line := 0
		if err == nil {
			line, _ = rows.FieldPos(0)
		}
		switch {
		case err != nil && !r.rowFault(err):
			return err
		case err != nil || !r.asWide(line, len(record), width):
			r.round.unsure()
		case !r.take(cells.read(line, record), send):
			return nil
		case r.limits.Rounds > 0 && len(r.seen) > r.limits.Rounds:
			return &LimitError{int64(r.limits.Rounds), "rounds"}
		}
	}
}

// asWide reports whether a row has as many cells as the header, and notes a fault
// when it has not.
func (r *Reader) asWide(line, cells, width int) bool {
	if cells != width {
		r.faults.add(line, "", "wrong number of cells", strconv.Itoa(cells), strconv.Itoa(width)+", as in the header")
	}
	return cells == width
}

// rowFault notes an error that is a row's own fault, and reports whether it is
// one.
func (r *Reader) rowFault(err error) bool {
	var parse *csv.ParseError
	if !errors.As(err, &parse) {
		return false
	}
	r.faults.add(parse.Line, "", "quotes do not match", "", `a cell with quotes is quoted whole, and its quotes are doubled`)
	return true
}

// take adds a row to the round it belongs to; it returns false when the caller
// wants no more.
func (r *Reader) take(row row, send func(golf.Round) bool) bool {
	if row.round == "" {
		r.round.unsure()
		return true
	}
	if row.round != r.round.ID {
		if !r.finish(send) {
			return false
		}
		if r.seen[row.round] {
			r.faults.add(row.line, colRound.String(), "round comes again", row.round, "the rows of a round together")
		}
		r.seen[row.round] = true
		r.round = begin(row)
	}
	r.round.add(row, &r.faults)
	return true
}

// finish ends the round at hand and sends it, unless the file has a fault. It
// returns false when the caller wants no more.
func (r *Reader) finish(send func(golf.Round) bool) bool {
	if r.round.ID == "" {
		return true
	}
	round := r.round.end(&r.faults)
	return r.faults.any() || send(round)
}

// end finishes a file of so many rows after the header; one without is a fault.
func (r *Reader) end(rows int, send func(golf.Round) bool) error {
	if rows == 0 {
		r.faults.add(1, "", "no rounds", "", "a row a stroke after the header")
	}
	if !r.finish(send) {
		return nil
	}
	if r.faults.any() {
		return &r.faults
	}
	return nil
}
