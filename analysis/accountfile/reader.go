package accountfile

import (
	"encoding/json"
	"errors"
	"io"
	"iter"

	"strokeledger/analysis/golf"
)

// version is the only one that is written and read. A change that an older
// reader would take for something else needs a new one.
const version = 1

// Reader reads one account file, from front to back, once.
type Reader struct {
	decoder
	settings *Settings  // nil until they were read
	version  bool       // the version was read, and is ours
	listed   bool       // the rounds were read
	balls    []Ball     // of the run-out book so far
	names    golf.Names // of the rounds so far, to keep them distinct
	place    string     // of the round at hand, for a fault; empty between rounds
	own      Own        // as far as it was read
}

// NewReader returns a reader of r.
func NewReader(r io.Reader) *Reader {
	g := &guard{in: r}
	d := json.NewDecoder(g)
	d.UseNumber()
	return &Reader{decoder: decoder{d, g}}
}

// Settings returns the settings of the file. Call it only after Rounds was ranged
// over to its end without an error.
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

// placed adds the round to a fault inside one.
func (r *Reader) placed(err error) error {
	var fault *Fault
	if !errors.As(err, &fault) || r.place == "" {
		return err
	}
	return &Fault{Place: r.place, What: fault.Error()}
}

// file reads the whole file and sends each round as soon as it is read. The order
// matters: units that a line leaves out are those of the settings.
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
			return r.rounds(name, send)
		case "run_out":
			return r.readBalls(name)
		}
		return r.ownPart(name)
	})
	switch {
	case err != nil:
		return err
	case !r.version || r.settings == nil || !r.listed:
		return faulty("the version, the settings or the rounds are missing")
	}
	return r.ended()
}

// rounds reads the list of rounds, which comes once and after the rest.
func (r *Reader) rounds(name string, send func(Round) error) error {
	if !r.version || r.settings == nil || r.listed {
		return faulty("the version and the settings come once each, before the rounds")
	}
	r.listed = true
	return r.list(MaxRounds, name, func(i int) error { return r.round(i, send) })
}

// ended reports anything after the object of the file but white space.
func (r *Reader) ended() error {
	switch _, err := r.Token(); {
	case err == io.EOF:
		return nil
	case errors.As(err, new(*Fault)):
		return err
	}
	return faulty("there is something after the end of the account")
}
