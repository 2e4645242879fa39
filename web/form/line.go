package form

import (
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

// Line is a hole typed in one line of text: as typed, as understood, and what
// was wrong. The grammar is in the package's tests and on the page.
type Line struct {
	Text     string
	Hole     golf.Hole
	Items    []Item
	Problems []Problem
	Checked  int // the score that was written to check by, 0 when none
}

// Item is one word of the line and the shots it stands for.
type Item struct {
	Text  string
	From  int // place of its first letter in the line, in bytes
	First int // its first shot, from 0
	Shots int // how many it stands for; 0 for one that stands for none
}

// Problem is one thing in a line that is not allowed.
type Problem struct {
	Item    int // the word at fault, from 0; -1 for the line as a whole
	What    string
	Allowed string
}

// Empty reports whether nothing was typed.
func (l *Line) Empty() bool { return strings.TrimSpace(l.Text) == "" }

// Sound reports whether the line says a whole legal hole.
func (l *Line) Sound() bool { return !l.Empty() && len(l.Problems) == 0 }

// ParseLine reads a hole from a line. The tee shot is played from the card's
// length unless the line says otherwise.
func ParseLine(text string, card golf.CardHole, units Units) Line {
	p := &lineParser{units: units, length: card.Length, line: Line{Text: text, Hole: golf.Hole{Number: card.Number, Par: card.Par}}}
	p.items()
	p.read()
	return p.line
}

type lineParser struct {
	line   Line
	units  Units
	length golf.Distance

	item      int // the word at hand
	holed     bool
	dropOpen  bool // the last shot's ball was dropped, and the drop is not told yet
	scoreOnly bool
}

func (p *lineParser) problem(what, allowed string) {
	p.line.Problems = append(p.line.Problems, Problem{p.item, what, allowed})
}

// items cuts the line at its spaces.
func (p *lineParser) items() {
	at := 0
	for word := range strings.FieldsSeq(p.line.Text) {
		at += strings.Index(p.line.Text[at:], word)
		p.line.Items = append(p.line.Items, Item{Text: word, From: at})
		at += len(word)
	}
}

// longestLine is how many bytes a line may have.
const longestLine = 500

func (p *lineParser) read() {
	h := &p.line.Hole
	if len(p.line.Items) == 0 {
		return
	}
	if p.item = -1; len(p.line.Text) > longestLine || !utf8.ValidString(p.line.Text) || strings.ContainsFunc(p.line.Text, unicode.IsControl) {
		p.problem("not a line of text", "one line of at most 500 letters")
		return
	}
	p.item = 0
	if score, found := strings.CutPrefix(p.line.Items[0].Text, "="); found && len(p.line.Items) == 1 {
		p.scoreOnly = true
		h.Shots = []golf.Shot{{Lie: golf.Tee, Distance: p.length}}
		h.ScoreOnly = p.score(score)
	} else {
		p.shots()
	}
	if len(p.line.Problems) > 0 {
		return
	}
	p.rules()
}

func (p *lineParser) shots() {
	h := &p.line.Hole
	h.Shots = append(h.Shots, golf.Shot{Lie: golf.Tee, Distance: p.length})
	for i := range p.line.Items {
		p.item = i
		item := &p.line.Items[i]
		item.First = len(h.Shots)
		p.word(item.Text)
		item.Shots = len(h.Shots) - item.First
	}
	p.item = -1
	last := h.Shots[len(h.Shots)-1]
	switch {
	case len(p.line.Problems) > 0:
	case p.dropOpen && !h.PickedUp:
		p.problem("the ball was dropped, but not played on", "the lie and distance of the drop, or - when it was picked up")
	case len(h.Shots) == 1 && !p.holed && !h.PickedUp:
		p.problem("the hole has no shot after the tee", "the next shot, or h when the tee shot was holed")
	case p.holed && last.Penalty > 0:
		p.problem("a shot that cost a penalty was not holed", "the next shot")
	}
}

// rules checks the hole by the rules of golf's records and the score by its
// check.
func (p *lineParser) rules() {
	for _, found := range p.line.Hole.Check() {
		p.item = p.itemOf(found.Shot - 1)
		p.problem(strings.TrimSpace(found.What+" "+found.Read), found.Allowed)
	}
	p.item = -1
	if got := p.line.Hole.Strokes(); p.line.Checked > 0 && !p.scoreOnly && !p.line.Hole.PickedUp && got != p.line.Checked {
		p.item = len(p.line.Items) - 1
		p.problem("the shots come to "+count(got), "a score of "+count(got)+", or the shots that are missing")
	}
}

// itemOf is the word that stands for a shot, from 0.
func (p *lineParser) itemOf(shot int) int {
	for i, item := range p.line.Items {
		if shot >= item.First && shot < item.First+item.Shots {
			return i
		}
	}
	return -1
}
