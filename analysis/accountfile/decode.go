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
type decoder struct{ *json.Decoder }

func (d decoder) next() (json.Token, error) {
	t, err := d.Token()
	var syntax *json.SyntaxError
	switch {
	case errors.As(err, &syntax):
		return nil, faulty("not written as JSON: %s", syntax)
	case err == io.EOF || err == io.ErrUnexpectedEOF:
		return nil, faulty("the file ends too early")
	}
	return t, err
}

// object reads an object; field reads the value of each of its names.
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

// list reads a list of at most so many; null is an empty one. item reads each.
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

// pass passes over a value. How deep it goes is bounded by the guard.
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

// described says what a piece is, for a fault.
func described(t json.Token) string {
	switch t := t.(type) {
	case nil:
		return "nothing"
	case string:
		return "a text"
	case json.Number:
		return "a number"
	case bool:
		return strconv.FormatBool(t)
	}
	return "a list or an object"
}

// text reads a text that must be sayable.
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
		return faulty("%s: a text with a letter in it that cannot be seen, or of more than one line", field)
	}
	*to = text
	return nil
}

// number reads a number between two ends.
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

// named reads a text and what it names.
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

func plain(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// shortened is as much of a text as a fault repeats.
func shortened(text string) string {
	const most = 40
	if len(text) > most {
		return text[:most] + "…"
	}
	return text
}
