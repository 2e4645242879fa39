package aim

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
)

// version is the only one of a picture file that is written and read.
const version = 1

// MaxBytes is the most that a picture may have, as a file and as rows.
const MaxBytes = 32 << 10

// Read reads a picture from its file: one JSON object as Write writes it. Numbers
// are kept to a hundredth of a yard. It fails with the first thing that is not
// JSON, is unknown or comes twice, and otherwise with everything that Check finds;
// every fault says where it is.
func Read(data []byte) (Picture, error) {
	var p Picture
	if len(data) > MaxBytes {
		return p, Faults{{What: fmt.Sprintf("the picture has %d bytes; allowed: at most %d", len(data), MaxBytes)}}
	}
	d := reader{json.NewDecoder(bytes.NewReader(data))}
	d.UseNumber()
	if err := d.picture(&p); err != nil {
		return Picture{}, Faults{placed(err)}
	}
	return p, p.Check().Err()
}

// placed makes a fault of what stopped a reader.
func placed(err error) Fault {
	var fault Fault
	if errors.As(err, &fault) {
		return fault
	}
	return Fault{What: "this is not JSON: " + err.Error()}
}

// Error makes a single fault an error.
func (f Fault) Error() string { return f.String() }

// reader reads JSON a piece at a time, so that it can say where a fault is.
type reader struct{ *json.Decoder }

func faultAt(part string, row int, format string, args ...any) error {
	return Fault{Part: part, Row: row, What: fmt.Sprintf(format, args...)}
}

// next reads the next piece.
func (d reader) next() (json.Token, error) {
	t, err := d.Token()
	if err == io.EOF || errors.Is(err, io.ErrUnexpectedEOF) {
		return nil, faultAt("", 0, "the picture ends too early")
	}
	return t, err
}

// object reads an object, each name of which must be one of those known, and come
// once; field reads its value.
func (d reader) object(part string, row int, known string, field func(name string) error) error {
	t, err := d.next()
	if err != nil {
		return err
	}
	if t != json.Delim('{') {
		return faultAt(part, row, "%s; allowed: an object with %s", described(t), known)
	}
	return d.fields(part, row, field)
}

// fields reads the rest of an object whose bracket was read.
func (d reader) fields(part string, row int, field func(name string) error) error {
	seen := map[string]bool{}
	for d.More() {
		t, err := d.next()
		if err != nil {
			return err
		}
		name := t.(string)
		if seen[name] {
			return faultAt(part, row, "%q comes twice", shortened(name))
		}
		seen[name] = true
		if err := field(name); err != nil {
			return err
		}
	}
	_, err := d.next()
	return err
}

// list reads a list of at most so many; null is an empty one.
func (d reader) list(part string, most int, item func(row int) error) error {
	t, err := d.next()
	if err != nil || t == nil {
		return err
	}
	if t != json.Delim('[') {
		return faultAt(part, 0, "%s; allowed: a list", described(t))
	}
	for row := 1; d.More(); row++ {
		if row > most {
			return faultAt(part, 0, "more than %d rows", most)
		}
		if err := item(row); err != nil {
			return err
		}
	}
	_, err = d.next()
	return err
}

// numbers reads a list of exactly so many numbers. An end that may be open is null
// where it is; open says what each then is, and is nil where none may be.
func (d reader) numbers(part string, row int, to []*float64, open []float64) error {
	t, err := d.next()
	if err != nil {
		return err
	}
	if t != json.Delim('[') {
		return faultAt(part, row, "%s; allowed: a list of %d numbers", described(t), len(to))
	}
	for i, x := range to {
		if !d.More() {
			return faultAt(part, row, "%d numbers; allowed: %d", i, len(to))
		}
		if err := d.number(part, row, "a number", x, at(open, i)); err != nil {
			return err
		}
	}
	if d.More() {
		return faultAt(part, row, "more than %d numbers", len(to))
	}
	_, err = d.next()
	return err
}

// at is what an end that is null means; 0 where it must not be.
func at(open []float64, i int) float64 {
	if open == nil {
		return 0
	}
	return open[i]
}

// number reads a number, or null where open is not 0.
func (d reader) number(part string, row int, field string, to *float64, open float64) error {
	t, err := d.next()
	if err != nil {
		return err
	}
	if t == nil && open != 0 {
		*to = open
		return nil
	}
	text, is := t.(json.Number)
	x, failed := strconv.ParseFloat(string(text), 64)
	if !is || failed != nil {
		return faultAt(part, row, "%s: %s; allowed: a number", field, described(t))
	}
	*to = hundredth(x)
	return nil
}

// hundredth rounds to what is kept of a number; it never returns minus zero.
func hundredth(x float64) float64 {
	if math.Abs(x) > 1e6 {
		return x // out of every range; left for Check
	}
	return math.Round(x*100)/100 + 0
}

// described says what a piece is, for a fault.
func described(t json.Token) string {
	switch t := t.(type) {
	case nil:
		return "nothing here"
	case string:
		return "a text here"
	case json.Number:
		return "the number " + shortened(string(t))
	case bool:
		return strconv.FormatBool(t)
	}
	return "a list or an object here"
}
