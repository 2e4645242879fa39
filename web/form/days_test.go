package form

import (
	"net/url"
	"testing"
)

func TestParseDays(t *testing.T) {
	for _, c := range []struct {
		from, to       string
		sound, open    bool
		wrongFrom, end string
	}{
		{"", "", true, true, "", ""},
		{"2026-05-02", "", true, false, "", ""},
		{"", "2026-05-02", true, false, "", ""},
		{"2026-05-02", "2026-05-02", true, false, "", ""},
		{"2026-05-03", "2026-05-02", false, false, "", "The last day is before the first."},
		{"May", "2026-05-02", false, false, `Not a day "May"; allowed: YYYY-MM-DD.`, ""},
		{"", "x", false, true, "", `Not a day "x"; allowed: YYYY-MM-DD.`},
	} {
		d := ParseDays(url.Values{"from": {c.from}, "to": {c.to}})
		if d.Sound() != c.sound || d.Open() != c.open || d.From.Problem != c.wrongFrom || d.To.Problem != c.end || d.From.Text != c.from {
			t.Errorf("%q to %q: %+v", c.from, c.to, d)
		}
	}
	if (Comparing{Level: "x"}).Sound() || !(Comparing{}).Sound() {
		t.Error("what is sound")
	}
}
