package golf

import (
	"strings"
	"testing"
	"time"
)

// Source: IANA tz database: New Zealand has daylight saving time in November, 13
// hours ahead; Los Angeles is then 8 hours behind, and India 5½ ahead all year.
func TestParseZone(t *testing.T) {
	at := time.Date(2026, 11, 26, 11, 30, 0, 0, time.UTC)
	for name, want := range map[string]string{
		"Pacific/Auckland": "2026-11-27 00:30", "America/Los_Angeles": "2026-11-26 03:30", "Asia/Kolkata": "2026-11-26 17:00",
		"Asia/Calcutta": "2026-11-26 17:00", "Etc/GMT+8": "2026-11-26 03:30", "UTC": "2026-11-26 11:30",
	} {
		zone, err := ParseZone(name)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if got := at.In(zone).Format("2006-01-02 15:04"); got != want {
			t.Errorf("%s: %s, want %s", name, got, want)
		}
	}
	for _, name := range []string{"", "Local", "Europe", "Europe/Atlantis", "../../etc/passwd", "right/Europe/London", "posix/UTC", "zone.tab", "Europe/London ", strings.Repeat("A", 65)} {
		if _, err := ParseZone(name); err == nil {
			t.Errorf("%q is read as a time zone", name)
		}
	}
}
