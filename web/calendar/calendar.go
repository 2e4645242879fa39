// Package calendar writes an appointment as an iCalendar file, the format of RFC 5545,
// which programs for calendars read.
//
// It answers "which file puts this day into a calendar?". Folding and escaping are the
// library's; what an appointment says, and that it is a day or a local time, is decided
// here. It reads no file.
package calendar

import (
	"bytes"
	"fmt"
	"strings"
	"time"
	"unicode"

	ics "github.com/arran4/golang-ical"

	"strokeledger/analysis/golf"
)

// Type is the media type of a file, RFC 5545 section 8.1.
const Type = "text/calendar; charset=utf-8"

// product names who wrote a file, RFC 5545 section 3.7.3.
const product = "-//Strokeledger//Lessons//EN"

// Event is an appointment.
type Event struct {
	UID     string    // the same each time that it is written, and different from all others
	Version int       // how often it was changed, so that a later file takes the place of an earlier one
	Written time.Time // when the file is made
	Day     golf.Date
	Minute  int  // after midnight, where it takes place
	AllDay  bool // it has no time, and Minute says nothing
	Summary string
	Place   string // may be empty
	Text    string // of several lines; may be empty
	At      string // address of a page about it; may be empty
}

// Write writes the file of one event.
func Write(e Event) (*bytes.Buffer, error) {
	cal := &ics.Calendar{}
	cal.SetVersion("2.0")
	cal.SetProductId(product)
	v := cal.AddEvent(plain(e.UID))
	v.SetDtStampTime(e.Written)
	v.SetSequence(e.Version)
	if e.AllDay {
		v.SetProperty(ics.ComponentPropertyDtStart, day(e.Day), ics.WithValue(string(ics.ValueDataTypeDate)))
	} else { // a local time, "form #1" of section 3.3.5: the time of the place, whoever reads it
		v.SetProperty(ics.ComponentPropertyDtStart, fmt.Sprintf("%sT%02d%02d00", day(e.Day), e.Minute/60, e.Minute%60))
	}
	v.SetSummary(plain(e.Summary))
	if e.Place != "" {
		v.SetLocation(plain(e.Place))
	}
	if e.Text != "" {
		v.SetDescription(plain(e.Text))
	}
	if e.At != "" {
		v.SetURL(e.At)
	}
	var file bytes.Buffer
	return &file, cal.SerializeTo(&file, ics.WithNewLineWindows)
}

// day writes a day as section 3.3.4 has it.
func day(d golf.Date) string { return d.Time().Format("20060102") }

// plain takes out what a text must not hold, section 3.3.11: control characters other
// than tabs and ends of lines.
func plain(text string) string {
	return strings.Map(func(c rune) rune {
		if unicode.IsControl(c) && c != '\t' && c != '\n' {
			return -1
		}
		return c
	}, strings.ToValidUTF8(text, ""))
}
