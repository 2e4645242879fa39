package golf

import (
	"fmt"
	"regexp"
	"time"
	_ "time/tzdata" // a bare server has no list of zones of its own
)

// MaxZone is the most letters of the name of a time zone.
const MaxZone = 64

// zoneName is what the name of a zone looks like: Europe/London, Etc/GMT+8. Folders
// of the system that hold the zones once more have small letters.
var zoneName = regexp.MustCompile(`^[A-Z][A-Za-z0-9_+-]*(/[A-Z][A-Za-z0-9_+-]*)*$`)

// ParseZone reads the name of a time zone as the tz database writes it.
// Source: IANA Time Zone Database (RFC 6557).
func ParseZone(name string) (*time.Location, error) {
	if len(name) > MaxZone {
		return nil, fmt.Errorf("not a time zone; allowed: at most %d characters", MaxZone)
	}
	if zoneName.MatchString(name) && name != "Local" {
		if zone, err := time.LoadLocation(name); err == nil {
			return zone, nil
		}
	}
	return nil, fmt.Errorf("not a time zone %q; allowed: one of the tz database, such as Europe/London", name)
}
