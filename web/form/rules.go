package form

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"strokeledger/analysis/golf"
)

// checkRules checks the hole by the rules for records of golf.
func (p *lineParser) checkRules() {
	h := &p.line.Hole
	for _, found := range h.Check() {
		p.item = p.line.itemOf(found.Shot - 1)
		p.problem(p.inWords(found))
		zero := found.Field == "distance" && h.Shots[max(found.Shot-1, 0)].Distance == 0
		p.mendable = zero && p.item == len(p.line.Items)-1 // the beginning of 0.5
	}
}

// checkScore checks the score that was typed against the shots.
func (p *lineParser) checkScore() {
	p.item = len(p.line.Items) - 1
	h, want := &p.line.Hole, p.line.Checked
	if want == 0 || p.scoreOnly || h.PickedUp || h.Strokes() == want {
		return
	}
	got := strconv.Itoa(h.Strokes())
	p.missing("the shots come to "+got, "a score of "+got+", or the shots that are missing",
		strings.HasPrefix(got, strconv.Itoa(want))) // the beginning of =12
}

// inWords says a problem of a golf record as a problem of a line: what is wrong
// with what was read in one clause, and what is allowed. A record names its
// fields and cells; a line has none.
func (p *lineParser) inWords(found golf.Problem) (what, allowed string) {
	shot := p.line.Hole.Shots[max(found.Shot-1, 0)]
	unit := shot.WrittenUnit()
	switch what, allowed = found.What, found.Allowed; found.Field + ": " + found.What {
	case "distance: out of range":
		if found.Shot == 1 && p.line.itemOf(0) < 0 && shot.Distance == 0 {
			return "the length of the hole is not known yet", "its length on the card, or the tee shot's distance, as in t385"
		}
		limit, where := golf.MaxDistance, ""
		if shot.Lie == golf.Green {
			limit, where = golf.MaxPutt, " on the green"
		}
		return figure(unit.In(shot.Distance), unit) + " cannot be the distance of a shot", fmt.Sprintf("over 0, at most %.0f %s%s", math.Floor(unit.In(limit)), unit, where)
	case "green_to_work_with: out of range":
		return figure(shot.GreenToWork.Yards(), golf.Yards) + " of green do not fit into a shot of " + saidDistance(shot.Distance, unit), "less green than the distance to the hole"
	case "short_sided: the ball is on the green", "green_to_work_with: the ball is on the green":
		return "a putt has no short side", "s off the green only, 30 yd or nearer"
	case "short_sided: too far from the hole", "green_to_work_with: too far from the hole":
		return saidDistance(shot.Distance, unit) + " is too far from the hole for a short side", "s off the green only, 30 yd or nearer"
	case "penalty: out of range":
		return found.Read + " penalty strokes for one shot are too many", "at most 9"
	case "penalty: the shot where the ball was picked up was not played":
		return "the ball was picked up before that shot was played, so it cost no penalty", "the lie and distance where it was picked up, with - behind it"
	case "hole: out of range":
		return "there is no hole " + found.Read, found.Allowed
	case "par: out of range":
		return "there is no par " + found.Read, found.Allowed
	case "score_only: out of range":
		return "nobody scores " + found.Read, found.Allowed
	case "lie: a hole starts on the tee":
		return found.What + ", not " + places[shot.Lie], found.Allowed
	}
	return what, allowed
}

// figure is a distance as it was typed, unless it is too long to repeat.
func figure(x float64, unit golf.Unit) string {
	if math.Abs(x) > 1e6 {
		return "such a number"
	}
	return fmt.Sprintf("%g %s", math.Round(x*1000)/1000, unit)
}
