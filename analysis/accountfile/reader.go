package accountfile

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"iter"
	"slices"

	"strokeledger/analysis/golf"
)

const version = 1

// Reader reads one account file.
type Reader struct {
	decoder
	settings *Settings
	version  bool // the version was read, and is ours
	listed   bool // the rounds were read
	names    golf.Names
	place    string // of the round at hand, for a fault
}

// NewReader returns a reader of r.
func NewReader(r io.Reader) *Reader {
	d := json.NewDecoder(&guard{in: r})
	d.UseNumber()
	return &Reader{decoder: decoder{d}}
}

// Settings returns the settings of the file, once its rounds were ranged over
// without an error.
func (r *Reader) Settings() Settings { return *r.settings }

// errStop says that the caller wants no more rounds.
var errStop = errors.New("stop")

// Rounds yields the rounds of the file in its order, each checked by the rules of
// every round, and ends with the first error: a *Fault, or that of the file
// underneath. It can be ranged over once.
func (r *Reader) Rounds() iter.Seq2[Round, error] {
	return func(yield func(Round, error) bool) {
		err := r.file(func(round Round) error {
			if !yield(round, nil) {
				return errStop
			}
			return nil
		})
		if err != nil && err != errStop {
			yield(Round{}, r.placed(err))
		}
	}
}

// placed says of a fault where it is.
func (r *Reader) placed(err error) error {
	var fault *Fault
	if !errors.As(err, &fault) || r.place == "" {
		return err
	}
	return &Fault{Place: r.place, What: fault.Error()}
}

func (r *Reader) file(send func(Round) error) error {
	err := r.object(func(name string) error {
		switch name {
		case "version":
			var v int
			r.version = true
			return r.whole(&v, name, version, version)
		case "settings":
			r.settings = &Settings{}
			return r.readSettings()
		case "rounds":
			if !r.version || r.settings == nil || r.listed {
				return faulty("version and settings stand once, before the rounds")
			}
			r.listed = true
			return r.list(MaxRounds, "rounds", func(i int) error { return r.round(i, send) })
		default:
			return r.pass()
		}
	})
	if err != nil {
		return err
	}
	if !r.version || r.settings == nil || !r.listed {
		return faulty("version, settings or rounds are missing")
	}
	return r.ended()
}

// ended reports what stands behind the object of the file.
func (r *Reader) ended() error {
	switch _, err := r.Token(); {
	case err == io.EOF:
		return nil
	case errors.As(err, new(*Fault)):
		return err
	}
	return faulty("something stands behind the end of the account")
}

func (r *Reader) readSettings() error {
	c := r.settings
	err := r.object(func(name string) error {
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
		}
		return r.pass()
	})
	switch {
	case err != nil:
		return inside("settings", err)
	case c.Name == "" || c.Target == 0 || c.BoundaryYd == 0:
		return faulty("settings: name, target and boundary_yd belong to them")
	case !isOneOf(golf.FarUnits, c.Far) || !isOneOf(golf.GreenUnits, c.Green):
		return faulty("settings: units %q and %q; allowed: yd or m, ft or m", c.Far, c.Green)
	}
	return nil
}

// isOneOf reports whether a text is the name of one of some units.
func isOneOf(units []golf.Unit, text string) bool {
	return slices.ContainsFunc(units, func(u golf.Unit) bool { return u.String() == text })
}

func inside(place string, err error) error {
	var fault *Fault
	if errors.As(err, &fault) {
		return &Fault{Place: place, What: fault.Error()}
	}
	return err
}

func (r *Reader) round(i int, send func(Round) error) error {
	r.place = fmt.Sprintf("round %d", i+1)
	round := Round{FirstHole: 1}
	err := r.object(func(name string) error {
		switch name {
		case "name":
			err := r.text(&round.Name, name, golf.MaxText)
			r.place = fmt.Sprintf("round %d %q", i+1, shortened(round.Name))
			return err
		case "day":
			return named(r.decoder, &round.Day, name, golf.ParseDate)
		case "holes":
			round.Holes = nil
			return r.list(golf.MaxHole, "holes", func(i int) error {
				h, err := r.hole(i)
				round.Holes = append(round.Holes, h)
				return err
			})
		}
		return r.roundField(name, &round)
	})
	if err != nil {
		return err
	}
	if err := round.check(); err != nil {
		return err
	}
	round.Name = r.names.Distinct(round.Name)
	r.place = ""
	return send(round)
}

func (r *Reader) roundField(name string, round *Round) error {
	switch name {
	case "course":
		return r.text(&round.Course, name, golf.MaxText)
	case "tee":
		return r.text(&round.Tee, name, golf.MaxText)
	case "note":
		return r.text(&round.Note, name, golf.MaxText)
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

// check reports what a round lacks, and a hole number that comes twice.
func (round Round) check() error {
	switch {
	case round.Name == "":
		return faulty("name: a round has one")
	case round.Day.IsZero():
		return faulty("day: a round has one, as YYYY-MM-DD")
	case round.Target == 0 || round.BoundaryYd == 0 || round.Par18 == 0:
		return faulty("target, boundary_yd and par18 belong to a round")
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
