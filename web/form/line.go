package form

import (
	"slices"
	"strings"

	"strokeledger/analysis/golf"
)

// Units are the units in which a player’s distances are read when none is typed.
type Units struct {
	Far   golf.Unit // off the green: yards or metres
	Green golf.Unit // on it: feet or metres
}

// StandardUnits are yards, and feet on the green.
var StandardUnits = Units{golf.Yards, golf.Feet}

func (u Units) of(lie golf.Lie) golf.Unit {
	if lie == golf.Green {
		return u.Green
	}
	return u.Far
}

// Line is a hole typed in one line of text: as typed, as understood, what was
// wrong and what is worth a question. The grammar is in the package's comment.
type Line struct {
	Text      string     // as typed
	Hole      golf.Hole  // as far as it was understood
	Items     []Item     // in the order typed
	Problems  []Problem  // what is not allowed; none in a sound line
	Questions []Question // of a sound line only
	Checked   int        // the score that was written to check by, 0 when none

	// Ended says that the line says how the hole ended: by h, by - or by a
	// score. A sound line that has not ended means that its last shot was holed.
	Ended bool

	// Unfinished says that nothing is wrong but that the line breaks off: what
	// is missing may yet be typed.
	Unfinished bool

	// Dropped says that the last shot's ball was dropped, and that the lie and
	// distance of the drop are still to come.
	Dropped bool

	again  []int         // shots that are the one before them, played again after x
	units  []unitSpan    // where the units of its distances stand
	length golf.Distance // on the card
}

// Item is one shot, mark or score of the line, and the shots it stands for.
type Item struct {
	Text  string // as typed, with the spaces and commas inside it
	From  int    // place of its first letter in the line, in bytes
	First int    // its first shot, from 0
	Shots int    // how many it stands for; 0 for one that stands for none
}

// Problem is one thing in a line that is not allowed.
type Problem struct {
	Item    int    // the item at fault, from 0; -1 for the line as a whole
	What    string // what is wrong
	Allowed string // what can be typed instead
}

// Question asks whether something unlikely is right. It does not keep a line
// from being saved.
type Question struct {
	Item int    // the item it is about, from 0; -1 for the line as a whole
	Text string // in plain English, for a golfer
	End  bool   // it asks whether the hole ended here, so it can wait until the hole is saved
}

// Empty reports whether nothing was typed.
func (l *Line) Empty() bool { return strings.TrimSpace(l.Text) == "" }

// Sound reports whether the line is a whole hole that the rules allow. Questions
// do not count.
func (l *Line) Sound() bool { return !l.Empty() && len(l.Problems) == 0 }

// Again reports whether a shot, from 0, is the one before it, played again from
// the same spot after x.
func (l *Line) Again(shot int) bool { return slices.Contains(l.again, shot) }

// ToPlay returns the shot that is still to be played: the last that was typed,
// and the tee shot while there is none. There is none when the hole has ended,
// and none is known while the lie or distance of the next shot is missing.
func (l *Line) ToPlay() (shot golf.Shot, open bool) {
	switch {
	case l.Ended:
		return golf.Shot{}, false
	case l.Empty():
		return golf.Shot{Lie: golf.Tee, Distance: l.length}, l.length > 0
	case l.Dropped || len(l.Hole.Shots) == 0 || len(l.Problems) > 0 && !(l.Unfinished && l.onTee()):
		return golf.Shot{}, false
	default:
		return l.Hole.Shots[len(l.Hole.Shots)-1], true
	}
}

// onTee reports whether the line has no shot but the tee shot.
func (l *Line) onTee() bool { return len(l.Hole.Shots) == 1 && l.Problems[0].Item < 0 }

// itemOf is the item that stands for a shot, from 0; -1 when none does.
func (l *Line) itemOf(shot int) int {
	return slices.IndexFunc(l.Items, func(item Item) bool { return shot >= item.First && shot < item.First+item.Shots })
}
