package form

import (
	"slices"
	"strconv"

	"strokeledger/analysis/golf"
)

// readMark reads the mark at the head of the rest of an item, and returns what
// stands behind it.
func (p *lineParser) readMark(rest string) (left string) {
	m, behind := leadingMark(rest)
	if m == nil {
		unitBegun := len(p.behind) == 0 && (rest == "f" || rest == "y") // of ft and yd
		p.missing("not understood: "+rest, lettersAllowed, unitBegun)
		return ""
	}
	if p.standsBehind(m.notBehind) {
		p.problem("the ball was dropped, so it was not played again from the same spot",
			"x without w, u or d when it was played again, or the lie and distance of the drop before x")
		return ""
	}
	return m.apply(p, m, behind)
}

// standsBehind reports whether one of these marks stands behind the last shot.
func (p *lineParser) standsBehind(written []string) bool {
	return slices.ContainsFunc(p.behind, func(m *mark) bool { return slices.Contains(written, m.written) })
}

// drops counts how often the last shot's ball was dropped.
func (p *lineParser) drops() (n int) {
	for _, m := range p.behind {
		if m.drop {
			n++
		}
	}
	return n
}

// shortSide notes that there is little green between the ball and the hole, of
// every shot that was played from there.
func (p *lineParser) shortSide(m *mark, rest string) (left string) {
	number, left := leadingNumber(rest)
	yards, err := parseNumber(number)
	if number != "" && err != nil {
		p.problem("not yards of green", "yards after s, as in r20s4")
		return ""
	}
	p.behind = append(p.behind, m)
	shots := p.line.Hole.Shots
	for i := len(shots) - 1; ; i-- {
		shots[i].ShortSided = true
		if number != "" {
			shots[i].GreenToWork, shots[i].GreenKnown = golf.Yards.Of(yards), true
		}
		if !p.line.Again(i) {
			return left
		}
	}
}

// playAgain notes that the last shot is lost or out of bounds, and that another
// is played from the same spot. What else the first one cost is not the second
// one's.
func (p *lineParser) playAgain(m *mark, rest string) (left string) {
	h := &p.line.Hole
	second := *p.lastShot()
	second.Penalty = 0
	p.lastShot().Penalty += m.penalty
	p.line.again = append(p.line.again, len(h.Shots))
	h.Shots = append(h.Shots, second)
	p.behind = append(p.behind[:0], m)
	return rest
}

// dropBall notes penalty strokes after which the ball is dropped elsewhere.
func (p *lineParser) dropBall(m *mark, rest string) (left string) {
	p.lastShot().Penalty += m.penalty
	p.behind = append(p.behind, m)
	if p.drops() == 2 {
		p.ask("Two drops stand behind one shot. Was the ball dropped twice before the next stroke?")
	}
	return rest
}

// addPenalty notes penalty strokes of another kind.
func (p *lineParser) addPenalty(m *mark, rest string) (left string) {
	number, left := leadingNumber(rest)
	n, err := strconv.Atoi(number)
	if err != nil || n < 1 || n > golf.MaxPenalty {
		p.missing("no penalty strokes", "1 to 9 after +, as in +2", rest == "")
		return ""
	}
	p.lastShot().Penalty += n
	p.behind = append(p.behind, m)
	return left
}

// pickUp notes that the ball was lifted where the last shot lay, or where it was
// dropped.
func (p *lineParser) pickUp(*mark, string) (left string) {
	p.line.Hole.PickedUp = true
	return ""
}

// holeOut notes that the last shot was holed.
func (p *lineParser) holeOut(*mark, string) (left string) {
	p.holed = true
	return ""
}
