package accountfile

import (
	"cmp"
	"fmt"

	"strokeledger/analysis/golf"
)

// hole reads a hole, and checks it by the rules of every hole.
func (r *Reader) hole(i int) (h Hole, err error) {
	place := fmt.Sprintf("hole at place %d", i+1)
	err = r.object(func(name string) error {
		switch name {
		case "number":
			err := r.whole(&h.Number, name, 1, golf.MaxHole)
			if err == nil {
				place = fmt.Sprintf("hole %d", h.Number)
			}
			return err
		case "par":
			return r.whole(&h.Par, name, golf.MinPar, golf.MaxPar)
		case "length_in":
			return r.number((*float64)(&h.Length), name, 0, float64(golf.MaxDistance))
		case "stroke_index":
			return r.whole(&h.Index, name, 0, golf.MaxIndex)
		case "line":
			return r.text(&h.Line, name, golf.MaxLine)
		case "far_unit":
			return named(r.decoder, &h.Far, name, golf.ParseUnit)
		case "green_unit":
			return named(r.decoder, &h.Green, name, golf.ParseUnit)
		case "picked_up":
			return r.yes(&h.PickedUp, name)
		case "score_only":
			return r.whole(&h.ScoreOnly, name, 0, golf.MaxScoreOnly)
		case "shots":
			h.Shots = nil
			return r.list(MaxShots, "shots", func(i int) error {
				s, err := r.shot()
				h.Shots = append(h.Shots, s)
				return inside(fmt.Sprintf("shot %d", i+1), err)
			})
		}
		return r.pass()
	})
	if err == nil {
		err = h.check(*r.settings)
	}
	return h, inside(place, err)
}

// check reports what is not allowed in a hole. A line that says no units is in
// those of the settings.
func (h *Hole) check(c Settings) error {
	far, green := c.Units()
	h.Far, h.Green = cmp.Or(h.Far, far), cmp.Or(h.Green, green)
	switch {
	case h.Number == 0 || h.Par == 0:
		return faulty("number and par belong to a hole")
	case h.Far == golf.Feet || h.Green == golf.Yards:
		return faulty("units %q and %q; allowed: yd or m, ft or m", h.Far, h.Green)
	case h.Line == "" && len(h.Shots) > 0:
		return faulty("it has shots, and no line")
	case h.Line == "":
		h.Far, h.Green = 0, 0
		return nil
	}
	if problems := h.Check(); problems != nil {
		return faulty("%s", problems[0])
	}
	return nil
}

func (r *Reader) shot() (s golf.Shot, err error) {
	err = r.object(func(name string) error {
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
		case "short_sided":
			return r.yes(&s.ShortSided, name)
		case "green_in":
			s.GreenKnown = true
			return r.number((*float64)(&s.GreenToWork), name, 0, float64(golf.MaxDistance))
		case "club":
			return r.text(&s.Club, name, golf.MaxText)
		case "miss":
			return named(r.decoder, &s.Miss, name, golf.ParseMiss)
		case "word":
			return r.text(&s.Word, name, golf.MaxWord)
		}
		return r.pass()
	})
	return s, err
}
