package form

import (
	"math"
	"strconv"
	"strings"

	"strokeledger/analysis/golf"
)

// WriteLine writes a hole as a line that ParseLine reads as the same hole, for
// the same card and units. A lie that is that of the shot before is not
// repeated. What a line cannot say, where a shot missed, is left out.
func WriteLine(h golf.Hole, card golf.CardHole, units Units) string {
	if h.ScoreOnly > 0 {
		return "=" + strconv.Itoa(h.ScoreOnly)
	}
	var words []string
	last := golf.Tee
	for i := 0; i < len(h.Shots); i++ {
		word := shotWord(h.Shots[i], i, last, card, units)
		last = h.Shots[i].Lie
		club := writtenClub(h.Shots[i].Club)
		marks := ""
		for i+1 < len(h.Shots) && again(h.Shots[i], h.Shots[i+1]) {
			marks += "x"
			i++
		}
		if n := h.Shots[i].Penalty; n > 0 {
			marks += "+" + strconv.Itoa(n)
		}
		if i == 0 && word+marks == "" && len(h.Shots) > 1 && h.Shots[1].Lie == golf.Tee {
			word = "t" // or the next would be read as the tee shot
		}
		switch {
		case club != "":
			words = append(words, word+"/"+club)
			if marks != "" {
				words = append(words, marks)
			}
		case word+marks != "":
			words = append(words, word+marks)
		}
	}
	switch {
	case h.PickedUp:
		words = append(words, "-")
	case len(h.Shots) == 1:
		words = append(words, "h")
	}
	return strings.Join(words, " ")
}

// writtenClub is a club as a line can say it: without a space.
func writtenClub(club string) string {
	return strings.Join(strings.Fields(club), "-")
}

// again reports whether a shot is the one before it, played again from the
// same spot for one penalty stroke.
func again(s, next golf.Shot) bool {
	same := s
	same.Penalty = next.Penalty
	return s.Penalty == 1 && same == next
}

func shotWord(s golf.Shot, i int, last golf.Lie, card golf.CardHole, units Units) string {
	unit := s.WrittenUnit()
	if i == 0 && s.Distance == card.Length {
		if s.Club != "" {
			return "t"
		}
		return ""
	}
	word := ""
	switch {
	case s.Lie == last && last != golf.Tee:
	case s.Lie == golf.Recovery:
		word = "v"
	default:
		word = s.Lie.String()[:1]
	}
	if s.About {
		word += "~"
	}
	word += written(s.Distance, unit)
	if unit != units.of(s.Lie) {
		word += unit.String()
	}
	if s.ShortSided || s.GreenKnown {
		word += "s"
	}
	if s.GreenKnown {
		word += written(s.GreenToWork, golf.Yards)
	}
	return word
}

// written is the shortest number of a unit that reads as a distance to the last
// digit, where there is one.
func written(d golf.Distance, unit golf.Unit) string {
	x := unit.In(d)
	exact := float64(d / unit.Of(1))
	for _, near := range []float64{exact, math.Nextafter(exact, 0), math.Nextafter(exact, math.Inf(1))} {
		if unit.Of(x) != d && unit.Of(near) == d {
			x = near
		}
	}
	return strconv.FormatFloat(x, 'f', -1, 64)
}
