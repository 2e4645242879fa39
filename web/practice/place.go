package practice

import (
	"slices"

	"strokeledger/analysis/practice"
	"strokeledger/web/form"
	"strokeledger/web/words"
)

// placeOf names a place of a drill: by its distance, and by its lie too where the
// drill is played from several.
func placeOf(d practice.Drill, s practice.Station, units form.Units) string {
	if s.Distance == 0 {
		return "Full drive"
	}
	from := words.Distance(s.Lie, s.Distance, units)
	if slices.ContainsFunc(d.Stations, func(other practice.Station) bool { return other.Lie != s.Lie }) {
		return words.Capital(s.Lie.String()) + ", " + from
	}
	return words.Capital(from)
}
