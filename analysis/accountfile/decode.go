package accountfile

import (
	"encoding/json"
	"errors"
	"io"
	"math"
	"strconv"

	"strokeledger/analysis/golf"
)

// decoder reads JSON a piece at a time, so that a list is never in memory whole.
// All of its errors are faults, but for those of the file underneath.
type decoder struct {
	*json.Decoder
	guard *guard // of what it reads
}

// next reads the next piece: a bracket, a name or a value. What the JSON package
// reports becomes a fault; an error of the file underneath stays what it is.
func (d decoder) next() (json.Token, error) {
	t, err := d.Token()
	if err != nil {
		return nil, decoded(err)
	}
	return t, nil
}

// decoded makes a fault of what the JSON package reports.
func decoded(err error) error {
	var syntax *json.SyntaxError
	switch {
	case errors.As(err, &syntax):
		return faulty("this is not JSON: %s", syntax)
	case err == io.EOF || err == io.ErrUnexpectedEOF:
		return faulty("the file ends too early")
	}
	return err
}

// object reads an object; field reads the value of each of its names, whole.
// encoding/json checks that names are texts.
func (d decoder) object(field func(name string) error) error {
	t, err := d.next()
	if err != nil {
		return err
	}
	if t != json.Delim('{') {
		return faulty("%s here; allowed: an object", described(t))
	}
	for d.More() {
		name, err := d.next()
		if err != nil {
			return err
		}
		if err := field(name.(string)); err != nil {
			return err
		}
	}
	_, err = d.next()
	return err
}

// list reads a list of at most so many; null is an empty one. item reads the one
// at place i, counted from 0; of says what they are, for a fault.
func (d decoder) list(most int, of string, item func(i int) error) error {
	t, err := d.next()
	if err != nil || t == nil {
		return err
	}
	if t != json.Delim('[') {
		return faulty("%s here; allowed: a list of %s", described(t), of)
	}
	for i := 0; d.More(); i++ {
		if i == most {
			return faulty("more than %d %s, the most that are taken", most, of)
		}
		if err := item(i); err != nil {
			return err
		}
	}
	_, err = d.next()
	return err
}

// pass passes over a value, whatever it is, so that a file of a later program with
// more fields can be read. How deep it goes is limited by the guard.
func (d decoder) pass() error {
	for depth := 0; ; {
		t, err := d.next()
		if err != nil {
			return err
		}
		switch t {
		case json.Delim('{'), json.Delim('['):
			depth++
		case json.Delim('}'), json.Delim(']'):
			depth--
		}
		if depth == 0 {
			return nil
		}
	}
}

// text reads a text of one line and at most so many bytes, each letter of which
// can be seen (golf.Sayable). Like the functions below it leaves *to alone when it
// fails.
func (d decoder) text(to *string, field string, most int) error {
	t, err := d.next()
	if err != nil {
		return err
	}
	text, is := t.(string)
	switch {
	case !is:
		return faulty("%s: %s; allowed: a text", field, described(t))
	case len(text) > most:
		return faulty("%s: a text of %d bytes; allowed: at most %d", field, len(text), most)
	case !golf.Sayable(text, most):
		return faulty("%s: this text has a letter that cannot be seen, or more than one line", field)
	}
	*to = text
	return nil
}

// number reads a number from low to high, both allowed. Not a number and infinity
// cannot be written in JSON.
func (d decoder) number(to *float64, field string, low, high float64) error {
	t, err := d.next()
	if err != nil {
		return err
	}
	text, is := t.(json.Number)
	x, failed := strconv.ParseFloat(string(text), 64)
	switch {
	case !is:
		return faulty("%s: %s; allowed: a number", field, described(t))
	case failed != nil || !(x >= low && x <= high):
		return faulty("%s: %s; allowed: %s to %s", field, shortened(string(text)), plain(low), plain(high))
	}
	*to = x
	return nil
}

// whole reads a whole number from low to high. 4.0 is one, 4.5 is not.
func (d decoder) whole(to *int, field string, low, high int) error {
	var x float64
	if err := d.number(&x, field, float64(low), float64(high)); err != nil {
		return err
	}
	if x != math.Trunc(x) {
		return faulty("%s: %s; allowed: a whole number", field, plain(x))
	}
	*to = int(x)
	return nil
}

// yes reads true or false; nothing else stands for either.
func (d decoder) yes(to *bool, field string) error {
	t, err := d.next()
	if err != nil {
		return err
	}
	value, is := t.(bool)
	if !is {
		return faulty("%s: %s; allowed: true, false", field, described(t))
	}
	*to = value
	return nil
}

// named reads a text and the value it names by a parser of golf, such as
// golf.ParseLie; the parser lists what is allowed.
func named[T any](d decoder, to *T, field string, parse func(string) (T, error)) error {
	var text string
	if err := d.text(&text, field, golf.MaxText); err != nil {
		return err
	}
	value, err := parse(text)
	if err != nil {
		return faulty("%s: %s", field, err)
	}
	*to = value
	return nil
}
