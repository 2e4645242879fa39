package accountfile

import (
	"fmt"

	"strokeledger/analysis/golf"
)

// round reads the round at place i of the list, counted from 0, checks it, makes
// its name distinct from those before and sends it. A file that does not say
// where a round began means hole 1.
func (r *Reader) round(i int, send func(Round) error) error {
	r.place = fmt.Sprintf("round %d", i+1)
	round := Round{FirstHole: 1}
	err := r.object(func(name string) error {
		err := r.roundField(name, &round)
		if name == "name" && err == nil {
			r.place = fmt.Sprintf("round %d %q", i+1, shortened(round.Name))
		}
		return err
	})
	if err == nil {
		err = round.check()
	}
	if err != nil {
		return err
	}
	round.Name = r.names.Distinct(round.Name)
	r.place = ""
	return send(round)
}

// roundField reads one value of a round.
func (r *Reader) roundField(name string, round *Round) error {
	switch name {
	case "name":
		return r.text(&round.Name, name, golf.MaxText)
	case "day":
		return named(r.decoder, &round.Day, name, golf.ParseDate)
	case "course":
		return r.text(&round.Course, name, golf.MaxText)
	case "tee":
		return r.text(&round.Tee, name, golf.MaxText)
	case "note":
		return r.text(&round.Conditions, name, golf.MaxText)
	case "entered_by":
		return r.text(&round.EnteredBy, name, golf.MaxText)
	case "holes":
		return r.holes(name, round)
	}
	return r.roundNumber(name, round)
}

// roundNumber reads one number of a round.
func (r *Reader) roundNumber(name string, round *Round) error {
	switch name {
	case "target":
		return r.number(&round.Target, name, golf.MinTarget, golf.MaxTarget)
	case "boundary_yd":
		return r.number(&round.BoundaryYd, name, golf.MinBoundary.Yards(), golf.MaxBoundary.Yards())
	case "par18":
		return r.whole(&round.Par18, name, golf.MinPar18, golf.MaxPar18)
	case "card_out":
		return r.whole(&round.CardOut, name, 0, golf.MaxNine)
	case "card_in":
		return r.whole(&round.CardIn, name, 0, golf.MaxNine)
	case "first_hole":
		return r.whole(&round.FirstHole, name, 1, golf.MaxHole)
	}
	return r.pass()
}

// holes reads the holes of a round. Where the name comes twice the last counts,
// as with every name.
func (r *Reader) holes(name string, round *Round) error {
	round.Holes = nil
	return r.list(golf.MaxHole, name, func(i int) error {
		h, err := r.hole(i)
		round.Holes = append(round.Holes, h)
		return err
	})
}

// check reports what a round lacks, and a hole number that comes twice.
func (round Round) check() error {
	switch {
	case round.Name == "":
		return faulty("name: a round needs one")
	case round.Day.IsZero():
		return faulty("day: a round needs one, as YYYY-MM-DD")
	case round.Target == 0 || round.BoundaryYd == 0 || round.Par18 == 0:
		return faulty("a round needs target, boundary_yd and par18")
	}
	var seen [golf.MaxHole + 1]bool
	for _, h := range round.Holes {
		if seen[h.Number] {
			return faulty("hole %d comes twice", h.Number)
		}
		seen[h.Number] = true
	}
	return nil
}
