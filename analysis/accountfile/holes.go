package accountfile

import (
	"cmp"
	"fmt"

	"strokeledger/analysis/golf"
)

// hole reads the hole at place i of its list, counted from 0, and checks it. A
// fault names the hole by its number, or by its place as long as that is unknown.
func (r *Reader) hole(i int) (h Hole, err error) {
	err = r.object(func(name string) error { return r.holeField(name, &h) })
	if err == nil {
		err = h.check(*r.settings)
	}
	if h.Number > 0 {
		return h, inside(fmt.Sprintf("hole %d", h.Number), err)
	}
	return h, inside(fmt.Sprintf("hole at place %d", i+1), err)
}

// holeField reads one value of a hole.
func (r *Reader) holeField(name string, h *Hole) error {
	switch name {
	case "number":
		return r.whole(&h.Number, name, 1, golf.MaxHole)
	case "par":
		return r.whole(&h.Par, name, golf.MinPar, golf.MaxPar)
	case "length_in":
		return r.number((*float64)(&h.Length), name, 0, float64(golf.MaxDistance))
	case "stroke_index":
		return r.whole(&h.Index, name, 0, golf.MaxIndex)
	case "picked_up":
		return r.yes(&h.PickedUp, name)
	case "score_only":
		return r.whole(&h.ScoreOnly, name, 0, golf.MaxScoreOnly)
	}
	return r.lineField(name, h)
}

// lineField reads the line of a hole, its units, or the shots it was read as.
func (r *Reader) lineField(name string, h *Hole) error {
	switch name {
	case "line":
		return r.text(&h.Line, name, golf.MaxLine)
	case "far_unit":
		return named(r.decoder, &h.Far, name, golf.ParseUnit)
	case "green_unit":
		return named(r.decoder, &h.Green, name, golf.ParseUnit)
	case "shots":
		h.Shots = nil
		return r.list(MaxShots, name, func(i int) error {
			s, err := r.shot()
			h.Shots = append(h.Shots, s)
			return inside(fmt.Sprintf("shot %d", i+1), err)
		})
	}
	return r.pass()
}

// check reports what is not allowed in a hole, by the rules of golf.Hole and
// those of a line. A line without units is in those of the settings; a hole
// without a line was not played and has none.
func (h *Hole) check(c Settings) error {
	far, green := c.Units()
	h.Far, h.Green = cmp.Or(h.Far, far), cmp.Or(h.Green, green)
	switch {
	case h.Number == 0 || h.Par == 0:
		return faulty("a hole needs number and par")
	case h.Far == golf.Feet || h.Green == golf.Yards:
		return faulty("units %q and %q; allowed: yd or m, ft or m", h.Far, h.Green)
	case h.Line == "" && len(h.Shots) > 0:
		return faulty("it has shots but no line")
	case h.Line == "":
		h.Far, h.Green = 0, 0
		return nil
	}
	if problems := h.Check(); problems != nil {
		return faulty("%s", problems[0])
	}
	return nil
}

// shot reads a shot; the rules of shots are checked with those of the hole.
func (r *Reader) shot() (s golf.Shot, err error) {
	err = r.object(func(name string) error { return r.shotField(name, &s) })
	return s, err
}

// shotField reads one value of a shot. Lengths are in inches, the unit of
// golf.Distance, so that nothing is lost in a conversion.
func (r *Reader) shotField(name string, s *golf.Shot) error {
	switch name {
	case "lie":
		return named(r.decoder, &s.Lie, name, golf.ParseLie)
	case "distance_in":
		return r.number((*float64)(&s.Distance), name, 0, float64(golf.MaxDistance))
	case "unit":
		return named(r.decoder, &s.Unit, name, golf.ParseUnit)
	case "about":
		return r.yes(&s.About, name)
	case "penalty":
		return r.whole(&s.Penalty, name, 0, golf.MaxPenalty)
	case "club":
		return r.text(&s.Club, name, golf.MaxText)
	case "miss":
		return named(r.decoder, &s.Miss, name, golf.ParseMiss)
	case "word":
		return r.text(&s.Word, name, golf.MaxWord)
	}
	return r.shortSide(name, s)
}

// shortSide reads whether a shot was short-sided, or over how much green it had
// to play; a green of 0 is known, one that is not there is not.
func (r *Reader) shortSide(name string, s *golf.Shot) error {
	switch name {
	case "short_sided":
		return r.yes(&s.ShortSided, name)
	case "green_in":
		s.GreenKnown = true
		return r.number((*float64)(&s.GreenToWork), name, 0, float64(golf.MaxDistance))
	}
	return r.pass()
}
