package accountfile

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"time"

	"strokeledger/analysis/golf"
)

// Own returns what is the account's own. Call it only after Rounds was ranged over to
// its end without an error. The pictures of drawings, the balls of sessions and the
// figures of plans have their size checked, and nothing else of them.
func (r *Reader) Own() Own { return r.own }

// ownPart reads a part of what is the account's own; any other is passed over.
func (r *Reader) ownPart(name string) error {
	switch name {
	case "bag":
		return listed(r, &r.own.Bag, golf.MaxTeeClubs, "clubs", "bag: club", r.bagClub)
	case "range_sessions":
		return listed(r, &r.own.Ranges, maxRanges, "sessions", "range session", r.rangeSession)
	case "drawn_courses":
		return listed(r, &r.own.Drawn, maxDrawn, "courses", "drawn course", r.drawn)
	case "practice_plans":
		return listed(r, &r.own.Plans, maxPlans, "plans", "practice plan", r.plan)
	}
	return r.pass()
}

// listed reads a list of at most so many; of says what they are, and place what one of
// them is. Where a name comes twice, the last list counts.
func listed[T any](r *Reader, to *[]T, most int, of, place string, read func(*T) error) error {
	*to = nil
	return r.list(most, of, func(i int) error {
		var one T
		err := read(&one)
		*to = append(*to, one)
		return inside(fmt.Sprintf("%s %d", place, i+1), err)
	})
}

// bagClub reads a club for the tee.
func (r *Reader) bagClub(c *BagClub) error {
	err := r.object(func(name string) error {
		switch name {
		case "club":
			return r.text(&c.Club, name, golf.MaxClub)
		case "length_yd":
			return r.number(&c.Length, name, 0, golf.MaxClubYards)
		case "shape_yd":
			return r.number(&c.Shape, name, -golf.MaxBendYards, golf.MaxBendYards)
		}
		return r.pass()
	})
	switch {
	case err != nil:
		return err
	case strings.TrimSpace(c.Club) == "":
		return faulty("club: a club needs a name")
	case c.Length != 0 && c.Length < golf.MinClubYards:
		return faulty("length_yd: %s; allowed: 0, or %d to %d", plain(c.Length), golf.MinClubYards, golf.MaxClubYards)
	case c.Shape != 0 && math.Abs(c.Shape) < golf.MinBendYards:
		return faulty("shape_yd: %s; allowed: 0, or %d to %d to either side", plain(c.Shape), golf.MinBendYards, golf.MaxBendYards)
	}
	for _, other := range r.own.Bag {
		if strings.EqualFold(other.Club, c.Club) {
			return faulty("club: %q comes twice", shortened(c.Club))
		}
	}
	return nil
}

// rangeSession reads a session on the range.
func (r *Reader) rangeSession(s *Range) error {
	size := 0
	err := r.object(func(name string) error {
		switch name {
		case "club":
			return r.text(&s.Club, name, golf.MaxClub)
		case "day":
			return r.day(&s.Day, name)
		case "balls":
			s.Balls, size = nil, 0
			return r.list(maxBalls, name, func(i int) error {
				var ball string
				err := r.text(&ball, fmt.Sprintf("ball %d", i+1), golf.MaxText)
				s.Balls, size = append(s.Balls, ball), size+len(ball)+1
				return err
			})
		}
		return r.pass()
	})
	switch {
	case err != nil:
		return err
	case strings.TrimSpace(s.Club) == "" || s.Day == "":
		return faulty("a session needs club and day")
	case size-1 > golf.MaxRangeText: // balls have a line end between them
		return faulty("balls: %d bytes; allowed: at most %d", size-1, golf.MaxRangeText)
	}
	return nil
}

// drawn reads what the account drew of a course.
func (r *Reader) drawn(d *Drawn) error {
	card := map[int]bool{}
	err := r.object(func(name string) error {
		switch name {
		case "course":
			return r.text(&d.Course, name, golf.MaxName)
		case "tee":
			return r.text(&d.Tee, name, golf.MaxName)
		case "holes":
			clear(card)
			return listed(r, &d.Holes, golf.MaxHole, name, "hole at place", func(h *CardHole) error { return r.cardHole(h, card) })
		case "drawings":
			return listed(r, &d.Drawings, MaxDrawings, name, "drawing", r.drawing)
		}
		return r.pass()
	})
	if err == nil && strings.TrimSpace(d.Course) == "" {
		err = faulty("course: a course needs a name")
	}
	for i := 0; err == nil && i < len(d.Drawings); i++ {
		if !card[d.Drawings[i].Hole] {
			err = faulty("drawing %d: hole: %d is not on its card", i+1, d.Drawings[i].Hole)
		}
	}
	return err
}

