package golf

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

func date(t *testing.T, s string) Date {
	t.Helper()
	d, err := ParseDate(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestSpansAreReadAsTheyAreWritten(t *testing.T) {
	for _, s := range []string{"2026", "2026-02", "2024-02", "2026-05-03..2026-06-14", "..2026-06-14", "2026-05-03..", "..", "last10", "before3"} {
		span, err := ParseSpan(s)
		if err != nil || span.String() != s {
			t.Errorf("%s: %q, %v", s, span.String(), err)
		}
	}
	if span, err := ParseSpan("2026-05-01..2026-05-31"); err != nil || span.String() != "2026-05" {
		t.Errorf("a month by its days is %q, %v", span, err)
	}
	for _, s := range []string{"", "last", "last0", "last101", "before-3", "2026-13", "2026-05-03..2026-05-02", "2026-02-30..", "May"} {
		if span, err := ParseSpan(s); err == nil {
			t.Errorf("%q is read as %v", s, span)
		}
	}
}

func TestSpansHoldTheirRounds(t *testing.T) {
	days := []string{"2026-04-30", "2026-05-01", "2026-05-31", "2026-06-01"}
	for _, c := range []struct {
		span string
		want []string
	}{
		{"2026-05", days[1:3]}, {"2026", days}, {"2025", nil}, {"..", days}, {"2026-05-31..", days[2:]}, {"..2026-05-01", days[:2]},
		{"last1", days[3:]}, {"before1", days[2:3]}, {"last3", days[1:]}, {"before3", days[:1]}, {"last9", days}, {"before9", nil},
	} {
		span, err := ParseSpan(c.span)
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for i, d := range days {
			if span.Holds(i, len(days), date(t, d)) {
				got = append(got, d)
			}
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s: %s", c.span, diff)
		}
	}
}

func TestUsualMonths(t *testing.T) {
	for _, c := range []struct {
		first, last string
		want        []string
	}{
		{"2024-01-05", "2026-01-31", []string{"2025-10", "2025-11", "2025-12", "2026-01"}},
		{"2026-05-31", "2026-07-01", []string{"2026-05", "2026-06", "2026-07"}},
		{"2026-05-31", "2026-05-31", []string{"2026-04", "2026-05"}},
		{"2026-12-31", "2027-01-01", []string{"2026-12", "2027-01"}},
	} {
		var got []string
		for _, s := range Months(date(t, c.first), date(t, c.last)) {
			got = append(got, s.String())
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s to %s: %s", c.first, c.last, diff)
		}
	}
}

func TestEarlier(t *testing.T) {
	for of, want := range map[string]string{"2026": "2025", "2026-01": "2025-12", "last10": "before10", "2026-05-03..2026-05-12": "2026-04-23..2026-05-02", "2026-05-03..": "..2026-05-02"} {
		span, err := ParseSpan(of)
		if err != nil {
			t.Fatal(err)
		}
		if got, ok := span.Earlier(); !ok || got.String() != want {
			t.Errorf("before %s: %s, want %s", of, got, want)
		}
	}
	long, err := ParseSpan("1601-01-01..2000-12-31")
	if err != nil {
		t.Fatal(err)
	}
	if got, ok := long.Earlier(); !ok || got.String() != "1201-01-01..1600-12-31" {
		t.Errorf("four hundred years before: %s", got)
	}
	for _, of := range []string{"before10", "..2026-05-02", "0001", "0001-01", "0001-01-01..", "0001-01-01..0001-01-01", "0001-01-01..9999-12-31", "0001-01-02..0001-02-01"} {
		span, err := ParseSpan(of)
		if err != nil {
			t.Fatal(err)
		}
		if got, ok := span.Earlier(); ok {
			t.Errorf("before %s: %s", of, got)
		}
	}
}
