package form

import (
	_ "embed"
	"strings"

	"strokeledger/analysis/golf"
)

// zones are the zones of every country, by name.
// Source: IANA Time Zone Database, zone.tab of 2025b, and UTC.
//
//go:embed zones.txt
var zones string

// Zones lists the names of time zones to suggest. More are allowed: older names of
// the same zones.
func Zones() []string { return strings.Fields(zones) }

// ParseZone reads the name of a time zone. No text means that of the server.
func ParseZone(text string) Text {
	text = strings.TrimSpace(text)
	if text == "" {
		return TextOf("")
	}
	if _, err := golf.ParseZone(text); err != nil {
		return refused[string](text, "Not a time zone that is known here. Allowed: a name such as Europe/London or America/New_York.")
	}
	return TextOf(text)
}
