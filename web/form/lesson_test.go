package form

import (
	"net/url"
	"strings"
	"testing"

	"strokeledger/analysis/golf"
)

func TestArrangedLesson(t *testing.T) {
	today := golf.Date{Year: 2026, Month: 5, Day: 2}
	right := map[string]string{"coach": "2", "day": "2026-05-02", "time": "17:30", "place": "The range", "aim": "Start line", "agreed": "Bring the wedge.\n- forty putts before"}
	checkForms(t, func(v url.Values) typedForm { return ParseArrangedLesson(v, today) }, []formCase{
		{right, nil},
		{map[string]string{"coach": "2", "day": "2027-05-03"}, nil},
		{with(right, "coach", ""), map[string]string{"Coach": "Choose a coach."}},
		{with(right, "coach", "0"), map[string]string{"Coach": "Choose a coach."}},
		{with(right, "day", "2026-05-01"), map[string]string{"Day": "This day has passed."}},
		{with(right, "day", "2027-05-04"), map[string]string{"Day": "Allowed: at most a year ahead."}},
		{with(right, "day", "2999-05-02"), map[string]string{"Day": "Allowed: at most a year ahead."}},
		{with(right, "day", "x"), map[string]string{"Day": dayAllowed}},
		{with(right, "time", "25:00"), map[string]string{"Time": "Write it as 17:30."}},
		{with(right, "time", "at noon", "place", "a\nb"), map[string]string{"Time": "Write it as 17:30.", "Place": "Allowed: up to 200 characters, in one line."}},
		{with(right, "aim", long+long), map[string]string{"Aim": "Allowed: up to 200 characters, in one line."}},
		{with(right, "agreed", strings.Repeat("a", 4001)), map[string]string{"Agreed": "Allowed: at most 4000 characters."}},
	})
	for text, minute := range map[string]int{"17:30": 1050, "9:05": 545, "9.05": 545, "00:00": 0, "23:59": 1439, "17:30:00": 1050} {
		if f := ParseTime(text); !f.Sound() || f.Value != minute || TimeOf(&minute).Text != f.Text {
			t.Errorf("%q: %+v", text, f)
		}
	}
	if f := TimeOf(nil); f.Text != "" {
		t.Errorf("%+v", f)
	}
}
