package analysis

import (
	"errors"
	"fmt"
	"sync"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/practice"
	"strokeledger/analysis/startline"
)

// DrillInput is what a drill is told of a player.
type DrillInput struct {
	PlanInput
	Feet     float64        // from where a drill that can be moved is played; 0 for where it was last or is usually played
	Sessions []DrillSession // of this drill, the earliest first
	Today    golf.Date
}

// DrillFor is a drill with its mark for a player, and what came of it.
type DrillFor struct {
	practice.Drill
	Feet     float64 // from where it is played; 0 for a drill that cannot be moved
	Target   float64
	Today    float64       // level at which the drill's part of the game is played; the target where that is better or not known
	Known    bool          // Today comes from rounds
	Own      bool          // somebody made the drill up; its mark is the author's
	Of       float64       // share of tries that count for the golfer of the target; 0 for a drill without a mark
	OfToday  float64       // the same of today's golfer
	Mark     practice.Mark // zero for a drill without one
	Stations []StationFor
	Results  []SessionResult // the earliest first
	Lately   Lately          // the sessions of the last weeks together
}

// StationFor is a place of a drill with the share of tries that count there, for the
// golfer of the target and for today's.
type StationFor struct {
	practice.Station
	Of, OfToday float64
}

// ErrNoDrill says that there is no drill of a name.
var ErrNoDrill = errors.New("no such drill")

// Drill answers "how do I do this drill, what is good enough, and what came of it?".
// A key that no drill has is ErrNoDrill, a target outside golf.MinTarget to
// golf.MaxTarget an error.
func (e *Engine) Drill(key string, in DrillInput) (DrillFor, error) {
	d, err := practice.Find(key)
	if err != nil {
		return DrillFor{}, ErrNoDrill
	}
	game, chosen, err := gameOf(in.PlanInput)
	if err != nil {
		return DrillFor{}, err
	}
	level := in.Target
	if len(chosen) >= practice.MinRounds {
		level = game.Played[d.Part]
	}
	f, err := e.Told(key, level, in)
	f.Known = len(chosen) >= practice.MinRounds
	return f, err
}

// Told answers "what came of this drill?" of sessions alone, for a golfer who plays the
// drill's part of the game to a level; the history of the input is not looked at.
func (e *Engine) Told(key string, level float64, in DrillInput) (DrillFor, error) {
	d, err := practice.Find(key)
	if err != nil {
		return DrillFor{}, ErrNoDrill
	}
	f := DrillFor{Drill: d, Target: in.Target, Today: max(level, in.Target), Known: level > in.Target}
	if err := f.move(in); err != nil {
		return f, err
	}
	if err := e.expected(&f); err != nil {
		return f, err
	}
	return f, e.results(&f, in)
}

// move puts a drill that can be moved to where it is played.
func (f *DrillFor) move(in DrillInput) (err error) {
	if f.MaxFeet == 0 {
		return nil
	}
	f.Feet = f.Drill.Stations[0].Distance.Feet()
	if n := len(in.Sessions); n > 0 && in.Sessions[n-1].Feet > 0 {
		f.Feet = in.Sessions[n-1].Feet
	}
	if in.Feet >= f.MinFeet && in.Feet <= f.MaxFeet {
		f.Feet = in.Feet
	}
	f.Drill, err = f.Drill.At(f.Feet)
	return err
}

// expected works out what the target's golfer and today's reach.
func (e *Engine) expected(f *DrillFor) error {
	if f.NoMark {
		return nil
	}
	target, err := f.Chances(&e.golfer, f.Target)
	if err != nil {
		return err
	}
	today, err := f.Chances(&e.golfer, f.Today)
	if err != nil {
		return err
	}
	f.Of, f.OfToday, f.Mark = practice.Chance(target), practice.Chance(today), f.Drill.Mark(target, today)
	for i, s := range f.Drill.Stations {
		f.Stations = append(f.Stations, StationFor{s, target[i], today[i]})
	}
	return nil
}

// levelsOfDrills keeps the chances of drills at every level, which are slow to work
// out and never change.
type levelsOfDrills struct {
	sync.Mutex
	known map[string]practice.Levels // by drill and distance
}

// levelsOf are the chances of a drill at every level, from feet where it can be
// moved.
func (e *Engine) levelsOf(d practice.Drill, feet float64) (l practice.Levels, err error) {
	if d.MaxFeet > 0 {
		if d, err = d.At(feet); err != nil {
			return nil, err
		}
	}
	e.levels.Lock()
	defer e.levels.Unlock()
	name := fmt.Sprintf("%s %g", d.Key, feet)
	if l, ok := e.levels.known[name]; ok {
		return l, nil
	}
	if l, err = practice.LevelsOf(d, &e.golfer); err != nil {
		return nil, err
	}
	if e.levels.known == nil || len(e.levels.known) > mostLevels {
		e.levels.known = map[string]practice.Levels{}
	}
	e.levels.known[name] = l
	return l, nil
}

// mostLevels is how many drills and distances are kept; distances may be any number.
const mostLevels = 200

// lineOf reads how straight putts started, nil for a drill that does not say.
func (e *Engine) lineOf(f *DrillFor, sessions []DrillSession) (*startline.Reading, error) {
	t := startline.Tries{Feet: f.Feet, Sides: true}
	for _, s := range sessions {
		if s.Feet != f.Feet {
			continue
		}
		t.Of, t.Made = t.Of+len(s.Tries), t.Made+s.Tries.Count(golf.TryMade)
		t.Left, t.Right = t.Left+s.Tries.Count(golf.TryLeft), t.Right+s.Tries.Count(golf.TryRight)
		t.Short, t.Long = t.Short+s.Tries.Count(golf.TryShort), t.Long+s.Tries.Count(golf.TryLong)
	}
	if f.Written != practice.Sides || t.Check() != nil {
		return nil, nil
	}
	striker, err := e.golfer.Striker(f.Today)
	if err != nil {
		return nil, err
	}
	r := startline.NewModel(striker.Putter(), f.Feet).Read(t)
	return &r, nil
}
