package accountfile

import (
	"cmp"
	"fmt"
	"slices"

	"strokeledger/analysis/golf"
)

// Ball is a ball of the run-out book, with the day on which it was measured.
type Ball struct {
	Day golf.Date
	golf.Trial
}

// Balls returns the balls of the run-out book in the file, in its order. Call it only
// after Rounds was ranged over to its end without an error.
func (r *Reader) Balls() []Ball { return r.balls }

// readBalls reads the run-out book. A book that comes again replaces the one before.
func (r *Reader) readBalls(name string) error {
	r.balls = nil
	return r.list(golf.MaxTrials, name, func(i int) error {
		var b Ball
		err := r.object(func(name string) error { return r.ballField(name, &b) })
		if err == nil {
			err = b.check()
		}
		r.balls = append(r.balls, b)
		return inside(fmt.Sprintf("ball %d of the run-out book", i+1), err)
	})
}

// ballField reads one value of a ball.
func (r *Reader) ballField(name string, b *Ball) error {
	switch name {
	case "day":
		return named(r.decoder, &b.Day, name, golf.ParseDate)
	case "club":
		return r.text(&b.Club, name, golf.MaxClub)
	case "lie":
		return named(r.decoder, &b.Lie, name, golf.ParseLie)
	case "green":
		return named(r.decoder, &b.Speed, name, golf.ParseGreenSpeed)
	case "carry":
		return r.number(&b.Carry, name, 0, golf.MaxChip.Yards())
	case "total":
		return r.number(&b.Total, name, 0, golf.MaxChip.Yards())
	case "unit":
		return named(r.decoder, &b.Unit, name, golf.ParseTrialUnit)
	}
	return r.pass()
}

// check reports what is missing in a ball or not allowed.
func (b Ball) check() error {
	if b.Day.IsZero() || b.Club == "" || b.Speed.String() == "" || b.Unit.String() == "" {
		return faulty("day, club, green and unit are needed")
	}
	if !slices.Contains(golf.TrialLies, b.Lie) {
		return faulty("lie: %s; allowed: fairway, rough", cmp.Or(b.Lie.String(), "none"))
	}
	if wrong := b.Allowed(); wrong != "" {
		return faulty("%s", wrong)
	}
	return nil
}
