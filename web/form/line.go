package form

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"strokeledger/analysis/golf"
)

// Units are the units in which a player writes distances when he writes none.
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
	Text      string
	Hole      golf.Hole
	Items     []Item
	Problems  []Problem
	Questions []Question // of a sound line only
	Checked   int        // the score that was written to check by, 0 when none

	// Ended says that the line tells how the hole ended: by h, by - or by a
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
	Item    int // the item at fault, from 0; -1 for the line as a whole
	What    string
	Allowed string
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

// Sound reports whether the line says a whole legal hole. Questions do not
// count.
func (l *Line) Sound() bool { return !l.Empty() && len(l.Problems) == 0 }

// Again reports whether a shot, from 0, is the one before it, played again from
// the same spot after x.
func (l *Line) Again(shot int) bool {
	for _, k := range l.again {
		if k == shot {
			return true
		}
	}
	return false
}

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

// onTee reports whether nothing is told but the tee shot.
func (l *Line) onTee() bool { return len(l.Hole.Shots) == 1 && l.Problems[0].Item < 0 }

// ParseLine reads a hole from a line. The tee shot is played from the card's
// length unless the line says otherwise.
func ParseLine(text string, card golf.CardHole, units Units) Line {
	p := &lineParser{units: units, line: Line{Text: text, length: card.Length, Hole: golf.Hole{Number: card.Number, Par: card.Par}}}
	p.read()
	return p.line
}

type lineParser struct {
	line   Line
	units  Units
	packed []packed // the items without what is between their letters

	item      int  // the item at hand
	mark      byte // the mark that was read last, 0 after a shot
	drops     int  // how often the last shot's ball was dropped
	holed     bool
	scoreOnly bool
	mendable  bool // more typing can mend the last problem
}

func (p *lineParser) problem(what, allowed string) {
	p.mendable = false
	p.line.Problems = append(p.line.Problems, Problem{p.item, what, allowed})
}

// missing is a problem that more typing can mend when the line ends here.
func (p *lineParser) missing(what, allowed string) {
	p.problem(what, allowed)
	p.mendable = p.item < 0 || p.item == len(p.line.Items)-1
}

// LongestLine is how many bytes a line may have.
const LongestLine = 500

func (p *lineParser) read() {
	l := &p.line
	if l.Empty() {
		return
	}
	if p.item = -1; len(l.Text) > LongestLine || !utf8.ValidString(l.Text) || strings.ContainsFunc(l.Text, unicode.IsControl) {
		p.problem("not a line of text", "one line of at most 500 letters")
		return
	}
	if p.cut(); len(l.Items) == 0 {
		p.problem("nothing but commas", lettersAllowed)
		return
	}
	p.item = 0
	if score, found := strings.CutPrefix(p.packed[0].text, "="); found && len(l.Items) == 1 {
		p.scoreOnly = true
		l.Hole.Shots = []golf.Shot{{Lie: golf.Tee, Distance: l.length}}
		l.Hole.ScoreOnly = p.score(score)
	} else {
		p.shots()
	}
	if len(l.Problems) == 0 {
		p.rules()
	}
	l.Ended = p.scoreOnly || p.holed || l.Hole.PickedUp || l.Checked > 0
	l.Unfinished = len(l.Problems) == 1 && p.mendable
	if len(l.Problems) > 0 {
		l.Questions = nil
		return
	}
	p.plausible()
}

func (p *lineParser) shots() {
	h := &p.line.Hole
	h.Shots = append(h.Shots, golf.Shot{Lie: golf.Tee, Distance: p.line.length})
	for i := range p.line.Items {
		p.item = i
		item := &p.line.Items[i]
		item.First = len(h.Shots)
		p.word(p.packed[i].text)
		item.Shots = len(h.Shots) - item.First
	}
	p.item = -1
	last := h.Shots[len(h.Shots)-1]
	switch {
	case len(p.line.Problems) > 0:
	case p.line.Dropped:
		p.missing("the ball was dropped, but not played on", "the lie and distance of the drop, with - behind it when it was picked up there")
	case len(h.Shots) == 1 && !p.holed && !h.PickedUp:
		p.missing("the hole has no shot after the tee", "the next shot, or h when the tee shot was holed")
	case p.holed && last.Penalty > 0:
		p.problem("a shot that cost a penalty was not holed", "the next shot")
	}
	if n := len(p.line.Problems); n > 0 && p.line.Problems[n-1].Item < 0 && (p.holed || p.line.Checked > 0) {
		p.mendable = false // what is missing should stand before the end
	}
}

// rules checks the hole by the rules of golf's records and the score by its
// check.
func (p *lineParser) rules() {
	h := &p.line.Hole
	for _, found := range h.Check() {
		p.item = p.itemOf(found.Shot - 1)
		p.problem(p.inWords(found))
		if s := h.Shots[max(found.Shot-1, 0)]; found.Field == "distance" && s.Distance == 0 && p.item == len(p.line.Items)-1 {
			p.mendable = true // the beginning of 0.5
		}
	}
	p.item = len(p.line.Items) - 1
	if got := h.Strokes(); p.line.Checked > 0 && !p.scoreOnly && !h.PickedUp && got != p.line.Checked {
		p.problem("the shots come to "+count(got), "a score of "+count(got)+", or the shots that are missing")
		p.mendable = strings.HasPrefix(count(got), count(p.line.Checked)) // the beginning of =12
	}
}

// itemOf is the item that stands for a shot, from 0.
func (p *lineParser) itemOf(shot int) int {
	for i, item := range p.line.Items {
		if shot >= item.First && shot < item.First+item.Shots {
			return i
		}
	}
	return -1
}

func count(n int) string { return strconv.Itoa(n) }
