package shotsfile

import (
	"bufio"
	"bytes"
	"encoding/csv"
	"io"
)

// open prepares a CSV reader: it takes off a byte-order mark and finds out by
// the header whether cells are separated by commas or semicolons, which it returns
// as well. A spreadsheet separates by semicolons where its numbers have a decimal
// comma.
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
	in   io.Reader
	most int64 // bytes of the file
	left int64 // of them still to come, below 0 once there were more
	line int   // bytes of the line at hand
}

// Read passes on what it read, or a *LimitError.
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
