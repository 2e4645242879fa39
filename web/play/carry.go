package play

import (
	"fmt"
	"math"
	"strings"

	"strokeledger/analysis/golf"
)

// CarryCard is the card to carry.
type CarryCard struct {
	Course, Player string
	Aside          string
	Needed         string // files without which the card cannot be shown; empty where it is not kept
	Nines          []CarryNine
}

// CarryNine is one side of the card.
type CarryNine struct {
	Name       string
	Lines      []CarryLine
	Par, Yards string
}

// CarryLine is one hole of the card.
type CarryLine struct {
	Number, Par, Yards string
	Club               string
	Arrow, Said        string // where to aim
	Safe               string
	Matters            bool
}

// newCarryCard makes the card to carry.
func newCarryCard(m measure, in RoundInput) CarryCard {
	c := CarryCard{Course: in.Name, Player: in.Player, Aside: fmt.Sprintf("Aim in %s from the middle of the fairway, on short holes from the flag. Bold matters. From trouble: the plain shot back into play.", unitWords(in.Unit))}
	names, parts := nines(in.Card)
	for i, part := range parts {
		nine := CarryNine{Name: names[i]}
		par, length := 0, 0.0
		for _, h := range part {
			par, length = par+h.Par, length+math.Round(h.Length.Yards())
			nine.Lines = append(nine.Lines, carryLine(m, in, h))
		}
		nine.Par, nine.Yards = fmt.Sprint(par), fmt.Sprintf("%.0f", length)
		c.Nines = append(c.Nines, nine)
	}
	return c
}

func unitWords(u golf.Unit) string {
	if u == golf.Metres {
		return "metres"
	}
	return "yards"
}

func carryLine(m measure, in RoundInput, h golf.CardHole) CarryLine {
	l := CarryLine{Number: fmt.Sprint(h.Number), Par: fmt.Sprint(h.Par), Yards: fmt.Sprintf("%.0f", h.Length.Yards())}
	plan, known := in.Plans[h.Number]
	if !known {
		return l
	}
	l.Matters, l.Safe = counts(plan), safe(plan)
	stands := plan.Stands()
	side, long := stands.Aim.Side, stands.Aim.Long
	l.Club = stands.Club
	if !l.Matters {
		side, long = 0, 0
		l.Club, _ = straightAimed(plan)
	}
	l.Club = strings.TrimPrefix(l.Club, "fairway ")
	l.Arrow, l.Said = arrow(m, side, long)
	return l
}

// arrow is an aim as the card has it, and as it is said.
func arrow(m measure, side, long float64) (sign, said string) {
	sign, said = "|", m.side(side)
	if !m.none(side) {
		sign = m.number(side) + " →"
		if side < 0 {
			sign = "← " + m.number(side)
		}
	}
	if m.none(long) {
		return sign, said
	}
	way, word := " ↓", " short"
	if long > 0 {
		way, word = " ↑", " long"
	}
	return strings.TrimPrefix(sign+" "+m.number(long)+way, "| "), said + ", " + m.distance(long) + word
}
