package form

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"strokeledger/analysis/golf"
)

// Field is one field of a form: what was typed, what it meant, and what was
// wrong with it.
type Field[T any] struct {
	Text    string // as typed, without the spaces around it
	Value   T      // what it meant; the zero value where Problem says it meant nothing
	Problem string // what is allowed instead, a sentence for a page; empty when nothing is wrong
}

// The kinds of fields. A choice is a Field of what is chosen from.
type (
	Text   = Field[string]
	Number = Field[float64]
	Whole  = Field[int]
	Day    = Field[golf.Date]
	Length = Field[golf.Distance]
	Unit   = Field[golf.Unit]
	Course = Field[golf.CourseID]
)

// Sound reports whether nothing is wrong with the field.
func (f Field[T]) Sound() bool { return f.Problem == "" }

// saying is the field with its problem, if it has one, in other words.
func (f Field[T]) saying(problem string) Field[T] {
	if !f.Sound() {
		f.Problem = problem
	}
	return f
}

// becomes is the field with a value that does not come from its text, and so
// cannot be wrong.
func (f Field[T]) becomes(value T) Field[T] {
	return Field[T]{Text: f.Text, Value: value}
}

// sound reports whether nothing is wrong with any of some fields.
func sound(fields ...interface{ Sound() bool }) bool {
	for _, f := range fields {
		if !f.Sound() {
			return false
		}
	}
	return true
}

// refused is a field whose text is not allowed.
func refused[T any](text, problem string) Field[T] { return Field[T]{Text: text, Problem: problem} }

// optional reads a field that may be left empty, which is the zero value.
func optional[T any](text string, parse func(string) Field[T]) Field[T] {
	if strings.TrimSpace(text) == "" {
		return Field[T]{}
	}
	return parse(text)
}

// ParseNumber reads a number with a decimal point or comma, from low to high.
func ParseNumber(text string, low, high float64) Number {
	text = strings.TrimSpace(text)
	_, behind := leadingNumber(text)
	x, err := parseNumber(text)
	if err != nil || behind != "" || x < low || x > high {
		return refused[float64](text, "Allowed: "+WriteNumber(low)+" to "+WriteNumber(high)+".")
	}
	return Number{Text: text, Value: x}
}

// WriteNumber writes a number as ParseNumber reads it.
func WriteNumber(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// NumberOf is the field of a number that is kept.
func NumberOf(x float64) Number { return Number{Text: WriteNumber(x), Value: x} }

// ParseWhole reads a whole number from low to high.
func ParseWhole(text string, low, high int) Whole {
	text = strings.TrimSpace(text)
	n, ok := whole(text, low, high)
	if !ok {
		return refused[int](text, fmt.Sprintf("Allowed: %d to %d.", low, high))
	}
	return Whole{Text: text, Value: n}
}

// WholeOf is the field of a whole number that is kept; 0 is one that is not
// known.
func WholeOf(n int) Whole {
	if n == 0 {
		return Whole{}
	}
	return Whole{Text: strconv.Itoa(n), Value: n}
}

// ParseDay reads a day.
func ParseDay(text string) Day {
	text = strings.TrimSpace(text)
	day, err := golf.ParseDate(text)
	if err != nil {
		return refused[golf.Date](text, sentence(err))
	}
	return Day{Text: text, Value: day}
}

// DayOf is the field of a day that is kept.
func DayOf(d golf.Date) Day { return Day{Text: d.String(), Value: d} }

// sentence writes an error of the domain as a sentence of a page.
func sentence(err error) string {
	text := err.Error()
	first, size := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + text[size:] + "."
}

// ParseText reads a text in one line of at most so many bytes, which may be
// empty.
func ParseText(text string, most int) Text {
	text = strings.TrimSpace(text)
	if !golf.Sayable(text, most) {
		return refused[string](text, fmt.Sprintf("Allowed: at most %d characters, in one line.", most))
	}
	return TextOf(text)
}

// ParseName reads a text in one line that must not be empty.
func ParseName(text string, most int) Text {
	f := ParseText(text, most)
	if f.Text == "" || !f.Sound() {
		return refused[string](f.Text, fmt.Sprintf("Allowed: 1 to %d characters, in one line.", most))
	}
	return f
}

// ParseBody reads a text of several lines that must not be empty.
func ParseBody(text string, most int) Text {
	body := strings.TrimSpace(strings.ReplaceAll(text, "\r\n", "\n"))
	control := func(c rune) bool { return c != '\n' && c != '\t' && unicode.IsControl(c) }
	if body == "" || len(body) > most || !utf8.ValidString(body) || strings.ContainsFunc(body, control) {
		return refused[string](text, fmt.Sprintf("Allowed: 1 to %d characters.", most))
	}
	return Text{Text: text, Value: body}
}

// TextOf is the field of a text that is kept.
func TextOf(text string) Text { return Text{Text: text, Value: text} }

// ParseLength reads the length of a hole; unit is that of a number without one.
func ParseLength(text string, unit golf.Unit) Length {
	d, ok := ReadLength(text, unit)
	if !ok {
		return refused[golf.Distance](strings.TrimSpace(text), fmt.Sprintf("Allowed: over 0, at most %.0f %s.", math.Floor(unit.In(golf.MaxDistance)), unit))
	}
	return Length{Text: strings.TrimSpace(text), Value: d}
}

// LengthOf is the field of a length that is kept; 0 is one that is not known.
func LengthOf(d golf.Distance, unit golf.Unit) Length {
	if d == 0 {
		return Length{}
	}
	return Length{Text: WriteLength(d, unit), Value: d}
}

// ParseChoice reads one of a few values by what it is called; problem says what
// to choose from.
func ParseChoice[T fmt.Stringer](text, problem string, from ...T) Field[T] {
	for _, one := range from {
		if one.String() == text {
			return ChoiceOf(one)
		}
	}
	return refused[T](text, problem)
}

// ChoiceOf is the field of a choice that is kept.
func ChoiceOf[T fmt.Stringer](one T) Field[T] { return Field[T]{Text: one.String(), Value: one} }

// farUnit reads the unit of distances off the green.
func farUnit(text string) Unit {
	return ParseChoice(text, "Choose yards or metres.", golf.FarUnits...)
}

// greenUnit reads the unit of distances on the green.
func greenUnit(text string) Unit {
	return ParseChoice(text, "Choose feet or metres.", golf.GreenUnits...)
}

// ParseTarget reads the score of 18 holes that a player is after.
func ParseTarget(text string) Number { return ParseNumber(text, golf.MinTarget, golf.MaxTarget) }

// TargetRange says which targets are allowed: 68 to 110.
func TargetRange() string { return fmt.Sprintf("%d to %d", golf.MinTarget, golf.MaxTarget) }

// ParseCourse reads the number of a course.
func ParseCourse(text string) Course {
	text = strings.TrimSpace(text)
	n, err := strconv.ParseInt(text, 10, 64)
	if err != nil || n < 1 {
		return refused[golf.CourseID](text, "Choose a course.")
	}
	return Course{Text: text, Value: golf.CourseID(n)}
}
