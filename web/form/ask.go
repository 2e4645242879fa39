package form

import (
	"fmt"
	"math"
	"strconv"

	"strokeledger/analysis/golf"
)

// What is asked about because it is seldom right.
const (
	longPutt  = 90 * golf.Foot
	highScore = 15
)

func (p *lineParser) ask(text string) {
	p.line.Questions = append(p.line.Questions, Question{Item: p.item, Text: text})
}

// askOfNumber asks about a number without a letter that may belong to the mark
// before it.
func (p *lineParser) askOfNumber(h head, rest string) {
	if rest != "" || h.about || len(p.behind) == 0 {
		return
	}
	last, before := p.lastShot(), p.behind[len(p.behind)-1].written
	unit := h.unit
	if unit == 0 {
		unit = p.units.of(last.Lie)
	}
	switch {
	case before == "s" && !last.GreenKnown:
		p.ask(fmt.Sprintf("Is %s the yards of green? Then write s%s. As it stands, the next shot is from %s %s.", h.number, h.number, h.number, unit))
	case before == "u" && h.number == "2":
		p.ask(fmt.Sprintf("Is this the relief that costs two strokes? Then write u2. As it stands, the next shot is from 2 %s.", unit))
	}
}

// askOfRepeat asks about a shot that says once more what x has said already.
func (p *lineParser) askOfRepeat(s golf.Shot) {
	h := &p.line.Hole
	last := len(h.Shots) - 1
	if p.line.Again(last) && h.Shots[last].Penalty == 0 && h.Shots[last].Lie == s.Lie && h.Shots[last].Distance == s.Distance {
		p.ask(fmt.Sprintf("After x you play again from the same spot, so %s here is one more stroke from there. Is that right?", saidDistance(s.Distance, s.WrittenUnit())))
	}
}

// plausible asks about what is legal and yet unlikely in a sound line.
func (p *lineParser) plausible() {
	h := &p.line.Hole
	for i := 1; i < len(h.Shots) && !p.scoreOnly; i++ {
		if p.item = p.line.itemOf(i); !p.line.Again(i) {
			p.askOfDistance(h.Shots[i], h.Shots[i-1])
		}
	}
	last := h.Shots[len(h.Shots)-1]
	p.item = len(p.line.Items) - 1
	strokes := h.Strokes()
	switch {
	case h.PickedUp:
	case strokes == 1 && h.Par > 3:
		p.ask(fmt.Sprintf("A hole in one on a par %d. Is that right?", h.Par))
	case strokes > highScore:
		p.ask(fmt.Sprintf("%d is a very high score for a hole. Is that right?", strokes))
	}
	if !p.line.Ended && last.Lie != golf.Green {
		p.ask(fmt.Sprintf("Did you hole it from %s %s? If not, the next shot is missing.", saidDistance(last.Distance, last.WrittenUnit()), places[last.Lie]))
		p.line.Questions[len(p.line.Questions)-1].End = true
	}
}

var places = map[golf.Lie]string{golf.Tee: "on the tee", golf.Fairway: "on the fairway", golf.Rough: "in the rough",
	golf.Bunker: "in the bunker", golf.Recovery: "in a recovery lie", golf.Green: "on the green"}

// askOfDistance asks about a shot that is longer than the hole, than any putt is
// likely to be, or than the shot before it. A ball that was dropped may lie
// farther away.
func (p *lineParser) askOfDistance(s, before golf.Shot) {
	unit := s.WrittenUnit()
	said := saidDistance(s.Distance, unit)
	switch hole := p.line.Hole.Length(); {
	case longer(s.Distance, hole, unit):
		p.ask(fmt.Sprintf("%s is longer than the hole (%s). Is that right?", said, saidDistance(hole, unit)))
	case s.Lie == golf.Green && s.Distance > longPutt:
		p.ask(fmt.Sprintf("%s is a very long putt. Is that right?", said))
	case before.Penalty == 0 && longer(s.Distance, before.Distance, unit):
		p.ask(fmt.Sprintf("%s is farther from the hole than the shot before (%s). Is that right?", said, saidDistance(before.Distance, unit)))
	}
}

// longer reports whether a distance is longer than another by so much that it
// is not only the rounding of one of them.
func longer(d, than golf.Distance, unit golf.Unit) bool {
	return d > than+unit.Of(0.5) || d > than && d < unit.Of(10) && d > than+unit.Of(0.05)
}

// saidDistance is a distance as a golfer says it, with a decimal only where it
// is short.
func saidDistance(d golf.Distance, unit golf.Unit) string {
	x := math.Round(unit.In(d))
	if unit.In(d) < 10 {
		x = math.Round(unit.In(d)*10) / 10
	}
	return strconv.FormatFloat(x, 'f', -1, 64) + " " + unit.String()
}
