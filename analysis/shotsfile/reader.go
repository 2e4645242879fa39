package shotsfile

import (
	"bufio"
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"iter"
	"strconv"

	"strokeledger/analysis/golf"
)

// Limits are the most that a caller takes; 0 sets no limit.
type Limits struct {
	Bytes  int64
	Rows   int
	Rounds int
}

// Reader reads the rounds of one shots file.
type Reader struct {
	limits  Limits
	in      io.Reader
	faults  Faults
	unknown []string
	seen    map[string]bool // rounds that have begun
	round   build
}

// NewReader returns a reader of r.
func NewReader(r io.Reader, limits Limits) *Reader {
	if limits.Bytes > 0 {
		r = &limitedReader{in: r, most: limits.Bytes, left: limits.Bytes}
	}
	return &Reader{limits: limits, in: r, seen: map[string]bool{}}
}

// Unknown lists the columns that were passed over, once the header was read.
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

func (r *Reader) readRows(rows *csv.Reader, cells *rowReader, width int, send func(golf.Round) bool) error {
	for n := 0; ; {
		record, err := rows.Read()
		if err == io.EOF {
			return r.end(n, send)
		}
		if n++; r.limits.Rows > 0 && n > r.limits.Rows {
			return &LimitError{int64(r.limits.Rows), "rows"}
		}
		switch {
		case err != nil && r.rowFault(err):
			r.round.unsure()
		case err != nil:
			return err
		default:
			line, _ := rows.FieldPos(0)
			if len(record) != width {
				r.faults.add(line, "", "wrong number of cells", strconv.Itoa(len(record)), strconv.Itoa(width)+", as in the header")
				r.round.unsure()
				continue
			}
			if !r.take(cells.read(line, record), send) {
				return nil
			}
			if r.limits.Rounds > 0 && len(r.seen) > r.limits.Rounds {
				return &LimitError{int64(r.limits.Rounds), "rounds"}
			}
		}
	}
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

// finish ends the round at hand and sends it, unless there is a fault.
func (r *Reader) finish(send func(golf.Round) bool) bool {
	if r.round.ID == "" {
		return true
	}
	round := r.round.end(&r.faults)
	return r.faults.any() || send(round)
}

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

// open prepares a CSV reader: it takes off a byte-order mark and finds out by
// the header whether cells are separated by commas or semicolons.
func (r *Reader) open() (*csv.Reader, rune, error) {
	in := bufio.NewReaderSize(r.in, 1<<16)
	if mark, _ := in.Peek(3); bytes.Equal(mark, []byte("\ufeff")) {
		in.Discard(3)
	}
	head, err := in.Peek(in.Size())
	if err != nil && err != io.EOF {
		return nil, 0, err
	}
	if i := bytes.IndexByte(head, '\n'); i >= 0 {
		head = head[:i]
	}
	rows := csv.NewReader(in)
	if bytes.Count(head, []byte{';'}) > bytes.Count(head, []byte{','}) {
		rows.Comma = ';'
	}
	rows.ReuseRecord = true
	rows.FieldsPerRecord = -1
	return rows, rows.Comma, nil
}

// longestLine is how many bytes a line may have where bytes are limited, so that
// a cell without an end does not fill the memory.
const longestLine = 1 << 16

// limitedReader fails once more than most bytes were read, or a line is too long.
type limitedReader struct {
	in         io.Reader
	most, left int64
	line       int // bytes of the line at hand
}

func (l *limitedReader) Read(p []byte) (int, error) {
	n, err := l.in.Read(p)
	if l.left -= int64(n); l.left < 0 {
		return 0, &LimitError{l.most, "bytes"}
	}
	for rest := p[:n]; ; l.line = 0 {
		end := bytes.IndexByte(rest, '\n')
		if l.line += max(end, 0); end < 0 {
			l.line += len(rest)
		}
		if l.line > longestLine {
			return 0, &LimitError{longestLine, "bytes in a line"}
		}
		if end < 0 {
			return n, err
		}
		rest = rest[end+1:]
	}
}
