package calendar

import (
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"strokeledger/analysis/golf"
)

var lesson = Event{UID: "lesson-1-7@harrowfen.example", Version: 2, Written: time.Date(2026, 9, 1, 8, 5, 9, 0, time.FixedZone("", 7200)),
	Day: golf.Date{Year: 2026, Month: 9, Day: 8}, Minute: 17*60 + 5, Summary: "Lesson with Ines Vale"}

func written(t interface {
	Helper()
	Fatal(...any)
}, e Event) string {
	t.Helper()
	file, err := Write(e)
	if err != nil {
		t.Fatal(err)
	}
	return file.String()
}

// Source: RFC 5545, section 3.6 (what an object holds), 3.8.2.4 with 3.3.5 (a local
// time), 3.8.7.2 (DTSTAMP is in UTC) and 3.1 (lines end with CRLF).
func TestWrite(t *testing.T) {
	want := strings.Join([]string{"BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Strokeledger//Lessons//EN", "BEGIN:VEVENT", "UID:lesson-1-7@harrowfen.example", "DTSTAMP:20260901T060509Z",
		"SEQUENCE:2", "DTSTART:20260908T170500", "SUMMARY:Lesson with Ines Vale", "END:VEVENT", "END:VCALENDAR", ""}, "\r\n")
	if got := written(t, lesson); got != want {
		t.Errorf("%q\nwant %q", got, want)
	}
}

// Source: RFC 5545, section 3.8.2.4 with 3.3.4: "DTSTART;VALUE=DATE" and a day.
func TestADayWithoutATime(t *testing.T) {
	e := lesson
	e.AllDay = true
	if got := written(t, e); !strings.Contains(got, "\r\nDTSTART;VALUE=DATE:20260908\r\n") {
		t.Errorf("%q", got)
	}
}

// Source: RFC 5545, section 3.3.11, its example: a text in which comma and line breaks
// are escaped; semicolon and backslash by the rule above it (ESCAPED-CHAR).
func TestEscaping(t *testing.T) {
	e := lesson
	e.Text = "Project XYZ Final Review\nConference Room - 3B\nCome Prepared."
	if got, want := unfolded(written(t, e)), `DESCRIPTION:Project XYZ Final Review\nConference Room - 3B\nCome Prepared.`; !strings.Contains(got, "\r\n"+want+"\r\n") {
		t.Errorf("%q, want %q", got, want)
	}
	e.Text, e.Place = `a;b,c\d:e"f`, "x\r\ny\x00z"
	for _, want := range []string{`DESCRIPTION:a\;b\,c\\d:e"f`, `LOCATION:x\nyz`} {
		if got := unfolded(written(t, e)); !strings.Contains(got, "\r\n"+want+"\r\n") {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// Source: RFC 5545, section 3.1: "Lines of text SHOULD NOT be longer than 75 octets,
// excluding the line break", and its example of a long DESCRIPTION: unfolded, it is the
// line that it was.
func TestFolding(t *testing.T) {
	e := lesson
	e.Text = "This is a long description that exists on a long line."
	if got := unfolded(written(t, e)); !strings.Contains(got, "\r\nDESCRIPTION:"+e.Text+"\r\n") {
		t.Errorf("%q", got)
	}
	rapid.Check(t, func(t *rapid.T) {
		e := lesson
		e.Text = rapid.StringOfN(rapid.SampledFrom([]rune("ab \\;,:\néß漢🏌\t")), 0, 400, -1).Draw(t, "text")
		got := written(t, e)
		for _, line := range strings.Split(got, "\r\n") {
			if len(line) > 75 || strings.ContainsAny(line, "\r\n") {
				t.Fatal(line)
			}
			if strings.ToValidUTF8(line, "?") != line {
				t.Fatalf("a letter is cut in %q", line)
			}
		}
		if e.Text != "" && !strings.Contains(unescaped(unfolded(got)), "DESCRIPTION:"+e.Text+"\r\n") {
			t.Fatalf("%q does not come back from %q", e.Text, got)
		}
	})
}

// unfolded joins folded lines, RFC 5545 section 3.1: "a CRLF immediately followed by a
// single linear white-space character" is removed.
func unfolded(file string) string {
	return strings.NewReplacer("\r\n ", "", "\r\n\t", "").Replace(file)
}

// unescaped reads a text as RFC 5545 section 3.3.11 has it.
func unescaped(text string) string {
	return strings.NewReplacer(`\\`, `\`, `\;`, ";", `\,`, ",", `\n`, "\n", `\N`, "\n").Replace(text)
}
