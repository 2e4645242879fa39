package form

import (
	"strconv"
	"strings"

	"strokeledger/analysis/golf"
)

// after reads one mark behind a shot: short side, a penalty, or the end.
func (p *lineParser) after(rest string) string {
	h := &p.line.Hole
	last := &h.Shots[len(h.Shots)-1]
	switch {
	case rest[0] == 's':
		return p.shortSide(rest)
	case rest == "-":
		h.PickedUp = true
		p.line.Dropped = false
		return ""
	case rest == "h":
		p.holed = true
		return ""
	case rest[0] == 'x':
		return p.playAgain(last, rest[1:])
	case strings.HasPrefix(rest, "u2"):
		return p.drop(last, 2, '2', rest[2:])
	case rest[0] == 'w' || rest[0] == 'u':
		return p.drop(last, 1, rest[0], rest[1:])
	case rest[0] == 'd':
		return p.drop(last, 2, 'd', rest[1:])
	case rest[0] == '+':
		number, more := leadingNumber(rest[1:])
		if n, err := strconv.Atoi(number); err == nil && n >= 1 && n <= 9 {
			last.Penalty += n
			p.mark = '+'
			return more
		}
		p.missing("no penalty strokes", "1 to 9 after +, as in +2")
		p.mendable = p.mendable && rest == "+"
		return ""
	default:
		p.missing("not understood: "+rest, lettersAllowed)
		p.mendable = p.mendable && (rest == "f" || rest == "y") && p.mark == 0 // the beginning of ft and yd
		return ""
	}
}

// shortSide notes that there is little green between the ball and the hole, of
// every stroke that was played from there.
func (p *lineParser) shortSide(rest string) string {
	h := &p.line.Hole
	number, more := leadingNumber(rest[1:])
	green, known := golf.Distance(0), number != ""
	if known {
		yards, err := strconv.ParseFloat(strings.Replace(number, ",", ".", 1), 64)
		if err != nil {
			p.problem("not yards of green", "yards after s, as in r20s4")
			return ""
		}
		green = golf.Yards.Of(yards)
	}
	if p.mark = 0; !known {
		p.mark = 's' // a number may follow that belongs to it
	}
	for i := len(h.Shots) - 1; ; i-- {
		h.Shots[i].ShortSided = true
		if known {
			h.Shots[i].GreenToWork, h.Shots[i].GreenKnown = green, true
		}
		if !p.line.Again(i) {
			return more
		}
	}
}

// playAgain notes that the last shot is lost or out of bounds, for a stroke,
// and that another is played from the same spot. What else the first one cost
// is not the second one's.
func (p *lineParser) playAgain(last *golf.Shot, rest string) string {
	h := &p.line.Hole
	if p.line.Dropped {
		p.problem("the ball was dropped, so it was not played again from the same spot",
			"x without w, u or d when it was played again, or the lie and distance of the drop before x")
		return ""
	}
	second := *last
	second.Penalty = 0
	last.Penalty++
	p.line.again = append(p.line.again, len(h.Shots))
	p.drops, p.mark = 0, 'x'
	h.Shots = append(h.Shots, second)
	return rest
}

// drop notes penalty strokes after which the ball is dropped elsewhere.
func (p *lineParser) drop(last *golf.Shot, strokes int, mark byte, rest string) string {
	last.Penalty += strokes
	p.line.Dropped, p.mark = true, mark
	if p.drops++; p.drops == 2 {
		p.ask("Two drops stand behind one shot. Was the ball dropped twice before the next stroke?")
	}
	return rest
}
