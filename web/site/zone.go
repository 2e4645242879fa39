package site

import (
	"strokeledger/web/components"
	"strokeledger/web/form"
)

// ZoneField asks for the player's time zone. A script offers the browser's.
type ZoneField struct {
	components.Field
	All []string // names to suggest
}

// zoneList is the id of the suggestions.
const zoneList = "zones"

func newZoneField(in form.Text) ZoneField {
	return ZoneField{All: form.Zones(), Field: components.Filled(components.Field{Name: "zone", Label: "Time zone", List: zoneList,
		Hint: "A name such as Europe/London. Your days begin and end there, and times are shown in it. Left empty, it is the server’s."}, in)}
}

// AddTo adds what is wrong with the field to a summary.
func (z ZoneField) AddTo(all *components.Summary) { all.Add(z.Key(), z.Label, z.Problem) }