// cardHole reads a hole of a card; seen are the numbers so far.
func (r *Reader) cardHole(h *CardHole, seen map[int]bool) error {
	err := r.object(func(name string) error {
		switch name {
		case "number":
			return r.whole(&h.Number, name, 1, golf.MaxHole)
		case "par":
			return r.whole(&h.Par, name, golf.MinPar, golf.MaxPar)
		case "length_in":
			return r.number(&h.LengthIn, name, float64(golf.Yard), float64(golf.MaxDistance))
		case "stroke_index":
			return r.whole(&h.Index, name, 0, golf.MaxIndex)
		}
		return r.pass()
	})
	switch {
	case err != nil:
		return err
	case h.Number == 0 || h.Par == 0 || h.LengthIn == 0:
		return faulty("a hole needs number, par and length_in")
	case seen[h.Number]:
		return faulty("hole %d comes twice", h.Number)
	}
	seen[h.Number] = true
	return nil
}

// drawing reads a version of what was drawn of a hole.
func (r *Reader) drawing(d *Drawing) error {
	return r.object(func(name string) error {
		switch name {
		case "hole":
			return r.whole(&d.Hole, name, 1, golf.MaxHole)
		case "drawn":
			return named(r.decoder, &d.At, name, parseTime)
		case "picture":
			return r.raw(&d.Picture, name, maxPicture)
		}
		return r.pass()
	})
}

// plan reads a plan of practice as it was taken.
func (r *Reader) plan(p *Plan) error {
	err := r.object(func(name string) error {
		switch name {
		case "day":
			return r.day(&p.Day, name)
		case "first_day":
			return r.day(&p.First, name)
		case "last_day":
			return r.day(&p.Last, name)
		case "rounds":
			return r.whole(&p.Rounds, name, 1, MaxRounds)
		case "target":
			return r.number(&p.Target, name, golf.MinTarget, golf.MaxTarget)
		case "minutes":
			return r.whole(&p.Minutes, name, golf.MinWeek, golf.MaxMinutes)
		case "engine":
			return r.text(&p.Engine, name, golf.MaxText)
		case "figures":
			return r.raw(&p.Figures, name, maxFigures)
		}
		return r.pass()
	})
	switch {
	case err != nil:
		return err
	case p.Day == "" || p.First == "" || p.Last == "" || p.Rounds == 0 || p.Target == 0 || p.Minutes == 0 || len(p.Figures) == 0:
		return faulty("a plan needs day, first_day, last_day, rounds, target, minutes and figures")
	case p.Last < p.First:
		return faulty("last_day: %s; allowed: from %s on", p.Last, p.First)
	}
	return nil
}

// day reads a day and keeps its text.
func (d decoder) day(to *string, field string) error {
	var day golf.Date
	err := named(d, &day, field, golf.ParseDate)
	if err == nil {
		*to = day.String()
	}
	return err
}

// parseTime reads a moment as a file has it.
func parseTime(text string) (time.Time, error) {
	at, err := time.Parse(time.RFC3339Nano, text)
	if err != nil || at.Year() < 1 || at.Year() > 9999 {
		return time.Time{}, fmt.Errorf("not a time %q; allowed: such as 2026-05-02T16:30:00Z", shortened(text))
	}
	return at.UTC(), nil
}

// raw reads a value of at most so many bytes as it stands.
func (d decoder) raw(to *json.RawMessage, field string, most int) error {
	var value json.RawMessage
	d.guard.last = d.guard.read + most + atATime
	err := d.Decode(&value)
	d.guard.last = 0
	if err != nil {
		return inside(field, decoded(err))
	}
	if len(value) > most {
		return faulty("%s: %d bytes; allowed: at most %d", field, len(value), most)
	}
	*to = value
	return nil
}
