package accountfile

import (
	"slices"

	"strokeledger/analysis/golf"
)

// readSettings reads the settings into r.settings and checks that none is
// missing but the clubs and the time zone, which may be none.
func (r *Reader) readSettings() error {
	c := r.settings
	if err := r.object(func(name string) error { return r.setting(name, c) }); err != nil {
		return inside("settings", err)
	}
	switch {
	case c.Name == "" || c.Target == 0 || c.BoundaryYd == 0:
		return faulty("settings: name, target and boundary_yd are needed")
	case !isZone(c.Zone):
		return faulty("settings: time zone %q; allowed: a name of the tz database, such as Europe/London, or none", c.Zone)
	case !isOneOf(golf.FarUnits, c.Far) || !isOneOf(golf.GreenUnits, c.Green):
		return faulty("settings: units %q and %q; allowed: yd or m, ft or m", c.Far, c.Green)
	}
	return nil
}

// setting reads one of the settings. The units are checked once both are there.
func (r *Reader) setting(name string, c *Settings) error {
	switch name {
	case "name":
		return r.text(&c.Name, name, golf.MaxName)
	case "far_unit":
		return r.text(&c.Far, name, golf.MaxName)
	case "green_unit":
		return r.text(&c.Green, name, golf.MaxName)
	case "target":
		return r.number(&c.Target, name, golf.MinTarget, golf.MaxTarget)
	case "boundary_yd":
		return r.number(&c.BoundaryYd, name, golf.MinBoundary.Yards(), golf.MaxBoundary.Yards())
	case "clubs":
		return r.text(&c.Clubs, name, golf.MaxClubs)
	case "zone":
		return r.text(&c.Zone, name, golf.MaxZone)
	}
	return r.pass()
}

// isOneOf reports whether a text is the name of one of some units.
func isOneOf(units []golf.Unit, text string) bool {
	return slices.ContainsFunc(units, func(u golf.Unit) bool { return u.String() == text })
}

// isZone reports whether a text is the name of a time zone, or empty.
func isZone(text string) bool {
	_, err := golf.ParseZone(text)
	return text == "" || err == nil
}
