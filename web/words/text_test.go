package words

import (
	"strings"
	"testing"
	"time"

	"strokeledger/analysis/golf"
)

func TestList(t *testing.T) {
	for want, all := range map[string][]string{"": nil, "one": {"one"}, "one and two": {"one", "two"}, "one, two and three": {"one", "two", "three"}} {
		if got := List(all); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

func TestJoined(t *testing.T) {
	for want, all := range map[string][]string{"": {"", ""}, "driver": {"", "driver"}, "driver, right, pushed": {"driver", "right", "pushed"}} {
		if got := Joined(all...); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

func TestCapital(t *testing.T) {
	for text, want := range map[string]string{"": "", "rough": "Rough", "élan": "Élan", "3 to 6 ft": "3 to 6 ft", "Tee": "Tee"} {
		if got := Capital(text); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// A text is cut between characters, never inside one.
func TestExcerpt(t *testing.T) {
	sixty := strings.Repeat("é", ExcerptMost)
	for text, want := range map[string]string{"": "", "short": "short", sixty: sixty, sixty + "x": sixty + "…"} {
		if got := Excerpt(text); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

func TestDays(t *testing.T) {
	today := golf.Date{Year: 2026, Month: time.May, Day: 2} // a Saturday
	for _, c := range []struct {
		days      int
		near, due string
	}{
		{0, "2 May", "today"},
		{1, "3 May", "tomorrow"},
		{2, "4 May", "Monday"},
		{6, "8 May", "Friday"},
		{7, "9 May", "9 May"},
		{-1, "1 May", "1 May"},
		{365, "2 May 2027", "2 May 2027"},
	} {
		d := today.AddDays(c.days)
		if got := DaysBetween(today, d); got != c.days {
			t.Errorf("%s is %d days away, want %d", d, got, c.days)
		}
		if got := NearDay(d, today); got != c.near {
			t.Errorf("%s near: %q, want %q", d, got, c.near)
		}
		if got := DueDay(d, today); got != c.due {
			t.Errorf("%s due: %q, want %q", d, got, c.due)
		}
	}
	if got := ShortDay(today); got != "2 May 2026" {
		t.Errorf("%q", got)
	}
	if got := LongDay(today); got != "Saturday 2 May 2026" {
		t.Errorf("%q", got)
	}
	if got := Moment(time.Date(2026, 5, 2, 9, 7, 0, 0, time.UTC)); got != "2 May 2026, 09:07 UTC" {
		t.Errorf("%q", got)
	}
}

// Source: IANA tz database: offsets and letters of these zones on those days.
func TestClock(t *testing.T) {
	winter := time.Date(2026, 1, 26, 11, 7, 0, 0, time.UTC)
	for zone, want := range map[string]string{
		"UTC": "11:07 UTC", "Europe/London": "11:07 GMT", "Pacific/Auckland": "00:07 NZDT", "America/Los_Angeles": "03:07 PST",
		"America/Sao_Paulo": "08:07 UTC−3", "Asia/Kathmandu": "16:52 UTC+5:45", "Pacific/Marquesas": "01:37 UTC−9:30", "Asia/Dubai": "15:07 UTC+4",
	} {
		in, err := golf.ParseZone(zone)
		if err != nil {
			t.Fatal(err)
		}
		if got := Clock(winter.In(in)); got != want {
			t.Errorf("%s: %s, want %s", zone, got, want)
		}
	}
	london, _ := golf.ParseZone("Europe/London")
	if got := LongMoment(winter.AddDate(0, 6, 0).In(london)); got != "Sunday 26 July 2026, 12:07 BST" {
		t.Error(got)
	}
}

func TestDaysAndAccessInWords(t *testing.T) {
	day := golf.Date{Year: 2026, Month: time.March, Day: 3}
	for got, want := range map[string]string{
		Days(day, day): "3 Mar 2026", Days(day, day.AddDays(30)): "3 Mar to 2 Apr 2026", Days(day, day.AddDays(365)): "3 Mar 2026 to 3 Mar 2027",
		NoRounds("", golf.Date{}): "No rounds yet.", NoRounds("Bea", golf.Date{}): "Bea has not entered a round yet.",
		NoRounds("Bea", day): "Bea has entered no round played on 3 Mar 2026 or later, the first day that you see.",
		Whose("Bea"):         "Bea’s", Whose("Ines"): "Ines’",
		Score(86.2, false): "86", Score(86.2, true): "(86)", OnHoles(18): "", OnHoles(9): " on 9 holes", OnHoles(1): " on 1 hole",
	} {
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
