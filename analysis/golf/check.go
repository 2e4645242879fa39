package golf

import (
	"math"
	"strconv"
)

// Check returns everything about the hole that is not allowed; nil when it is
// a legal hole. Shots are numbered from 1 in the answer.
func (h Hole) Check() Problems {
	c := checker{hole: h.Number}
	c.between("hole", h.Number, 1, maxHoleNumber)
	c.between("par", h.Par, minPar, maxPar)
	if len(h.Shots) == 0 {
		c.add("shot", "no shot", "", "at least one")
		return c.problems
	}
	if h.ScoreOnly != 0 {
		c.scoreOnly(h)
	}
	for i, s := range h.Shots {
		c.shot = i + 1
		c.checkShot(s)
	}
	c.shot = 1
	if h.Shots[0].Lie != Tee {
		c.add("lie", "a hole starts on the tee", h.Shots[0].Lie.String(), "tee")
	}
	if last := len(h.Shots); h.PickedUp && h.Shots[last-1].Penalty != 0 {
		c.shot = last
		c.add("penalty", "the shot where the ball was picked up was not played", strconv.Itoa(h.Shots[last-1].Penalty), "0")
	}
	return c.problems
}

// Check returns everything about the shot alone that is not allowed; nil when
// it is a legal shot.
func (s Shot) Check() Problems {
	var c checker
	c.checkShot(s)
	return c.problems
}

type checker struct {
	hole, shot int
	problems   Problems
}

func (c *checker) add(field, what, read, allowed string) {
	c.problems = append(c.problems, Problem{Hole: c.hole, Shot: c.shot, Field: field, What: what, Read: read, Allowed: allowed})
}

func (c *checker) between(field string, got, low, high int) {
	if got < low || got > high {
		c.add(field, "out of range", strconv.Itoa(got), strconv.Itoa(low)+" to "+strconv.Itoa(high))
	}
}

func (c *checker) scoreOnly(h Hole) {
	c.shot = 1
	c.between("score_only", h.ScoreOnly, 1, maxScoreOnly)
	if len(h.Shots) > 1 {
		c.add("score_only", "the hole has other shots", strconv.Itoa(len(h.Shots)), "one row for the whole hole")
	}
	if h.PickedUp {
		c.add("picked_up", "the hole is known by its score alone", "yes", "one of picked_up and score_only")
	}
	if h.Shots[0].Penalty != 0 {
		c.add("penalty", "the hole is known by its score alone, penalties included", strconv.Itoa(h.Shots[0].Penalty), "0")
	}
}

func (c *checker) checkShot(s Shot) {
	if s.Lie < Tee || s.Lie > Green {
		c.add("lie", "no lie", "", "tee, fairway, rough, bunker, recovery, green")
		return
	}
	c.checkDistance(s)
	c.between("penalty", s.Penalty, 0, maxPenalty)
	if s.ShortSided {
		c.shortSide("short_sided", "yes", s)
	}
	if s.GreenKnown {
		c.checkGreen(s)
	}
}

func (c *checker) checkDistance(s Shot) {
	limit, allowed := MaxDistance, "over 0, at most 700 yd"
	if s.Lie == Green {
		limit, allowed = MaxPutt, "over 0, at most 300 ft on the green"
	}
	if !(s.Distance > 0 && s.Distance <= limit) {
		c.add("distance", "out of range", number(s.WrittenUnit().In(s.Distance)), allowed)
	}
}

func (c *checker) checkGreen(s Shot) {
	if !(s.GreenToWork >= 0 && s.GreenToWork < s.Distance) {
		c.add("green_to_work_with", "out of range", number(s.GreenToWork.Yards()), "0 or more and less than the distance")
		return
	}
	c.shortSide("green_to_work_with", number(s.GreenToWork.Yards()), s)
}

func (c *checker) shortSide(field, read string, s Shot) {
	if s.Lie == Green {
		c.add(field, "the ball is on the green", read, "off the green and 30 yd or nearer only")
	} else if s.Distance > MaxShortSided {
		c.add(field, "too far from the hole", read, "off the green and 30 yd or nearer only")
	}
}

func number(x float64) string {
	return strconv.FormatFloat(math.Round(x*1000)/1000, 'g', -1, 64)
}
