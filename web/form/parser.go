package form

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"strokeledger/analysis/golf"
)

// ParseLine reads a hole from a line. The tee shot is played from the card's
// length unless the line says otherwise.
func ParseLine(text string, card golf.CardHole, units Units) Line {
	p := &lineParser{units: units, line: Line{Text: text, length: card.Length, Hole: golf.Hole{Number: card.Number, Par: card.Par}}}
	if !p.line.Empty() {
		p.read()
	}
	return p.line
}

// lineParser reads a line from its first item to its last.
type lineParser struct {
	line   Line
	units  Units
	packed []packed // the items without what is between their letters

	item      int     // the item at hand, from 0; -1 for the line as a whole
	behind    []*mark // the marks of the last shot so far
	holed     bool    // h was read
	scoreOnly bool    // the line is a score and nothing else
	mendable  bool    // more typing can mend the last problem
}

func (p *lineParser) problem(what, allowed string) {
	p.mendable = false
	p.line.Problems = append(p.line.Problems, Problem{p.item, what, allowed})
}

// missing is a problem that more typing can mend, if it can grow into something
// sound and the line ends here.
func (p *lineParser) missing(what, allowed string, canGrow bool) {
	p.problem(what, allowed)
	p.mendable = canGrow && (p.item < 0 || p.item == len(p.line.Items)-1)
}

// over reports whether a mark has ended the hole.
func (p *lineParser) over() bool { return p.holed || p.line.Hole.PickedUp }

// lastShot is the shot that marks belong to.
func (p *lineParser) lastShot() *golf.Shot {
	shots := p.line.Hole.Shots
	return &shots[len(shots)-1]
}

// LongestLine is how many bytes a line may have.
const LongestLine = golf.MaxLine

func (p *lineParser) read() {
	l := &p.line
	if p.item = -1; len(l.Text) > LongestLine || !utf8.ValidString(l.Text) || strings.ContainsFunc(l.Text, unicode.IsControl) {
		p.problem("not a line of text", "one line of at most "+strconv.Itoa(LongestLine)+" characters")
		return
	}
	if p.cut(); len(l.Items) == 0 {
		p.problem("nothing but commas", lettersAllowed)
		return
	}
	l.Hole.Shots = append(l.Hole.Shots, golf.Shot{Lie: golf.Tee, Distance: l.length})
	if score, found := strings.CutPrefix(p.packed[0].text, scoreSign); found && len(l.Items) == 1 {
		p.item, p.scoreOnly = 0, true
		l.Hole.ScoreOnly = p.readScore(score)
	} else {
		p.readItems()
		p.checkEnd()
	}
	if len(l.Problems) == 0 {
		p.checkRules()
		p.checkScore()
	}
	l.Ended = p.scoreOnly || p.over() || l.Checked > 0
	l.Unfinished = len(l.Problems) == 1 && p.mendable
	if len(l.Problems) > 0 {
		l.Questions = nil
		return
	}
	p.plausible()
}

// readItems reads every item and shares the shots out among them.
func (p *lineParser) readItems() {
	h := &p.line.Hole
	for i := range p.line.Items {
		p.item = i
		item := &p.line.Items[i]
		item.First = len(h.Shots)
		p.readItem(p.packed[i].text)
		item.Shots = len(h.Shots) - item.First
	}
	p.line.Dropped = p.drops() > 0 && !h.PickedUp
}

// checkEnd checks that the hole is played to its end.
func (p *lineParser) checkEnd() {
	p.item = -1
	saidEnd := p.holed || p.line.Checked > 0 // then what is missing should stand before it
	switch h := &p.line.Hole; {
	case len(p.line.Problems) > 0:
	case p.line.Dropped:
		p.missing("the ball was dropped, but not played on", "the lie and distance of the drop, with - behind it when it was picked up there", !saidEnd)
	case len(h.Shots) == 1 && !p.over():
		p.missing("the hole has no shot after the tee", "the next shot, or h when the tee shot was holed", !saidEnd)
	case p.holed && p.lastShot().Penalty > 0:
		p.problem("a shot that cost a penalty was not holed", "the next shot")
	}
}
