package aim

import (
	"math"
	"slices"
	"strings"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
)

// playing is a picture as it is played in simulated rounds.
type playing struct {
	hole    *Hole
	planned bool
	heading float64    // rad of the tee shot of a par 4 or longer
	share   float64    // of the reach that it tries for
	aim     [2]float64 // side and long of the tee shot of a par 3, in yards by the flag
}

// Playing returns the hole as simulated rounds play it: the driver down the middle
// and every approach at the flag, or, planned, with the best aims. The plan's aims from
// off the tee are those of the eight distances of the green side.
//
// clubs are the player's own for the tee, with what is known of their patterns; none
// stands for those of the level. The plan chooses among them, and its ball is meant to
// end where its aim lets the pattern end. But it is struck as the level strikes it: how
// wide and how far beside the aim the player's balls end is in the level already, which
// comes of the scores that they made, and would count twice. For the same reason the
// longest club goes as far as the level, and the others as far as they go, at most
// that.
func (h *Hole) Playing(planned bool, clubs []Club) golfer.Drawn {
	if planned {
		return h.planned(clubs, nil)
	}
	p := playing{hole: h, share: 1}
	if h.fromTee.m.picture.Par != golf.MinPar {
		p.strikes(0, h.Clubs()[0].Length)
	}
	return p
}

// Chosen is what is played off a tee in place of the best aim: a club and yards right of
// the middle, or on a par 3, without a club, yards right of the flag and beyond it.
type Chosen struct {
	Club       string
	Side, Long float64
}

// PlayingChosen returns the hole as simulated rounds play it with the plan's aims, but
// off the tee with what was chosen in place of the best aim. A club that is none of the
// player's cannot be played, and the best aim stands.
func (h *Hole) PlayingChosen(clubs []Club, chosen Chosen) golfer.Drawn {
	return h.planned(clubs, &chosen)
}

// planned is the hole played with the plan's aims, the tee shot as it was chosen.
func (h *Hole) planned(clubs []Club, chosen *Chosen) playing {
	p := playing{hole: h, planned: true, share: 1}
	if h.fromTee.m.picture.Par == golf.MinPar {
		if chosen == nil {
			best := h.Approach(golf.Tee, Point{}, Pattern{}).Best
			chosen = &Chosen{Side: best.Side, Long: best.Long}
		}
		p.aim = [2]float64{chosen.Side, chosen.Long}
		return p
	}
	own := len(clubs) > 0
	if !own {
		clubs = h.Clubs()
	}
	club, side := h.fromTheTee(clubs, chosen)
	goes := club.Length
	if own && club == longest(clubs) {
		goes = h.tee.Target(golf.Tee, h.fromTee.m.picture.Length)
	}
	p.strikes(side, goes)
	return p
}

// fromTheTee is the club for the tee and where its ball is meant to end, in yards right
// of the middle.
func (h *Hole) fromTheTee(clubs []Club, chosen *Chosen) (Club, float64) {
	if chosen != nil {
		if i := slices.IndexFunc(clubs, func(c Club) bool { return strings.EqualFold(c.Name, chosen.Club) }); i >= 0 {
			return clubs[i], chosen.Side + clubs[i].Pattern.Side
		}
	}
	best := h.TeeShots(clubs).Best()
	return best.Club, best.Best.Side + best.Club.Pattern.Side
}

// strikes makes a tee shot of a ball that is meant to end so many yards right of the
// middle; it goes so far, at most as far as the level.
func (p *playing) strikes(side, goes float64) {
	reach := p.hole.tee.Reach(golf.Tee)
	goes = min(goes, reach)
	p.heading = heading(Point{}, p.hole.fromTee.m.onLine(Point{}, goes)) + side/goes
	p.share = goes / reach
}

// Cut is where the hole is.
func (p playing) Cut() golfer.Place { return golfer.Place(p.hole.fromTee.hole) }

// Has reports whether a green and a fairway are drawn.
func (p playing) Has() (green, fairway bool) {
	m := p.hole.fromTee.m
	return m.green != nil, len(m.picture.Fairway) > 0
}

// GreenToWork is the green between its edge and the hole on the line from a place.
func (p playing) GreenToWork(from golfer.Place) (float64, bool) {
	return p.hole.fromTee.m.GreenToWork(Point(from), p.hole.fromTee.hole)
}

// Aim is where a stroke is aimed.
func (p playing) Aim(from golfer.Place, lie golf.Lie, usual, reach float64) (float64, float64) {
	t := p.hole.fromTee
	if lie == golf.Tee && t.m.picture.Par != golf.MinPar {
		return p.heading, p.share * reach
	}
	to := heading(Point(from), t.hole)
	yd := Point(from).Distance(t.hole)
	if !p.planned || lie == golf.Recovery || yd <= golf.MaxShortSided.Yards() {
		return to, usual
	}
	offset := p.aim
	if lie != golf.Tee {
		offset = t.side.aim(lie, yd)
	}
	target := min(usual+offset[1], max(usual, reach))
	return to + math.Asin(min(max(offset[0]/target, -.9), .9)), target
}

// End is what becomes of a ball that came down at a place.
func (p playing) End(from, to golfer.Place) golfer.End {
	t := p.hole.fromTee
	at := t.m.Position(Point(to))
	spot := t.m.spot(Point(to), at)
	end := golfer.End{At: to, Short: t.along - at.Along, Across: at.Across}
	switch spot.Kind {
	case OnGreen:
		end.Lie = golf.Green
	case OnFairway:
		end.Lie = golf.Fairway
	case Rough:
		end.Lie = golf.Rough
	case Bunker:
		end.Lie = golf.Bunker
	case Trees:
		end.Lie = golf.Recovery
	case Out:
		end.Penalty, end.Again = 1, true
	case Water:
		end.Penalty, end.Lie = 1, golf.Rough
		end.At = golfer.Place(t.m.crossing(Point(from), Point(to), &t.m.picture.Zones[spot.Zone]))
	}
	return end
}
